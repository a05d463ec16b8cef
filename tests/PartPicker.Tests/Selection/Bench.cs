using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;

namespace PartPicker.Tests.Selection;

/// <summary>A trail two-seater on the bench with one part of each kind that fits it. A test varies one thing with <c>with</c>.</summary>
internal sealed record Bench
{
    public const string Id = "two-seater";

    public Engine Engine { get; init; } = new()
    {
        Id = "engine",
        IdleRpm = 1200,
        RevLimitRpm = 9000,
        TorqueCurve = Curve(
            (1200, 38), (2000, 48), (3000, 59), (4000, 68), (5000, 75), (6000, 80), (6800, 82), (7500, 80.5), (8200, 76),
            (8700, 69), (9200, 58)),
    };

    public DriveClutch DriveClutch { get; init; } = new()
    {
        Id = "drive-clutch",
        SheaveHalfAngleDeg = 13,
        ContactTravel = Mm(3),
        FullShiftTravel = Mm(24.5),
        ContactPitchRadius = Mm(34),
        ArmCount = 3,
        SpringLength = Mm(72),
        FlyweightFrictionShare = 0.012,
        CupBore = Mm(62),
        PostDiameter = Mm(38),
        ArmLength = Mm(58),
        PinDiameter = Mm(10),
        TipClearanceRadius = Mm(100),
        SpringSeat = SpringSeat.Flat,
    };

    public DrivenClutch DrivenClutch { get; init; } = new()
    {
        Id = "driven-clutch",
        CamRadius = Mm(42),
        CamTorqueShare = 0.5,
        SpringLength = Mm(60),
        CamFrictionDeg = 0.8,
        HubDiameter = Mm(44),
        WindingHand = WindingHand.Right,
        Legs = SpringLegs.Straight,
        HelixMount = "splined",
        Holes = [new("1", 50), new("2", 70), new("3", 90), new("4", 110)],
    };

    public Belt Belt { get; init; } = new()
    {
        Id = "belt",
        PitchLength = Mm(992),
        MassPerLength = LinearDensity.FromKilogramsPerMeter(0.45),
        Friction = 0.36,
        Efficiency = 0.95,
    };

    public Gearing Gearing { get; init; } = new() { Id = "gearing", TyreRadius = Mm(340), FinalDrive = 11 };

    public Length CentreDistance { get; init; } = Mm(270);

    public DriveSpring DriveSpring { get; init; } = new()
    {
        Id = "ds",
        WireDiameter = Mm(5.4),
        OutsideDiameter = Mm(57.4),
        ActiveCoils = 3.05,
        SolidLength = Mm(27.3),
        Ends = SpringEnds.ClosedGround,
        Material = "chrome-silicon-a401",
        SetRemoved = YesNo.Yes,
        FreeLength = Mm(94.5),
        Rate = ForcePerLength.FromNewtonsPerMillimeter(19),
    };

    public Flyweight Flyweight { get; init; } = new()
    {
        Id = "fw",
        BodyMass = Mass.FromGrams(46),
        ArmLength = Mm(58),
        PinBore = Mm(10),
        TipRadius = Mm(95),
        SetCount = 3,
        RadiusCurve = MmCurve(
            (0, 40.5), (3, 44.5), (6, 48), (9, 51.1), (12, 53.9), (15, 56.6), (18, 59.1), (21, 61.5), (25, 64.6), (28, 66.9)),
        HeelCurve = MmCurve((0, 36), (7, 42.5), (14, 48), (21, 52.6), (28, 56.4)),
        HeelMasses = [0, 0.004],
        TipCurve = MmCurve((0, 44), (7, 57), (14, 68), (21, 77.5), (28, 86)),
        TipMasses = [0.008, 0.010, 0.012],
    };

    public DrivenSpring DrivenSpring { get; init; } = new()
    {
        Id = "vs",
        InsideDiameter = Mm(49.7),
        WindingHand = WindingHand.Right,
        Legs = SpringLegs.Straight,
        TwistLimitDeg = 300,
        WireDiameter = Mm(5.9),
        Material = "chrome-silicon-a401",
        ActiveCoils = 5,
        FreeLength = Mm(100),
        Rate = ForcePerLength.FromNewtonsPerMillimeter(9),
        TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(9),
    };

    public Helix Helix { get; init; } = new()
    {
        Id = "hx",
        HelixDeg = 43,
        FinishDeg = 37,
        FinishTravel = Mm(24),
        CamRadius = Mm(42),
        Mount = "splined",
    };

    /// <summary>What else lies on the shelf.</summary>
    public IReadOnlyList<Part> Shelf { get; init; } = [];

    /// <summary>The run that the machine's profile states; null when nobody measured one.</summary>
    public Func<PartSet, Baseline?> Run { get; init; } = set => new Baseline(set, 2000, [], 8000, default);

    public PartSet Fitted => new(
        DriveSpring.Id,
        Flyweight.Id,
        new Dictionary<StationName, double> { [StationName.Heel] = 0.004, [StationName.Tip] = 0.010 },
        DrivenSpring.Id,
        "2",
        Helix.Id);

    public CatalogSnapshot Snapshot() => new("bench", new CatalogContents(
        [
            new Machine
            {
                Id = Id,
                EngineId = Engine.Id,
                DriveClutchId = DriveClutch.Id,
                DrivenClutchId = DrivenClutch.Id,
                BeltId = Belt.Id,
                GearingId = Gearing.Id,
                CentreDistance = CentreDistance,
                Fitted = Fitted,
                Baselines = Run(Fitted) is { } run ? [run] : [],
            },
            Engine, DriveClutch, DrivenClutch, Belt, Gearing, DriveSpring, Flyweight, DrivenSpring, Helix, .. Shelf,
        ],
        []));

    public MachineProfile Profile() => Snapshot().FindMachine(Id)!;

    public MachineModel Model() => MachineModel.Create(Profile(), [])!;

    /// <summary>A request for the rpm that the fitted parts have anyway.</summary>
    public PickRequest Request() => new() { Machine = Profile(), Target = ShiftTarget.Flat(2000, 8000) };

    public Outcome<PickAnswer> Pick(Func<PickRequest, PickRequest>? change = null) =>
        PartSelection.Pick(Snapshot(), change is null ? Request() : change(Request()));

    public PickAnswer Answer(Func<PickRequest, PickRequest>? change = null)
    {
        Outcome<PickAnswer> outcome = Pick(change);
        return outcome.Answer ?? throw new InvalidOperationException(string.Join("; ", outcome.Problems));
    }

    public Outcome<PredictionAnswer> Predict(Func<PredictionRequest, PredictionRequest>? change = null)
    {
        var request = new PredictionRequest { Machine = Profile() };
        return SetPrediction.Predict(Snapshot(), change is null ? request : change(request));
    }

    public Prediction Predicted(Func<PredictionRequest, PredictionRequest>? change = null)
    {
        Outcome<PredictionAnswer> outcome = Predict(change);
        return outcome.Answer?.Prediction ?? throw new InvalidOperationException(string.Join("; ", outcome.Problems));
    }

    public static Length Mm(double millimetres) => Length.FromMillimeters(millimetres);

    public static CurvePoint[] Curve(params (double X, double Y)[] points) =>
        [.. points.Select(p => new CurvePoint(p.X, p.Y))];

    /// <summary>Millimetres over millimetres.</summary>
    public static CurvePoint[] MmCurve(params (double X, double Y)[] points) =>
        [.. points.Select(p => new CurvePoint(p.X / 1000, p.Y / 1000))];
}
