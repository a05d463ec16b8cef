using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;

namespace PartPicker.TestKit;

/// <summary>
/// Small random catalogs with everything that makes selection hard: notches, bumpy torque, slip, sets that do not
/// shift, parts that do not fit, ties and duplicates, unknown prices, both thrust laws. Equal seeds, equal catalogs.
/// </summary>
public sealed class RandomCatalog
{
    private const double Mm = 1e-3;
    private readonly Random random;

    // Which kits are replaced or excluded, drawn apart so that the rest of a seed's catalog does not hang on it.
    private readonly Random kitFates;
    private readonly bool ramps;
    private readonly bool startsByBelt;

    public RandomCatalog(int seed, int maxPerPool = 4)
    {
        random = new Random(seed);
        kitFates = new Random(seed + 1_000_000);
        Machine machine = MachineItem();
        DriveClutch drive = DriveClutch();
        var items = new List<CatalogItem> { machine, Engine(), drive, DrivenClutch(), Belt(), Gearing() };
        ramps = drive.Family == DriveFamily.RollerOnAdjustableRamp;
        items.AddRange(Many(maxPerPool, DriveSpring));
        items.AddRange(Many(3, Flyweight));
        items.AddRange(Many(maxPerPool, DrivenSpring));
        items.AddRange(Many(maxPerPool, Helix));
        items.AddRange(Many(2, Shim));
        PartSet fitted = Fitted(items);
        items.AddRange(Many(3, i => Kit(i, [.. items.OfType<Part>().Where(p => p is not Parts.Belt)])));
        startsByBelt = drive.StartDevice == StartDevice.Belt;
        items[0] = machine with { Fitted = fitted, Baselines = [Baseline(fitted)] };
        var outlet = new Outlet("corner", "EUR", items.OfType<Part>()
            .Where(_ => random.Next(5) > 0)
            .ToDictionary(p => p.Id, _ => new Offer(random.Next(4) == 0 ? null : 1000 * random.Next(1, 4), random.Next(3))));
        Snapshot = new CatalogSnapshot($"seed-{seed}", new CatalogContents(items, [outlet]));
        Request = MakeRequest();
    }

    public CatalogSnapshot Snapshot { get; }

    public PickRequest Request { get; }

    private PickRequest MakeRequest()
    {
        double tolerance = Pick(5.0, 50, 100, 100, 300, 2000);
        HashSet<Slot> keep = [.. Enum.GetValues<Slot>().Where(_ => random.Next(6) == 0)];
        Outlet? outlet = random.Next(4) == 0 ? null : Snapshot.FindOutlet("corner");
        double weight = Pick(0.3, 0.3, 0.5, 0.0, 1.0);
        return new PickRequest
        {
            Machine = Snapshot.FindMachine("machine")!,
            Target = new ShiftTarget(startsByBelt ? Pick(1800, 2100, 2400, 3200) : null, Goal()),
            Tolerances = new Tolerances(startsByBelt ? tolerance : Tolerances.Standard.EngagementRpm, tolerance),
            Weights = startsByBelt ? new ScoreWeights(weight, 1 - weight) : ScoreWeights.Standard,
            Air = new AirState(Pick(0, 800, 2500), random.Next(2) == 0 ? null : 270 + random.Next(40)),
            AirLaw = random.Next(2) == 0 ? AirLaw.SaeJ1349 : AirLaw.Iso1585,
            LaunchRpm = startsByBelt && random.Next(5) == 0 ? Between(1500, 2300) : null,
            SlipMargin = random.Next(3) == 0 ? Between(0.8, 1.5) : null,
            Keep = keep,
            Exclude = Snapshot.All<Part>()
                .Where(p => p is Parts.Kit ? kitFates.Next(8) == 0 : p is not Parts.Belt && random.Next(20) == 0)
                .Select(p => p.Id).Except(keep.Select(OwnPart)).ToHashSet(),
            Outlet = outlet,
            InStockOnly = outlet is not null && random.Next(4) == 0,
            PriceCeilingMinor = outlet is not null && random.Next(4) == 0 ? random.Next(2, 9) * 1000 : null,
            DemandChecked = random.Next(12) == 0,
            RankBy = random.Next(3) == 0 ? RankBy.LeastWork : RankBy.Miss,
            Group = random.Next(4) == 0,
            Count = Pick(1, 3, 10, 50),
            PointCount = Pick(3, 5, 9, 9, 15),
        };
    }

    // What is kept cannot be excluded.
    private static string OwnPart(Slot slot) => slot switch
    {
        Slot.DriveSpring => "ds-own",
        Slot.Flyweight => "fw-own",
        Slot.DrivenSpring => "vs-own",
        Slot.Helix => "hx-own",
        _ => "",
    };

