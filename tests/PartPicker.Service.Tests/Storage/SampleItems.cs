using PartPicker.Parts;

namespace PartPicker.Service.Tests.Storage;

/// <summary>Items that state every field of the registry, with numbers that no short decimal hits.</summary>
internal static class SampleItems
{
    public static CatalogItem Full(ItemKind kind, string? id = null)
    {
        CatalogItem item = FieldRegistry.Blank(kind);
        foreach (Field field in FieldRegistry.For(kind))
            item = field.Set(item, Value(field));
        item = item with { Id = id ?? IdOf(kind), Origins = OriginsOf(kind) };
        return item is Machine machine ? machine with { Fitted = Fitted, Baselines = [Flat, Sloped] } : item;
    }

    public static string IdOf(ItemKind kind) => $"a-{kind}";

    public static PartSet Fitted => new(
        DriveSpring: IdOf(ItemKind.DriveSpring),
        Flyweight: IdOf(ItemKind.Flyweight),
        StationMasses: new Dictionary<StationName, double> { [StationName.Heel] = 0.1 / 3, [StationName.Tip] = 0 },
        DrivenSpring: IdOf(ItemKind.DrivenSpring),
        Hole: "2",
        Helix: IdOf(ItemKind.Helix))
    {
        AdjusterStep = "B \"2\"",
        Shims = new FittedShims(IdOf(ItemKind.Shim), 2),
    };

    public static CatalogContents Contents(double firstLoad = 123.4) => new(
        [
            .. Enum.GetValues<ItemKind>().Where(k => k != ItemKind.DriveSpring).Select(k => Full(k)),
            new DriveSpring { Id = IdOf(ItemKind.DriveSpring), FirstLoad = UnitsNet.Force.FromNewtons(firstLoad) },
        ],
        [
            new Outlet("north", "CAD", new Dictionary<string, Offer>
            {
                [IdOf(ItemKind.Helix)] = new(12_345, 3),
                [IdOf(ItemKind.DriveSpring)] = new(null, 0),
                [IdOf(ItemKind.Flyweight)] = new(99_00, null),
                [IdOf(ItemKind.Kit)] = new(1, 1),
            })
            {
                LabourMinutes = new Dictionary<Slot, int> { [Slot.Helix] = 45, [Slot.DriveSpring] = 0 },
            },
            new Outlet("east", "EUR", new Dictionary<string, Offer> { [IdOf(ItemKind.Helix)] = new(null, null) }),
        ]);

    private static Baseline Flat => new(
        Fitted, EngagementRpm: 1970, Shift: [], FlatShiftRpm: 7940.5, Air: new(AltitudeM: 300, TemperatureK: 281.15) { RelativeHumidity = 0.7 });

    private static Baseline Sloped => new(
        Fitted, EngagementRpm: null, Shift: [new(2.4, 7880), new(0.9, 8010)], FlatShiftRpm: null, Air: default);

    private static Dictionary<string, Origin> OriginsOf(ItemKind kind) => FieldRegistry.For(kind)
        .Select((field, index) => (field.Name, Origin: (Origin)(index % 3)))
        .ToDictionary(o => o.Name, o => o.Origin);

    /// <summary>A value in a form that compares by what it holds: records do not look into their lists.</summary>
    public static object? Comparable(object? value) => value is IEnumerable<NamedCurve> curves
        ? curves.SelectMany(c => c.Points.Select(p => (c.Name, p))).ToArray()
        : value;

    private static object Value(Field field) => field.Shape switch
    {
        FieldShape.Quantity or FieldShape.Number => Between(field.Min, field.Max, 1),
        FieldShape.Count => (int)field.Max,
        FieldShape.Text => $"{field.Name} \"ü\" 2",
        FieldShape.Choice => Enum.GetValues(field.ChoiceType!).GetValue(1)!,
        FieldShape.Reference => IdOf(field.RefersTo ?? field.Kind),
        FieldShape.Curve => Curve(field, 1),
        FieldShape.NamedCurves => new NamedCurve[] { new("1", Curve(field, 1)), new("B \"2\"", Curve(field, 3)) },
        FieldShape.Quantities => new[] { field.Min, Between(field.Min, field.Max, 1) },
        FieldShape.Holes => new SpringHole[]
        {
            new("1", Between(field.Min, field.Max, 1)),
            SpringHole.Pair("B/2", "ü", field.Max),
        },
        FieldShape.ClutchFits => new ClutchFit[] { new("dr-1", (int)field.Min, (int)field.Max), new("dn-2", null, null) },
        FieldShape.KitLines => new KitLine[] { new(IdOf(ItemKind.Helix), (int)field.Max), new("ds", 1) },
        _ => throw new NotSupportedException($"No sample value for the shape {field.Shape} of {field.Name}."),
    };

    private static CurvePoint[] Curve(Field field, int sevenths) =>
    [
        new(
            Between(field.XRange.Min, field.XRange.Max, sevenths), Between(field.Min, field.Max, sevenths)),
        new(
            Between(field.XRange.Min, field.XRange.Max, sevenths + 1), Between(field.Min, field.Max, sevenths + 1)),
    ];

    // Sevenths have no finite binary or decimal form, so a digit that is lost shows.
    private static double Between(double min, double max, int sevenths) => min + (max - min) * sevenths / 7;
}
