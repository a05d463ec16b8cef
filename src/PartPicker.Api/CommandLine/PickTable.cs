using PartPicker.Api.Wire;

namespace PartPicker.Api.CommandLine;

/// <summary>Prints a ranked answer for a person at a console.</summary>
internal static class PickTable
{
    private static readonly string[] Heads =
        ["rank", "engages", "shifts out", "miss", "price", "within", "anchored", "change"];

    public static void Print(PickAnswerWire answer, TextWriter to)
    {
        PickRequestWire request = answer.Request;
        to.WriteLine($"Machine {request.Machine}: {Engage(request.Targets)}to hold {Held(request.Targets)}.");
        to.WriteLine();
        PrintFitted(answer.Fitted, to);
        to.WriteLine();
        if (answer.Picks.Count == 0)
            to.WriteLine("No set of parts can be ranked.");
        else
            PrintRows([Heads, .. answer.Picks.Select(Row)], to);
        foreach (ObstacleWire obstacle in answer.InTheWay)
            to.WriteLine($"In the way: {obstacle.Sentence}");
        PrintHighlights(answer, to);
        if (answer.Picks.Count > 0)
            PrintCautions(answer.Picks[0], to);
        to.WriteLine();
    }

    private static void PrintFitted(FittedWire fitted, TextWriter to)
    {
        PartsWire parts = fitted.Parts;
        to.WriteLine("Fitted now:");
        to.WriteLine($"  drive spring {parts.DriveSpring.Id}{Shims(parts.Shims)}, flyweight {Flyweight(parts.Flyweight)}, "
            + $"driven spring {parts.DrivenSpring.Id} in hole {parts.Hole}, helix {parts.Helix.Id}");
        to.WriteLine($"  {Engages(fitted.EngagementRpm)}{ShiftsOut(fitted.ShiftOutRpm)}, "
            + $"misses the target by {Miss(fitted.Miss)} tolerances, {Anchored(fitted.Anchored)}");
    }

    private static void PrintHighlights(PickAnswerWire answer, TextWriter to)
    {
        if (answer.Cheapest is { } cheapest)
            to.WriteLine($"Cheapest within tolerance: {Money.Text(cheapest.Price)}, miss {Miss(cheapest.Miss)}, {Changes(cheapest.Changes, cheapest.Parts)}");
        if (answer.FewestChanges is { } fewest)
            to.WriteLine($"Fewest changes within tolerance: {Money.Text(fewest.Price)}, miss {Miss(fewest.Miss)}, {Changes(fewest.Changes, fewest.Parts)}");
    }

    private static void PrintCautions(PickWire first, TextWriter to)
    {
        to.WriteLine();
        to.WriteLine("Before you fit the first choice:");
        foreach (CautionWire caution in first.Cautions)
            to.WriteLine($"  {caution.Signal}: {caution.Sentence}");
    }

    private static string[] Row(PickWire pick) =>
    [
        $"{pick.Rank}",
        pick.EngagementRpm is { } engagement ? Rpm(engagement) : "not asked",
        pick.ShiftOutRpm is { } rpm ? Rpm(rpm) : "never",
        Miss(pick.Miss),
        Money.Text(pick.Price),
        pick.WithinTolerance ? "yes" : "no",
        pick.Anchored ? "yes" : "no",
        Changes(pick.Changes, pick.Parts),
    ];

    private static string Changes(IReadOnlyList<string> changes, PartsWire parts)
    {
        string[] texts = [.. changes.Select(slot => slot switch
        {
            "driveSpring" => $"drive spring {parts.DriveSpring.Id}{Shims(parts.Shims)}",
            "flyweight" => $"flyweight {Flyweight(parts.Flyweight)}",
            "drivenSpring" => $"driven spring {parts.DrivenSpring.Id}",
            "hole" => $"hole {parts.Hole}",
            _ => $"helix {parts.Helix.Id}",
        })];
        return texts.Length == 0 ? "nothing" : string.Join(", ", texts);
    }

    private static string Shims(FittedShimsWire? shims) => shims is null ? "" : $" on {shims.Count} x {shims.Id}";

    private static string Flyweight(FlyweightChoiceWire flyweight)
    {
        IEnumerable<string> masses = flyweight.StationMasses.Select(mass => $"{mass.Key} {mass.Value.Value} {mass.Value.Unit}");
        string more = string.Join(", ", flyweight.AdjusterStep is { } step ? masses.Prepend($"step {step}") : masses);
        return more.Length == 0 ? flyweight.Id : $"{flyweight.Id} ({more})";
    }

    private static string Rpm(double rpm) => $"{rpm:F1} rpm";

    private static string Engage(TargetsWire targets) =>
        targets.EngagementRpm is { } rpm ? $"to engage at {Rpm(rpm)} and " : "";

    private static string Engages(double? rpm) => rpm is { } value ? $"engages at {Rpm(value)}, " : "";

    private static string Held(TargetsWire targets) => targets switch
    {
        { ShiftRpm: { } flat } => Rpm(flat),
        { ShiftCurve: { } curve } => string.Join(", ", curve.Select(p => $"{Rpm(p.Rpm)} at ratio {p.Ratio}")),
        { SpeedCurve: { } curve } => string.Join(", ", curve.Select(p => $"{Rpm(p.Rpm)} at {p.Speed.Value:0.#} {p.Speed.Unit}")),
        _ => "the rpm of greatest power",
    };

    private static string ShiftsOut(double? rpm) =>
        rpm is { } value ? $"shifts out at {Rpm(value)}" : "does not shift out";

    private static string Miss(double? miss) => miss is { } value ? $"{value:F3}" : "an unknown number of";

    private static string Anchored(bool anchored) => anchored ? "anchored to a measured run" : "not anchored";

    // Columns as wide as their widest entry; the last one runs free.
    private static void PrintRows(IReadOnlyList<string[]> rows, TextWriter to)
    {
        int[] widths = [.. rows[0].Select((_, column) => rows.Max(row => row[column].Length))];
        foreach (string[] row in rows)
            to.WriteLine(string.Join("  ", row.Select((cell, column) => cell.PadRight(widths[column]))).TrimEnd());
    }
}
