using PartPicker.Catalog;
using PartPicker.Mechanics;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.TestKit;
using UnitsNet;

namespace PartPicker.Tests.Selection;

/// <summary>A random catalog with some numbers thrown anywhere in their ranges, as far as the import takes it.</summary>
internal sealed class OddCatalog
{
    // These are given together or not at all.
    private static readonly string[] Grouped =
    [
        "firstLength", "firstLoad", "secondLength", "secondLoad", "loadLength", "load", "firstTwistDeg", "firstTorque",
        "secondTwistDeg", "secondTorque", "heelCurve", "heelMasses", "middleCurve", "middleMasses", "tipCurve", "tipMasses",
        "finishDeg", "finishTravel", "helixDeg", "anglePoints", "adjusterCurves", "pinMasses", "heelHolding", "heelMassLimit",
        "heelLengthLimit", "middleHolding", "middleMassLimit", "middleLengthLimit", "tipHolding", "tipMassLimit",
        "tipLengthLimit", "adjusterFromDeg", "adjusterToDeg", "adjusterStepDeg", "contents",
        "peakTorqueRpm", "peakTorque", "peakPowerRpm", "peakPower",
    ];

    private readonly Random random;

    public OddCatalog(int seed)
    {
        random = new Random(seed);
        var plain = new RandomCatalog(seed, maxPerPool: 2);
        CatalogItem[] items = [.. plain.Snapshot.All<Part>().Select(Importable), .. plain.Request.Machine.Pieces.Where(p => p is not Part)];
        for (int i = random.Next(4, 12); i > 0; i--)
        {
            int at = random.Next(items.Length);
            items[at] = Spoiled(items[at]);
        }

        ImportResult import = CatalogText.Import(items);
        Findings = import.Findings;
        if (import.Contents is { } contents)
        {
            Snapshot = new CatalogSnapshot("odd", contents);
            MachineProfile machine = Snapshot.FindMachine("machine")!;

            // What starts the machine may have been spoiled: only the belt has an engagement to ask for.
            bool belt = machine.DriveClutch.StartDevice == StartDevice.Belt;
            Request = plain.Request with
            {
                Machine = machine,
                Target = plain.Request.Target with { EngagementRpm = belt ? plain.Request.Target.EngagementRpm ?? 2000 : null },
                LaunchRpm = belt ? plain.Request.LaunchRpm : null,
                Outlet = null,
                InStockOnly = false,
                PriceCeilingMinor = null,
            };
        }
    }

    public IReadOnlyList<ImportFinding> Findings { get; }

    /// <summary>Null where the import refused the catalog.</summary>
    public CatalogSnapshot? Snapshot { get; }

    public PickRequest? Request { get; }

    // The import takes no mass twice.
    private static CatalogItem Importable(Part part) => part is Flyweight { TipMasses: { } masses } flyweight
        ? flyweight with { TipMasses = [.. masses.Distinct()] }
        : part;

    private CatalogItem Spoiled(CatalogItem item)
    {
        Field[] fields =
        [
            .. FieldRegistry.For(item.Kind).Where(f => f.Shape != FieldShape.Reference && f.Name is not ("id" or "name")),
        ];
        if (fields.Length == 0)
            return item;
        Field field = fields[random.Next(fields.Length)];
        object? value = field.Get(item);
        return value is null && Grouped.Contains(field.Name) ? item : field.Set(item, field.Shape switch
        {
            FieldShape.Quantity when field.Dimension == Length.Info && random.Next(3) == 0 => NearLimit(),
            FieldShape.Quantity or FieldShape.Number => Odd(value as double?, field.Min, field.Max),
            FieldShape.Count => random.Next((int)field.Min, (int)field.Max + 1),
            FieldShape.Text => WireMaterial.All[random.Next(WireMaterial.All.Count)].Key,
            FieldShape.Choice => Enum.ToObject(field.ChoiceType!, random.Next(Enum.GetNames(field.ChoiceType!).Length)),
            FieldShape.Curve => Curve(field, value as IReadOnlyList<CurvePoint>),
            FieldShape.Quantities => Several(_ => Odd(null, field.Min, field.Max)).Distinct().ToArray(),
            FieldShape.NamedCurves => ((IReadOnlyList<NamedCurve>)value!)
                .Select(s => s with { Points = Curve(field, s.Points) }).ToArray(),
            FieldShape.ClutchFits => Several(i => new ClutchFit($"clutch-{i}", 2000 + i, 2010 + i)).ToArray(),
            FieldShape.KitLines => ((IReadOnlyList<KitLine>)value!).Select(l => l with { Packs = random.Next(1, 9) }).ToArray(),
            FieldShape.Holes => Several(i => new SpringHole($"{i}", Odd(60, field.Min, field.Max))).ToArray(),
            _ => throw new InvalidOperationException($"{field.Shape}"),
        });
    }

    private IEnumerable<T> Several<T>(Func<int, T> make) => Enumerable.Range(1, random.Next(1, 4)).Select(make);

    private CurvePoint[] Curve(Field field, IReadOnlyList<CurvePoint>? points)
    {
        if (points is not null && random.Next(2) == 0)
        {
            // One point of a curve that is given, moved by a little or by much.
            CurvePoint[] moved = [.. points];
            int at = random.Next(moved.Length);
            moved[at] = random.Next(3) == 0 && field.XDimension == Length.Info ? moved[at] with { X = NearLimit() }
                : random.Next(2) == 0 ? moved[at] with { X = Odd(moved[at].X, field.XRange.Min, field.XRange.Max) }
                : moved[at] with { Y = Odd(moved[at].Y, field.Min, field.Max) };
            return [.. moved.OrderBy(p => p.X)];
        }

        int count = random.Next(2, 6);
        (double least, double most) = field.XRange;
        double[] xs = [.. Enumerable.Range(0, count).Select(_ => Odd(null, least, most)).Distinct().Order()];
        double[] ys = [.. xs.Select(_ => Odd(null, field.Min, field.Max)).Order()];
        if (field.Name == "loadTable")
            Array.Reverse(ys);
        return [.. xs.Zip(ys, (x, y) => new CurvePoint(x, y))];
    }

    /// <summary>A length of the machine, or within a tenth of a millimetre of one.</summary>
    private double NearLimit()
    {
        double[] limitsMm = [24.5, 38.6, 41, 40, 42, 46, 47.5, 56, 60, 72];
        return limitsMm[random.Next(limitsMm.Length)] / 1000 + 2e-4 * (random.NextDouble() - 0.5);
    }

    private double Odd(double? now, double min, double max) => random.Next(6) switch
    {
        0 => min,
        1 => max,
        2 => min + random.NextDouble() * (max - min),
        3 when now is { } value => Math.Clamp(value * (1 + 1e-3 * (random.NextDouble() - 0.5)), min, max),
        4 when now is { } value => Math.Clamp(value * (0.8 + 0.4 * random.NextDouble()), min, max),
        _ => Math.Clamp(max * Math.Pow(10, -5 * random.NextDouble()), min, max),
    };
}
