using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>Engagement and upshift rpm of a set whose inputs are not what is stated; the measured run is solved again.</summary>
/// <remarks>
/// An error that the run shares with the set, as that of the belt's friction, so cancels as far as the run tells it.
/// Tabulated belts are kept by friction: one request asks for few of them.
/// </remarks>
internal sealed class InputModel(Predictor predictor)
{
    // The widest step of a spring's length, and of its twist beside that of a deviation: how far beyond its range a curve
    // may be asked.
    private const double LengthPlay = 2e-3;
    private const double TwistPlay = 0.05;

    private readonly Dictionary<double, ShiftModel> beltsHere = [];
    private readonly Dictionary<double, ShiftModel> beltsAtRun = [];

    public Predictor Predictor => predictor;

    /// <summary>Limit of the engine's torque, as a share.</summary>
    public double TorqueShare { get; } = InputTolerances.Torque(predictor.Machine.Profile.Engine);

    /// <summary>Standard uncertainty of the model at each position by the residuals of its run (rpm).</summary>
    public double[] Misfit { get; } = RunMisfit.At(predictor.Anchoring, predictor.Model.Positions);

    /// <summary>How many numbers a set has: engagement, then one for each position.</summary>
    public int Count => predictor.Model.Positions.Count + 1;

    /// <summary>The numbers with the measured run solved again; NaN where there is none.</summary>
    /// <param name="set">The set that is asked about.</param>
    /// <param name="inSet">Of its inputs, friction and torque among them.</param>
    /// <param name="inRun">Of the inputs of the run; its friction and torque are those of <paramref name="inSet"/>.</param>
    public double[] Numbers(SetUp set, Deviation inSet, Deviation inRun)
    {
        try
        {
            if (predictor.Run is not { } run)
                return Held(set, inSet, AnchorFactors.None);
            ShiftModel atRun = AtRun(run, inSet);
            DriveSide drive = Drive(atRun, run.Set, inRun);
            DrivenSide driven = Driven(atRun, run.Set, inRun);
            return run.SolvesFriction
                ? NumbersWithFriction(run, drive, driven, set, inSet)
                : Held(set, inSet, Anchor.Solve(
                    atRun, drive, driven, predictor.Machine.Drivetrain.FlyweightFrictionShare, run.EngagementRpm, run.Rpm));
        }
        catch (ArgumentException)
        {
            // A spring that no longer pushes, or a helix that locks: there is no number.
            double[] none = new double[Count];
            Array.Fill(none, double.NaN);
            return none;
        }
    }

    /// <summary>The numbers with the anchor held: what changing a part does, not what an error does.</summary>
    public double[] Held(SetUp set, Deviation deviation, AnchorFactors factors) =>
        Numbers(Here(deviation).With(factors), set, deviation);

    // Every deviation asks for another friction, so its model is not kept.
    private double[] NumbersWithFriction(MeasuredRun run, DriveSide drive, DrivenSide driven, SetUp set, Deviation inSet)
    {
        Drivetrain stated = predictor.Machine.Drivetrain;
        (double friction, AnchorFactors factors) = Anchor.SolveWithFriction(
            stated, run.Positions, run.TorqueFactor * (1 + inSet.TorqueShare), drive, driven, run.EngagementRpm, run.Rpm);
        var here = new ShiftModel(
            stated with { BeltFriction = friction }, predictor.Model.Positions,
            predictor.TorqueFactor * (1 + inSet.TorqueShare), factors);
        return Numbers(here, set, inSet);
    }

    private double[] Numbers(ShiftModel model, SetUp set, Deviation deviation)
    {
        DriveSide drive = Drive(model, set, deviation);
        DrivenSide driven = Driven(model, set, deviation);
        return
        [
            predictor.Machine.StartsByBelt ? drive.Engagement.Rpm : double.NaN,
            .. model.Positions.Select((_, j) =>
                model.BalanceRpm(drive, driven, j, ShiftDirection.Upshift) + deviation.Misfit * Misfit[j] ?? double.NaN),
        ];
    }

    private ShiftModel Here(Deviation deviation) =>
        Model(beltsHere, predictor.Model.Positions, predictor.TorqueFactor, deviation);

    private ShiftModel AtRun(MeasuredRun run, Deviation deviation) =>
        Model(beltsAtRun, run.Positions, run.TorqueFactor, deviation);

    private ShiftModel Model(
        Dictionary<double, ShiftModel> belts, IReadOnlyList<BeltPosition> positions, double torqueFactor, Deviation deviation)
    {
        torqueFactor *= 1 + deviation.TorqueShare;
        if (!belts.TryGetValue(deviation.Friction, out ShiftModel? model))
        {
            Drivetrain stated = predictor.Machine.Drivetrain;
            Drivetrain drivetrain = stated with
            {
                BeltFriction = stated.BeltFriction + deviation.Friction,
                BeltFrictionByRadius = stated.BeltFrictionByRadius?.Raised(deviation.Friction),
            };
            belts[deviation.Friction] = model = new ShiftModel(drivetrain, positions, torqueFactor, AnchorFactors.None);
        }

        return model.With(torqueFactor);
    }

    private DriveSide Drive(ShiftModel model, SetUp set, Deviation deviation) => model.Drive(
        Predictor.DriveForce(predictor.Machine, set.Spring)
            .Moved(deviation.DriveFreeLength, 1 + deviation.DriveRateShare, LengthPlay),
        Heavier(set.Flyweight, deviation).Model(predictor.Machine),
        set.Spring.ShimThickness);

    private DrivenSide Driven(ShiftModel model, SetUp set, Deviation deviation)
    {
        MachineModel machine = predictor.Machine;
        DrivenChoice choice = set.Driven;
        return model.Driven(
            Predictor.DrivenForce(machine, choice.Spring)
                .Moved(deviation.DrivenFreeLength, 1 + deviation.DrivenRateShare, LengthPlay),
            SpringModels.Twist(choice, machine)!.Moved(
                -deviation.PreloadTwist, 1 + deviation.TwistRateShare, TwistPlay + Math.Abs(deviation.PreloadTwist)),
            choice.PreloadTwist,
            new HelixCam(
                choice.Helix.Angles().Select(p => (p.X, p.Y + deviation.HelixAngle)), machine.Drivetrain.CamRadius),
            Predictor.StiffeningCoils(machine, choice));
    }

    private static FlyweightChoice Heavier(FlyweightChoice choice, Deviation deviation)
    {
        var masses = new Dictionary<Parts.StationName, double>(choice.Masses);
        if (deviation.StationMass is (var station, not 0) heavier)
            masses[station] = masses.GetValueOrDefault(station) + heavier.Mass;
        return choice with
        {
            Masses = masses,
            Body = choice.Body with
            {
                BodyMass = UnitsNet.Mass.FromKilograms(choice.Body.BodyMass.Kilograms + deviation.BodyMass),
            },
        };
    }
}
