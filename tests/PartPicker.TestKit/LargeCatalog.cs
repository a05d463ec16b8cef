using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;

namespace PartPicker.TestKit;

/// <summary>
/// A generated catalog of any size for one machine, with springs, flyweights and helices spread as a well-stocked shop
/// would have them; some do not fit. Equal seeds, equal catalogs.
/// </summary>
public sealed class LargeCatalog
{
    private const double Mm = 1e-3;
    private readonly Random random;

    public LargeCatalog(int seed, LargeCatalogSize size)
    {
        random = new Random(seed);
        var fitted = new PartSet(
            "ds-0", "fw-0", new Dictionary<StationName, double> { [StationName.Heel] = 0, [StationName.Tip] = 0.008 },
            "vs-0", "hole-1", "hx-0");
        var baseline = new Baseline(fitted, 2000, [], 7800, new AirState(0, null));
        List<CatalogItem> items =
        [
            .. Machine(fitted, baseline, size.Holes),
            .. Enumerable.Range(0, size.DriveSprings).Select(DriveSpring),
            .. Enumerable.Range(0, size.Bodies).Select(i => Body(i, size.MassesPerStation)),
            .. Enumerable.Range(0, size.DrivenSprings).Select(DrivenSpring),
            .. Enumerable.Range(0, size.Helices).Select(Helix),
        ];
        var outlet = new Outlet("corner", "EUR", items.OfType<Part>()
            .Where(p => p is not Parts.Belt)
            .ToDictionary(p => p.Id, _ => new Offer(100 * random.Next(15, 120), random.Next(5))));
        Snapshot = new CatalogSnapshot($"large-{seed}", new CatalogContents(items, [outlet]));
    }

    public CatalogSnapshot Snapshot { get; }

    /// <summary>A question that a shop may ask: an engagement, and a curve that is level or falls a little to full shift.</summary>
    public PickRequest Request(int seed)
    {
        var ask = new Random(seed);
        double low = ask.Next(7200, 8100);
        return new PickRequest
        {
            Machine = Snapshot.FindMachine("machine")!,
            Target = new ShiftTarget(
                ask.Next(1800, 2500),
                ask.Next(2) == 0
                    ? new ShiftGoal.Flat(low)
                    : new ShiftGoal.ByRatio([new(2.6, low), new(0.9, low + ask.Next(-150, 300))])),
            SlipMargin = 1.0,
        };
    }

    private DriveSpring DriveSpring(int i) => new()
    {
        Id = $"ds-{i}",
        FreeLength = Length.FromMillimeters(i == 0 ? 94.5 : Between(85, 100)),
        Rate = ForcePerLength.FromNewtonsPerMeter(i == 0 ? 19_000 : 10 * Math.Round(Between(1400, 2700))),
        OutsideDiameter = Length.FromMillimeters(random.Next(20) == 0 ? 58 : 54),
        SolidLength = Length.FromMillimeters(Between(26, 38)),
    };

    private Flyweight Body(int i, int masses) => new()
    {
        Id = $"fw-{i}",
        BodyMass = Mass.FromGrams(i == 0 ? 40 : Between(30, 48)),
        ArmLength = Length.FromMillimeters(42),
        RadiusCurve = i == 0 ? Curve(1, 0) : Curve(Between(0.94, 1.06), Between(-0.8, 0.8)),
        HeelCurve = [new(0, 36 * Mm), new(7 * Mm, 42.5 * Mm), new(14 * Mm, 48 * Mm), new(21 * Mm, 52.6 * Mm), new(28 * Mm, 56.4 * Mm)],
        HeelMasses = [.. Enumerable.Range(0, masses).Select(m => m * 0.0015)],
        TipCurve = [new(0, 44 * Mm), new(7 * Mm, 57 * Mm), new(14 * Mm, 68 * Mm), new(21 * Mm, 77.5 * Mm), new(28 * Mm, 86 * Mm)],
        TipMasses = [.. Enumerable.Range(0, masses).Select(m => 0.006 + m * 0.002)],
    };