    private ShiftGoal Goal() => random.Next(6) switch
    {
        0 => new ShiftGoal.ByRatio(
            [new(2.6, Between(6500, 8400)), new(1.4, Between(6500, 8400)), new(0.9, Between(6500, 8400))]),

        // The vehicle does about 8 m/s at 8000 rpm in low gear and 32 at full shift: these lines are met once.
        1 => new ShiftGoal.BySpeed([new(8, Between(7200, 7800)), new(20, Between(7600, 8000)), new(34, Between(7700, 8300))]),
        2 => new ShiftGoal.PeakPower(),

        // No machine follows this.
        3 => new ShiftGoal.ByRatio([new(2.6, 8400), new(2.1, 6600), new(1.6, 8400), new(1.2, 6600), new(0.9, 8400)]),
        _ => new ShiftGoal.Flat(Pick(5000, 7400, 7900, 8600)),
    };

    private Shim Shim(int i) => new()
    {
        Id = $"sh-{i}",
        Thickness = Length.FromMillimeters(Pick(1.0, 1.5, 3)),
        OutsideDiameter = Length.FromMillimeters(random.Next(6) == 0 ? 60 : 54),
        InsideDiameter = Length.FromMillimeters(42),
        PackQuantity = random.Next(2) == 0 ? null : 2,
    };

    private Kit Kit(int i, Part[] parts) => new()
    {
        Id = $"kit-{i}",
        SupersededBy = i > 1 && kitFates.Next(8) == 0 ? "kit-1" : null,
        Contents = [.. parts.OrderBy(_ => random.Next()).Take(random.Next(1, 4)).Select(p => new KitLine(p.Id, random.Next(1, 3)))],
    };

    private DriveSpring DriveSpring(int i)
    {
        var named = new DriveSpring
        {
            Id = $"ds-{i}",
            SupersededBy = random.Next(12) == 0 ? "ds-own" : null,
            FitsClutches = random.Next(3) == 0 ? [new ClutchFit("drive", null, null)] : null,
            Ends = random.Next(3) == 0 ? SpringEnds.Closed : SpringEnds.ClosedGround,
            OutsideDiameter = random.Next(8) == 0 ? null : Length.FromMillimeters(Pick(52, 54, 58)),
            WireDiameter = Length.FromMillimeters(Pick(4.5, 5.0)),
            SolidLength = random.Next(5) == 0 ? null : Length.FromMillimeters(Pick(30, 38, 46)),
            FreeLength = Length.FromMillimeters(Pick(86, 92, 94.5, 98)),
        };
        return random.Next(3) switch
        {
            0 => named with { Rate = ForcePerLength.FromNewtonsPerMeter(Pick(17_000, 19_000, 22_000)) },
            1 => named with
            {
                FirstLength = Length.FromMillimeters(72),
                FirstLoad = Force.FromNewtons(Pick(380, 430, 430, 520)),
                SecondLength = Length.FromMillimeters(48.5),
                SecondLoad = Force.FromNewtons(Pick(850, 950)),
            },
            _ => named with
            {
                LoadTable =
                [
                    new(45 * Mm, Between(850, 1000)), new(55 * Mm, Between(640, 800)),
                    new(65 * Mm, Between(500, 600)), new(73 * Mm, Between(350, 460)),
                ],
            },
        };
    }

    private Flyweight Flyweight(int i)
    {
        bool notched = random.Next(3) == 0;
        var flyweight = new Flyweight
        {
            Id = $"fw-{i}",
            SoldAs = random.Next(3) switch { 0 => SoldAs.Each, 1 => SoldAs.Pair, _ => null },
            SetCount = random.Next(6) == 0 ? 4 : 3,
            BodyMass = Mass.FromKilograms(Pick(0.042, 0.046, 0.046, 0.05)),
            ArmLength = Length.FromMillimeters(random.Next(8) == 0 ? 45 : 42),
            RadiusCurve = notched
                ? Curve((0, 40.5), (1.2, 41), (2, 41.8), (3, 44.5), (9, 51.1), (15, 56.6), (21, 61.5), (28, 66.9))
                : Curve((0, 40.5), (3, 44.5), (9, 51.1), (15, 56.6), (21, 61.5), (random.Next(8) == 0 ? 23 : 28, 66.9)),
        };
        if (ramps ? random.Next(4) > 0 : random.Next(8) == 0)
        {
            flyweight = flyweight with
            {
                RadiusCurve = [],
                AdjusterCurves =
                [
                    new("1", Curve((0, 40.5), (3, 44.5), (9, 51.1), (15, 56.6), (21, 61.5), (28, 66.9))),
                    new("2", Curve((0, 40.5), (3, 44.2), (9, 50.9), (15, 56.9), (21, 62.1), (28, 67.6))),
                ],
                PinMasses = [0.002, 0.004],
            };
        }

        if (random.Next(2) == 0)
        {
            flyweight = flyweight with
            {
                TipMassLimit = random.Next(3) == 0 ? Mass.FromKilograms(0.012) : null,
                TipCurve = Curve((0, 44), (7, 57), (14, 68), (21, 77.5), (28, 86)),
                TipMasses = [.. new[] { 0.006, 0.010, 0.010, 0.014 }.Take(random.Next(1, 5))],
            };
        }

        if (random.Next(3) == 0)
        {
            flyweight = flyweight with
            {
                HeelCurve = Curve((0, 36), (7, 42.5), (14, 48), (21, 52.6), (28, 56.4)),
                HeelMasses = [0, 0.004],
            };
        }

        return flyweight;
    }

