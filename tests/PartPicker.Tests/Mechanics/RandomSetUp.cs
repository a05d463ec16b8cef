using CsCheck;
using PartPicker.Mechanics;

namespace PartPicker.Tests.Mechanics;

/// <summary>One invented machine with one set of parts, drawn at random: plain numbers that scale and vary.</summary>
public sealed record RandomSetUp
{
    public const double ContactTravel = 0.003;
    public const double FullShiftTravel = 0.0225;
    private const double SpringLength = 0.07;
    private const double CamRadius = 0.042;

    public required double HalfAngle { get; init; }
    public required double BeltFriction { get; init; }
    public required bool Locked { get; init; }
    public required double FlyweightFriction { get; init; }
    public required double CamFriction { get; init; }
    public required double RevLimit { get; init; }

    /// <summary>Torque (N·m) at 1000, 2000 … 9500 rpm.</summary>
    public required double[] Torque { get; init; }

    /// <summary>Forces (N) of the drive spring at five lengths from 70 mm to 45 mm.</summary>
    public required double[] SpringForces { get; init; }

    /// <summary>Mass (kg) of an arm, and its radius (m) at five travels from 0 to full shift.</summary>
    public required double ArmMass { get; init; }

    public required double[] Radii { get; init; }

    /// <summary>Mass (kg) at the tip, on a steeper line.</summary>
    public required double TipMass { get; init; }

    public required double DrivenPreload { get; init; }
    public required double DrivenRate { get; init; }
    public required double TwistRate { get; init; }
    public required double PreloadTwist { get; init; }
    public required double HelixStart { get; init; }
    public required double HelixEnd { get; init; }

    /// <summary>Factor on every spring, on every mass and on torque: what all of them share changes no speed.</summary>
    public double ForceScale { get; init; } = 1;

    public double MorePreload { get; init; }

    public static Gen<RandomSetUp> Any { get; } = With(
        from peak in Gen.Double[35, 95]
        from shape in Gen.Double[0.75, 1].Array[10]
        select shape.Select(s => peak * s).ToArray());

    /// <summary>With constant torque the net thrust rises strictly with speed: there is one balance at most.</summary>
    public static Gen<RandomSetUp> FlatTorque { get; } = With(
        from level in Gen.Double[20, 95]
        select Enumerable.Repeat(level, 10).ToArray());

    public ShiftModel Model(AnchorFactors? anchor = null)
    {
        Drivetrain machine = Machine();
        return new ShiftModel(
            machine,
            machine.Belt.EvenlyByRatio(ContactTravel, FullShiftTravel, 5),
            torqueFactor: 1,
            anchor ?? AnchorFactors.None);
    }

    public Drivetrain Machine() => new()
    {
        Belt = new BeltPath(0.27, BeltPath.Length(0.034, 0.104, 0.27), 0.034, ContactTravel, HalfAngle),
        Engine = new EngineTorque(
            Torque.Select((nm, i) => (i == 9 ? 9500.0 : 1000.0 * (i + 1), ForceScale * nm)), RevLimit),
        GrooveHalfAngle = HalfAngle,
        BeltFriction = BeltFriction,
        BeltEfficiency = 0.95,
        BeltMassPerLength = 0.45,
        ContactTravel = ContactTravel,
        FullShiftTravel = FullShiftTravel,
        DriveSpringLength = SpringLength,
        DrivenSpringLength = 0.06,
        FlyweightFrictionShare = FlyweightFriction,
        CamRadius = CamRadius,
        CamTorqueShare = 0.5,
        CamFrictionAngle = CamFriction,
        ThrustForm = Locked ? DriveThrustForm.Locked : DriveThrustForm.TwoArc,
        TyreRadius = 0.34,
        FinalDrive = 11,
    };

    public DriveSide Drive(ShiftModel model) => model.Drive(DriveSpring(), Flyweights());

    public DrivenSide Driven(ShiftModel model) => model.Driven(
        LinearCurve.Line(0.06, ForceScale * DrivenPreload, -ForceScale * DrivenRate, 0.01, 0.06),
        LinearCurve.Line(0, 0, ForceScale * TwistRate, 0, 20),
        PreloadTwist,
        new HelixCam([(0, HelixStart), (0.012, HelixEnd)], CamRadius));

    public LinearCurve DriveSpring() => LinearCurve.Table(
        SpringForces.Select((force, i) => (0.07 - 0.00625 * i, ForceScale * (force + MorePreload))).Reverse());

    public FlyweightSet Flyweights() => new(
        3,
        [
            (ForceScale * ArmMass, new SmoothCurve(Radii.Select((r, i) => (FullShiftTravel * i / 4, r)))),
            (ForceScale * TipMass, new SmoothCurve([(0, 0.045), (FullShiftTravel, 0.075)])),
        ]);

    private static Gen<RandomSetUp> With(Gen<double[]> torque) =>
        from machine in Gen.Select(
            Gen.Double[11, 15], Gen.Double[0.2, 0.5], Gen.Bool, Gen.Double[0, 0.05], Gen.Double[0, 0.03],
            Gen.Double[6000, 9500])
        from torques in torque
        from springStart in Gen.Double[150, 900]
        from springSteps in Gen.Double[10, 260].Array[4]
        from mass in Gen.Double[0.02, 0.08]
        from radiusSteps in Gen.Double[0.0005, 0.007].Array[4]
        from tip in Gen.Double[0.001, 0.012]
        from driven in Gen.Select(
            Gen.Double[50, 400], Gen.Double[500, 9000], Gen.Double[2, 12], Gen.Double[0.3, 2],
            Gen.Double[0.55, 1.1], Gen.Double[0.5, 1.0])
        select new RandomSetUp
        {
            HalfAngle = machine.Item1 * Math.PI / 180,
            BeltFriction = machine.Item2,
            Locked = machine.Item3,
            FlyweightFriction = machine.Item4,
            CamFriction = machine.Item5,
            RevLimit = machine.Item6,
            Torque = torques,
            SpringForces = RunningSum(springStart, springSteps),
            ArmMass = mass,
            Radii = RunningSum(0.04, radiusSteps),
            TipMass = tip,
            DrivenPreload = driven.Item1,
            DrivenRate = driven.Item2,
            TwistRate = driven.Item3,
            PreloadTwist = driven.Item4,
            HelixStart = driven.Item5,
            HelixEnd = driven.Item6,
        };

    private static double[] RunningSum(double start, double[] steps) =>
        [.. Enumerable.Range(0, steps.Length + 1).Select(i => start + steps.Take(i).Sum())];
}
