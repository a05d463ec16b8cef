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
        to.WriteLine($"Machine {request.Machine}: to engage at {Rpm(request.Targets.EngagementRpm)} "
            + $"and hold {Held(request.Targets)}.");
        to.WriteLine();
        PrintFitted(answer.Fitted, to);
        to.WriteLine();
        if (answer.Picks.Count == 0)
            to.WriteLine("No set of parts can be ranked.");
        else
            PrintRows([Heads, .. answer.Picks.Select(Row)], to);
        foreach (ObstacleWire obstacle in answer.InTheWay)
            to.WriteLine($"In the way: {obstacle.Sentence}");
        if (answer.Picks.Count > 0)
            PrintCautions(answer.Picks[0], to);
        to.WriteLine();
    }

    private static void PrintFitted(FittedWire fitted, TextWriter to)
    {
        PartsWire parts = fitted.Parts;
        to.WriteLine("Fitted now:");
        to.WriteLine($"  drive spring {parts.DriveSpring.Id}, flyweight {Flyweight(parts.Flyweight)}, "
            + $"driven spring {parts.DrivenSpring.Id} in hole {parts.Hole}, helix {parts.Helix.Id}");
        to.WriteLine($"  engages at {Rpm(fitted.EngagementRpm)}, {ShiftsOut(fitted.ShiftOutRpm)}, "
            + $"misses the target by {Miss(fitted.Miss)} tolerances, {Anchored(fitted.Anchored)}");
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
        Rpm(pick.EngagementRpm),
        pick.ShiftOutRpm is { } rpm ? Rpm(rpm) : "never",
        Miss(pick.Miss),
        Money.Text(pick.Price),
        pick.WithinTolerance ? "yes" : "no",
        pick.Anchored ? "yes" : "no",
        Changes(pick),
    ];

    private static string Changes(PickWire pick)
    {
        PartsWire parts = pick.Parts;
        string[] texts = [.. pick.Changes.Select(slot => slot switch
        {
            "driveSpring" => $"drive spring {parts.DriveSpring.Id}",
            "flyweight" => $"flyweight {Flyweight(parts.Flyweight)}",
            "drivenSpring" => $"driven spring {parts.DrivenSpring.Id}",
            "hole" => $"hole {parts.Hole}",
            _ => $"helix {parts.Helix.Id}",
        })];
        return texts.Length == 0 ? "nothing" : string.Join(", ", texts);
    }

    private static string Flyweight(FlyweightChoiceWire flyweight)
    {
        string masses = string.Join(
            ", ", flyweight.StationMasses.Select(mass => $"{mass.Key} {mass.Value.Value} {mass.Value.Unit}"));
        return masses.Length == 0 ? flyweight.Id : $"{flyweight.Id} ({masses})";
    }

    private static string Rpm(double rpm) => $"{rpm:F1} rpm";

    private static string Held(TargetsWire targets) => targets.ShiftRpm is { } flat
        ? Rpm(flat)
        : string.Join(", ", targets.ShiftCurve!.Select(point => $"{Rpm(point.Rpm)} at ratio {point.Ratio}"));

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