    private DrivenSpring DrivenSpring(int i)
    {
        var named = new DrivenSpring
        {
            Id = $"vs-{i}",
            WindingHand = random.Next(8) == 0 ? WindingHand.Left : WindingHand.Right,
            LegOffsetDeg = random.Next(4) == 0 ? Pick(10.0, -60) : null,
            TwistLimitDeg = random.Next(3) == 0 ? Pick(120, 200, 260) : null,
            InsideDiameter = random.Next(6) == 0 ? null : Length.FromMillimeters(Pick(44, 52, 52)),
            WireDiameter = Length.FromMillimeters(5),
            OutsideDiameter = Length.FromMillimeters(62),
            ActiveCoils = Pick(4, 5, 6),
            FreeLength = Length.FromMillimeters(Pick(90, 100, 104)),
        };
        return random.Next(3) switch
        {
            0 => named with { Material = "music-wire-a228" },
            1 => named with
            {
                Rate = ForcePerLength.FromNewtonsPerMeter(Pick(3500, 9000, 9500)),
                TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(Pick(4.5, 9.0, 9.0, 11)),
            },
            _ => named with
            {
                LoadLength = Length.FromMillimeters(60),
                Load = Force.FromNewtons(Pick(300, 360)),
                TorqueTable = [new(0.5, 4.2), new(1.2, Between(9.5, 11)), new(random.Next(6) == 0 ? 1.9 : 2.8, Between(22, 25))],
            },
        };
    }

    private Helix Helix(int i)
    {
        var named = new Helix { Id = $"hx-{i}", CamRadius = Length.FromMillimeters(random.Next(8) == 0 ? 46 : 42) };
        return random.Next(3) switch
        {
            0 => named with { HelixDeg = Pick(38, 41.5, 41.5, 58) },
            1 => named with { HelixDeg = 43, FinishDeg = Pick(34, 37, 40), FinishTravel = Length.FromMillimeters(Pick(16, 24)) },
            _ => named with
            {
                AnglePoints = [new(0, Between(0.7, 0.85)), new(8 * Mm, Between(0.62, 0.75)), new((random.Next(8) == 0 ? 15 : 22) * Mm, 0.62)],
            },
        };
    }

    private Engine Engine()
    {
        (double, double)[] torque = random.Next(3) == 0
            ? [(1200, 38), (3000, 59), (5000, 75), (6000, 82), (6600, 60), (7200, 80), (8200, 76), (8700, 69), (9200, 58)]
            : [(1200, 38), (2000, 48), (3000, 59), (4000, 68), (5000, 75), (6000, 80), (6800, 82), (7500, 80.5), (8200, 76), (8700, 69), (9200, 58)];
        return new Engine
        {
            Id = "engine",
            IdleRpm = 1200,
            RevLimitRpm = Pick(9000, 9000, 8047),
            TorqueCurve = [.. torque.Select(p => new CurvePoint(p.Item1, p.Item2))],
        };
    }

    private DriveClutch DriveClutch() => new()
    {
        Id = "drive",
        SheaveHalfAngleDeg = 13,
        ContactTravel = Length.FromMillimeters(3),
        FullShiftTravel = Length.FromMillimeters(24.5),
        ContactPitchRadius = Length.FromMillimeters(34),
        ArmCount = 3,
        SpringLength = Length.FromMillimeters(72),
        Family = random.Next(6) == 0 ? DriveFamily.RollerOnAdjustableRamp : DriveFamily.ArmOnRoller,
        StartDevice = random.Next(8) == 0 ? StartDevice.CentrifugalClutch : StartDevice.Belt,
        SpringSeat = random.Next(4) == 0 ? SpringSeat.Flat : null,
        ShimLimit = random.Next(3) == 0 ? 2 : null,
        FlyweightFrictionShare = Pick(0, 0.012, 0.03),
        ThrustLaw = random.Next(4) == 0 ? DriveThrustLaw.Locked : DriveThrustLaw.TwoArc,
        CupBore = Length.FromMillimeters(56),
        PostDiameter = Length.FromMillimeters(40),
        ArmLength = Length.FromMillimeters(42),
    };

