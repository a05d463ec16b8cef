using System.Globalization;
using PartPicker.Catalog;
using PartPicker.Parts;
using PartPicker.Tests.Catalog;
using UnitsNet;

namespace PartPicker.Tests.Selection;

/// <summary>Items written as a keeper would write them and read by the import: what comes back is what it accepts.</summary>
internal static class CatalogText
{
    private static readonly Dictionary<ItemKind, string> PartFiles = new()
    {
        [ItemKind.DriveSpring] = TestCatalog.DriveSprings,
        [ItemKind.Flyweight] = TestCatalog.Flyweights,
        [ItemKind.DrivenSpring] = TestCatalog.DrivenSprings,
        [ItemKind.Helix] = TestCatalog.Helices,
        [ItemKind.Belt] = TestCatalog.Belts,
        [ItemKind.Shim] = TestCatalog.Shims,
        [ItemKind.Kit] = TestCatalog.Kits,
    };

    private static readonly Dictionary<ItemKind, string> MachineLists = new()
    {
        [ItemKind.Engine] = "engines",
        [ItemKind.DriveClutch] = "driveClutches",
        [ItemKind.DrivenClutch] = "drivenClutches",
        [ItemKind.Gearing] = "gearings",
        [ItemKind.Machine] = "machines",
    };

    private static readonly Dictionary<string, string> Units = new()
    {
        [Length.Info.Name] = "m",
        [Mass.Info.Name] = "kg",
        [Force.Info.Name] = "N",
        [ForcePerLength.Info.Name] = "N/m",
        [Torque.Info.Name] = "N·m",
        [Power.Info.Name] = "W",
        [RotationalStiffness.Info.Name] = "N·m/rad",
        [LinearDensity.Info.Name] = "kg/m",
        [Temperature.Info.Name] = "K",
    };

    public static ImportResult Import(IReadOnlyCollection<CatalogItem> items)
    {
        TestCatalog catalog = new TestCatalog().Clear();
        foreach (IGrouping<ItemKind, CatalogItem> kind in items.Where(i => i is Part).GroupBy(i => i.Kind))
            catalog.Set(PartFiles[kind.Key], Csv(kind.Key, kind));
        IEnumerable<string> lists = items.OfType<MachinePiece>().GroupBy(i => i.Kind)
            .Select(kind => $"\"{MachineLists[kind.Key]}\": [{string.Join(", ", kind.Select(Json))}]");
        return catalog.Set(TestCatalog.Machine, $"{{ {string.Join(", ", lists)} }}").Read();
    }

    private static string Csv(ItemKind kind, IEnumerable<CatalogItem> items)
    {
        IReadOnlyList<Field> fields = FieldRegistry.For(kind);
        IEnumerable<string> rows = items.Select(item => string.Join(",", fields.Select(f => Cell(f, f.Get(item)))));
        return string.Join("\n", rows.Prepend(string.Join(",", fields.Select(f => f.Name)))) + "\n";
    }

    private static string Cell(Field field, object? value) => value switch
    {
        null => "",
        IReadOnlyList<CurvePoint> points => string.Join("; ", points.Select(p => $"{X(field, p.X)}: {Y(field, p.Y)}")),
        IReadOnlyList<double> list => string.Join("; ", list.Select(v => Y(field, v))),
        IReadOnlyList<NamedCurve> steps => string.Join(" | ", steps.Select(s => $"{s.Name} = {Cell(field, s.Points)}")),
        IReadOnlyList<ClutchFit> fits => string.Join("; ", fits.Select(f =>
            f.FromYear is null && f.ToYear is null ? f.ClutchId : $"{f.ClutchId} {f.FromYear}-{f.ToYear}")),
        IReadOnlyList<KitLine> lines => string.Join("; ", lines.Select(l => $"{l.PartId} x{l.Packs}")),
        double number => Y(field, number),
        Enum word => Word(word),
        _ => $"{value}",
    };

    private static string Json(MachinePiece piece)
    {
        var members = new List<string> { "\"origin\": \"measured\"" };
        foreach (Field field in FieldRegistry.For(piece.Kind))
        {
            if (field.Get(piece) is { } value && (value is not string text || text.Length > 0))
                members.Add($"\"{field.Name}\": {JsonValue(field, value)}");
        }

        if (piece is Machine { Fitted: { } fitted } machine)
        {
            members.Add($"\"fitted\": {Set(fitted)}");
            members.Add($"\"baselines\": [{string.Join(", ", machine.Baselines.Select(Run))}]");
        }

        return $"{{ {string.Join(", ", members)} }}";
    }

    private static string JsonValue(Field field, object value) => value switch
    {
        IReadOnlyList<CurvePoint> points =>
            $"[{string.Join(", ", points.Select(p => $"[{Quoted(X(field, p.X))}, {Quoted(Y(field, p.Y))}]"))}]",
        IReadOnlyList<SpringHole> holes =>
            $"{{ {string.Join(", ", holes.Select(h => $"\"{h.Name}\": {Number(h.TwistDeg)}"))} }}",
        double number => Quoted(Y(field, number)),
        int count => $"{count}",
        Enum word => $"\"{Word(word)}\"",
        _ => $"\"{value}\"",
    };

    private static string Set(PartSet set) =>
        $"{{ \"driveSpring\": \"{set.DriveSpring}\", \"flyweight\": \"{set.Flyweight}\", \"drivenSpring\": \"{set.DrivenSpring}\", "
        + (set.AdjusterStep is { } step ? $"\"adjusterStep\": \"{step}\", " : "")
        + $"\"hole\": \"{set.Hole}\", \"helix\": \"{set.Helix}\", \"stationMasses\": {{ "
        + string.Join(", ", set.StationMasses.Select(m => $"\"{Word(m.Key)}\": \"{Number(m.Value)} kg\"")) + " } }";

    private static string Run(Baseline run) =>
        $"{{ \"parts\": {Set(run.Parts)}, "
        + (run.EngagementRpm is { } engagement ? $"\"engagementRpm\": {Number(engagement)}, " : "")
        + (run.FlatShiftRpm is { } flat
            ? $"\"shiftRpm\": {Number(flat)}, "
            : $"\"shiftCurve\": [{string.Join(", ", run.Shift.Select(p => $"{{ \"ratio\": {Number(p.Ratio)}, \"rpm\": {Number(p.Rpm)} }}"))}], ")
        + (run.Air.TemperatureK is { } kelvin ? $"\"temperature\": \"{Number(kelvin)} K\", " : "")
        + $"\"altitude\": \"{Number(run.Air.AltitudeM)} m\" }}";

    private static string X(Field field, double si) => Written(field.XDimension, si / field.XScale);

    private static string Y(Field field, double si) => Written(field.Dimension, si / field.YScale);

    private static string Written(QuantityInfo? dimension, double value) =>
        dimension is null ? Number(value) : $"{Number(value)} {Units[dimension.Name]}";

    private static string Quoted(string text) => text.Contains(' ') ? $"\"{text}\"" : text;

    private static string Word(Enum word) => $"{char.ToLowerInvariant(word.ToString()[0])}{word.ToString()[1..]}";

    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