    // Steeper or flatter as a whole, and bent in the middle.
    private static CurvePoint[] Curve(double slope, double bend)
    {
        (double X, double Y)[] points = [(0, 40.5), (3, 44.5), (9, 51.1), (15, 56.6), (21, 61.5), (28, 66.9)];
        return [.. points.Select(p => new CurvePoint(
            p.X * Mm, (40.5 + slope * (p.Y - 40.5) + bend * Math.Sin(p.X / 28 * Math.PI)) * Mm))];
    }

    private DrivenSpring DrivenSpring(int i) => new()
    {
        Id = $"vs-{i}",
        FreeLength = Length.FromMillimeters(i == 0 ? 100 : Between(80, 110)),
        Rate = ForcePerLength.FromNewtonsPerMeter(i == 0 ? 9000 : 10 * Math.Round(Between(300, 1200))),
        TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(i == 0 ? 9 : Math.Round(Between(4, 13), 2)),
        InsideDiameter = Length.FromMillimeters(52),
        TwistLimitDeg = random.Next(10) == 0 ? 150 : 330,
        WindingHand = WindingHand.Right,
    };

    private Helix Helix(int i)
    {
        var named = new Helix { Id = $"hx-{i}", CamRadius = Length.FromMillimeters(42) };
        if (i == 0 || i % 5 == 4)
            return named with { HelixDeg = i == 0 ? 43 : Math.Round(Between(33, 52), 1) };
        return i % 5 == 0
            ? named with { AnglePoints = [new(0, Between(0.66, 0.9)), new(9 * Mm, Between(0.6, 0.8)), new(24 * Mm, Between(0.55, 0.72))] }
            : named with
            {
                HelixDeg = Math.Round(Between(38, 54), 1),
                FinishDeg = Math.Round(Between(31, 44), 1),
                FinishTravel = Length.FromMillimeters(24),
            };
    }

    private static CatalogItem[] Machine(PartSet fitted, Baseline baseline, int holes) =>
    [
        new Machine
        {
            Id = "machine", EngineId = "engine", DriveClutchId = "drive", DrivenClutchId = "driven", BeltId = "belt",
            GearingId = "gearing", CentreDistance = Length.FromMillimeters(270), Fitted = fitted, Baselines = [baseline],
        },
        new Engine
        {
            Id = "engine", IdleRpm = 1200, RevLimitRpm = 9000,
            TorqueCurve =
            [
                .. new (double, double)[]
                {
                    (1200, 38), (2000, 48), (3000, 59), (4000, 68), (5000, 75), (6000, 80), (6800, 82), (7500, 80.5),
                    (8200, 76), (8700, 69), (9200, 58),
                }.Select(p => new CurvePoint(p.Item1, p.Item2)),
            ],
        },
        new DriveClutch
        {
            Id = "drive", SheaveHalfAngleDeg = 13, ContactTravel = Length.FromMillimeters(3),
            FullShiftTravel = Length.FromMillimeters(24.5), ContactPitchRadius = Length.FromMillimeters(34), ArmCount = 3,
            SpringLength = Length.FromMillimeters(72), FlyweightFrictionShare = 0.012,
            CupBore = Length.FromMillimeters(56), PostDiameter = Length.FromMillimeters(40),
            ArmLength = Length.FromMillimeters(42),
        },
        new DrivenClutch
        {
            Id = "driven", CamRadius = Length.FromMillimeters(42), CamTorqueShare = 0.5,
            SpringLength = Length.FromMillimeters(60), CamFrictionDeg = 0.8, HubDiameter = Length.FromMillimeters(46),
            WindingHand = WindingHand.Right,
            Holes = [.. Enumerable.Range(1, holes).Select(h => new SpringHole($"hole-{h}", 40 + 100.0 * h / holes))],
        },
        new Belt
        {
            Id = "belt", PitchLength = Length.FromMillimeters(992),
            MassPerLength = LinearDensity.FromKilogramsPerMeter(0.45), Friction = 0.36, Efficiency = 0.95,
        },
        new Gearing { Id = "gearing", TyreRadius = Length.FromMeters(0.34), FinalDrive = 11 },
    ];

    private double Between(double from, double to) => from + random.NextDouble() * (to - from);
}

/// <summary>How many parts of each kind; a body has two stations.</summary>
public sealed record LargeCatalogSize(
    double Nominal, int DriveSprings, int Bodies, int MassesPerStation, int DrivenSprings, int Holes, int Helices);
