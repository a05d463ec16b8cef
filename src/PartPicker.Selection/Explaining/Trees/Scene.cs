using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>One set on one machine in one air: what the trees of its numbers read.</summary>
/// <param name="Model">Tied to a measured run or not.</param>
/// <param name="TorqueFactor">Torque in this air over torque at sea level.</param>
/// <param name="Run">The run that ties the model; null where none does.</param>
internal sealed record Scene(
    MachineModel Machine, SetUp Set, ShiftModel Model, AirState Air, AirLaw Law, double TorqueFactor, MeasuredRun? Run)
{
    public Drivetrain Drivetrain => Machine.Drivetrain;

    public FlyweightSet Flyweights { get; } = Set.Flyweight.Model(Machine);

    public DriveSide Drive { get; } = Predictor.Drive(Model, Machine, Set.Spring, Set.Flyweight);

    public DrivenSide Driven { get; } = Predictor.Driven(Model, Machine, Set.Driven);

    /// <summary>True where this is the measured run itself and its points are those that were read.</summary>
    public bool IsRun { get; init; }

    /// <summary>The upshift at a position at a speed.</summary>
    public PointLoads At(int j, double rpm) =>
        new(j, Model.Positions[j], Model.LoadsAt(rpm, Drive, Driven, j, ShiftDirection.Upshift));

    /// <summary>The measured run, with these factors.</summary>
    public Scene OfRun(MeasuredRun run, AnchorFactors factors) => new(
        Machine, run.Set, new ShiftModel(Machine.Drivetrain, run.Positions, run.TorqueFactor, factors),
        run.Air, Law, run.TorqueFactor, factors == AnchorFactors.None ? null : run)
    {
        IsRun = true,
    };
}

/// <summary>One position of the belt, counted from 0, and what it carries at one speed.</summary>
internal readonly record struct PointLoads(int J, BeltPosition Position, ShiftBalance Loads);