    private DrivenClutch DrivenClutch() => new()
    {
        Id = "driven",
        CamRadius = Length.FromMillimeters(42),
        CamTorqueShare = 0.5,
        SpringLength = Length.FromMillimeters(60),
        CamFrictionDeg = Pick(0, 0.8),
        HubDiameter = Length.FromMillimeters(46),
        WindingHand = WindingHand.Right,
        Holes = [.. new[] { ("1", 50.0), ("2", 70), ("3", 90), ("4", 110) }.Take(random.Next(2, 5)).Select(h => new SpringHole(h.Item1, h.Item2))],
    };

    private static Belt Belt() => new()
    {
        Id = "belt",
        PitchLength = Length.FromMillimeters(992),
        MassPerLength = LinearDensity.FromKilogramsPerMeter(0.45),
        Friction = 0.36,
        Efficiency = 0.95,
    };

    private static Gearing Gearing() => new() { Id = "gearing", TyreRadius = Length.FromMeters(0.34), FinalDrive = 11 };

    private static Machine MachineItem() => new()
    {
        Id = "machine",
        EngineId = "engine",
        DriveClutchId = "drive",
        DrivenClutchId = "driven",
        BeltId = "belt",
        GearingId = "gearing",
        CentreDistance = Length.FromMillimeters(270),
    };

    // The fitted parts can always be computed, so that every request has an answer to compare with.
    private PartSet Fitted(List<CatalogItem> items)
    {
        items.Add(new DriveSpring { Id = "ds-own", Rate = ForcePerLength.FromNewtonsPerMeter(19_000), FreeLength = Length.FromMillimeters(94.5) });
        items.Add(new Flyweight
        {
            Id = "fw-own",
            BodyMass = Mass.FromKilograms(0.046),
            ArmLength = Length.FromMillimeters(42),
            RadiusCurve = ramps ? [] : Curve((0, 40.5), (3, 44.5), (9, 51.1), (15, 56.6), (21, 61.5), (28, 66.9)),
            TipCurve = Curve((0, 44), (7, 57), (14, 68), (21, 77.5), (28, 86)),
            TipMasses = [0.008, 0.010],
            AdjusterCurves = ramps
                ? [new("1", Curve((0, 40.5), (3, 44.5), (9, 51.1), (15, 56.6), (21, 61.5), (28, 66.9)))]
                : null,
        });
        items.Add(new DrivenSpring
        {
            Id = "vs-own",
            FreeLength = Length.FromMillimeters(100),
            Rate = ForcePerLength.FromNewtonsPerMeter(9000),
            TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(9),
        });
        items.Add(new Helix { Id = "hx-own", HelixDeg = 43, FinishDeg = 37, FinishTravel = Length.FromMillimeters(24) });
        return new PartSet("ds-own", "fw-own", new Dictionary<StationName, double> { [StationName.Tip] = 0.010 }, "vs-own", "2", "hx-own")
        {
            AdjusterStep = ramps ? "1" : null,
        };
    }

    private Baseline Baseline(PartSet fitted) => random.Next(2) == 0
        ? new Baseline(fitted, startsByBelt ? Between(1850, 2150) : null, [], Between(7500, 8000), new AirState(0, null))
        : new Baseline(fitted, startsByBelt ? Between(1850, 2150) : null, [new(2.4, 7880), new(1.4, 7940), new(0.9, 8000)], null, new AirState(300, 285));

    private static CurvePoint[] Curve(params (double TravelMm, double RadiusMm)[] points) =>
        [.. points.Select(p => new CurvePoint(p.TravelMm * Mm, p.RadiusMm * Mm))];

    private IEnumerable<T> Many<T>(int most, Func<int, T> make)
    {
        int count = random.Next(1, most + 1);
        return [.. Enumerable.Range(1, count).Select(make)];
    }

    private double Pick(params double[] values) => values[random.Next(values.Length)];

    private int Pick(params int[] values) => values[random.Next(values.Length)];

    private double Between(double from, double to) => from + random.NextDouble() * (to - from);
}
