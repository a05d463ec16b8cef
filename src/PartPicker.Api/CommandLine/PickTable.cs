using PartPicker.Api.Wire;
using PartPicker.Parts;

namespace PartPicker.Api.CommandLine;

/// <summary>Prints a ranked answer for a person at a console.</summary>
/// <param name="hole">What the clutch has for its spring: hole or setting.</param>
internal sealed class PickTable(string hole, TextWriter to)
{
    private static readonly string[] Heads =
        ["rank", "engages", "shifts out", "miss", "price", "work", "within", "anchored", "change"];

    public static void Print(PickAnswerWire answer, CatalogSnapshot catalog, TextWriter to)
    {
        bool adjuster = catalog.FindMachine(answer.Request.Machine)?.DrivenClutch.HasAdjuster ?? false;
        new PickTable(adjuster ? "setting" : "hole", to).Print(answer);
    }

    private void Print(PickAnswerWire answer)
    {
        PickRequestWire request = answer.Request;
        to.WriteLine($"Machine {request.Machine}: {Engage(request.Targets)}to hold {Held(request.Targets)}.");
        to.WriteLine();
        PrintFitted(answer.Fitted);
        to.WriteLine();
        if (answer.Picks.Count == 0)
            to.WriteLine("No set of parts can be ranked.");
        else
            PrintRows([Heads, .. answer.Picks.Select(Row)]);
        foreach (ObstacleWire obstacle in answer.InTheWay)
            to.WriteLine($"In the way: {obstacle.Sentence}");
        PrintHighlights(answer);
        if (answer.Picks.Count > 0)
        {
            PrintPurchases(answer.Picks[0].ToBuy, request.Outlet);
            PrintCautions(answer.Picks[0]);
        }

        to.WriteLine();
    }

    private void PrintFitted(FittedWire fitted)
    {
        PartsWire parts = fitted.Parts;
        to.WriteLine("Fitted now:");
        to.WriteLine($"  drive spring {parts.DriveSpring.Id}{Shims(parts.Shims)}, "
            + $"flyweight {Flyweight(parts.Flyweight)}, "
            + $"driven spring {parts.DrivenSpring.Id} in {hole} {parts.Hole}, helix {parts.Helix.Id}");
        to.WriteLine($"  {Engages(fitted.EngagementRpm)}{ShiftsOut(fitted.ShiftOutRpm)}, "
            + $"misses the target by {Miss(fitted.Miss)} tolerances, {Anchored(fitted.Anchored)}");
    }

    private void PrintHighlights(PickAnswerWire answer)
    {
        PrintHighlight("Cheapest", answer.Cheapest);
        PrintHighlight("Fewest changes", answer.FewestChanges);
    }

    private void PrintHighlight(string what, ShortPickWire? pick)
    {
        if (pick is not null)
        {
            to.WriteLine($"{what} within tolerance{(pick.Provisional ? " so far" : "")}: price {Money.Text(pick.Price)}, "
                + $"work {Work(pick.LabourMinutes)}, miss {Miss(pick.Miss)}, {Changes(pick.Changes, pick.Parts)}");
        }
    }

    private void PrintPurchases(IReadOnlyList<PurchaseWire> lines, string? outlet)
    {
        if (lines.Count == 0)
            return;
        to.WriteLine();
        to.WriteLine($"To buy for the first choice at {outlet}:");
        PrintRows([.. lines.Select(Row)], indent: "  ");
    }

    private string[] Row(PurchaseWire line) =>
    [
        $"{line.Packs} x {line.Id}",
        line.Name,
        Money.Text(line.Price),
        line.Stock is { } stock ? $"{stock} in stock" : "stock not known",
        line.Alternate is { } other ? FromStock(other, line.Covers) : "",
    ];

    private string FromStock(AlternateWire alternate, IReadOnlyList<string> slots)
    {
        string bought = string.Join(" + ", alternate.ToBuy.Select(line => $"{line.Packs} x {line.Id}"));
        string place = slots.Contains("drivenSpring") ? $" in {hole} {alternate.Parts.Hole}" : "";
        return $"from stock: {bought} for {Changes(slots, alternate.Parts)}{place}, miss {Miss(alternate.Miss)}"
            + (alternate.WithinTolerance ? "" : ", out of tolerance");
    }

    private void PrintCautions(PickWire first)
    {
        to.WriteLine();
        to.WriteLine("Before you fit the first choice:");
        foreach (CautionWire caution in first.Cautions)
            to.WriteLine($"  {caution.Signal}: {caution.Sentence}");
    }

    private string[] Row(PickWire pick) =>
    [
        $"{pick.Rank}",
        pick.EngagementRpm is { } engagement ? Rpm(engagement) : "not by belt",
        pick.ShiftOutRpm is { } rpm ? Rpm(rpm) : "never",
        Miss(pick.Miss),
        Money.Text(pick.Price),
        Work(pick.LabourMinutes),
        pick.WithinTolerance ? "yes" : "no",
        pick.Anchored ? "yes" : "no",
        Changes(pick.Changes, pick.Parts),
    ];

    private string Changes(IReadOnlyList<string> changes, PartsWire parts)
    {
        string[] texts = [.. changes.Select(slot => slot switch
        {
            "driveSpring" => $"drive spring {parts.DriveSpring.Id}{Shims(parts.Shims)}",
            "flyweight" => $"flyweight {Flyweight(parts.Flyweight)}",
            "drivenSpring" => $"driven spring {parts.DrivenSpring.Id}",
            "hole" => $"{hole} {parts.Hole}",
            _ => $"helix {parts.Helix.Id}",
        })];
        return texts.Length == 0 ? "nothing" : string.Join(", ", texts);
    }

    private static string Shims(FittedShimsWire? shims) => shims is null ? "" : $" on {shims.Count} x {shims.Id}";

    private static string Flyweight(FlyweightChoiceWire flyweight)
    {
        IEnumerable<string> settings =
            flyweight.StationMasses.Select(mass => $"{mass.Key} {mass.Value.Value} {mass.Value.Unit}");
        if (flyweight.AdjusterStep is { } step)
            settings = settings.Prepend($"step {step}");
        string more = string.Join(", ", settings);
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
        { SpeedCurve: { } curve } =>
            string.Join(", ", curve.Select(p => $"{Rpm(p.Rpm)} at {p.Speed.Value:0.#} {p.Speed.Unit}")),
        _ => "the rpm of greatest power",
    };

    private static string ShiftsOut(double? rpm) =>
        rpm is { } value ? $"shifts out at {Rpm(value)}" : "does not shift out";

    private static string Work(int? minutes) => minutes is { } known ? $"{known} min" : "not known";

    private static string Miss(double? miss) => miss is { } value ? $"{value:F3}" : "an unknown number of";

    private static string Anchored(bool anchored) => anchored ? "anchored to a measured run" : "not anchored";

    // Columns as wide as their widest entry; the last one runs free.
    private void PrintRows(IReadOnlyList<string[]> rows, string indent = "")
    {
        int[] widths = [.. rows[0].Select((_, column) => rows.Max(row => row[column].Length))];
        foreach (string[] row in rows)
        {
            IEnumerable<string> cells = row.Select((cell, column) => cell.PadRight(widths[column]));
            to.WriteLine(indent + string.Join("  ", cells).TrimEnd());
        }
    }
}
