using System.Diagnostics.CodeAnalysis;

namespace PartPicker.Mechanics;

/// <summary>Finds the balances of one drive side with one driven side in one direction, position by position.</summary>
/// <remarks>
/// Net closing thrust is what the drive clutch has less what the belt asks for. Spans of steps over which it cannot reach
/// 0 by the belt's tabulated floor are passed together. One thread at a time.
/// </remarks>
public sealed class BalanceFinder
{
    // The tabulated floor may pass the solved thrust by its rounding; this is far more than that.
    private const double FloorSlack = 1e-9;

    private readonly ShiftModel model;
    private readonly bool up;
    private readonly double flyweightShare;
    private readonly double thrustFactor;
    private readonly Func<double, double> scaledNet;

    private DriveSide drive;
    private ClampLine[] clamps;

    // Of the position that is looked at.
    private int position;
    private BeltThrustFloor floor = null!;
    private ClampLine clamp;
    private double flyweightThrust;
    private double springForce;
    private double driveRadius;

    // Where the belt was solved last; narrowing begins by asking for it again.
    private double solvedRpm;
    private double solvedNet;

    internal BalanceFinder(
        ShiftModel model, DriveSide drive, DrivenSide driven, ShiftDirection direction, double frictionShare)
    {
        up = direction == ShiftDirection.Upshift;
        this.model = model;
        Turn(drive, driven);
        flyweightShare = up ? 1 - frictionShare : 1 + frictionShare;
        thrustFactor = model.Anchor.Thrust;
        scaledNet = rpm => Net(rpm) * Root.Scale;
    }

    /// <summary>Turns to other sides of the same machine, so that one finder serves many.</summary>
    [MemberNotNull(nameof(drive), nameof(clamps))]
    public void Turn(DriveSide otherDrive, DrivenSide otherDriven)
    {
        drive = otherDrive;
        clamps = up ? otherDriven.Upshift : otherDriven.Backshift;
    }

    /// <summary>The balance rpm at position j, or null where it does not shift below the rev limit.</summary>
    public double? Rpm(int j)
    {
        double limit = model.RevLimitRpm;
        double engagement = drive.Engagement.Rpm;
        if (engagement > limit)
            return null;
        LookAt(j);
        if (Closes(engagement, model.TorqueAt(engagement)))
            return engagement;

        int first = (int)(engagement / ShiftModel.ScanStepRpm) + 1;
        int step = first;
        while (step < model.StepCount)
        {
            int open = OpenSteps(step, begins: step == first);
            if (open == 0 && Closes(step * ShiftModel.ScanStepRpm, model.TorqueAtStep(step)))
                return Root.OfScaled(scaledNet, Below(), step * ShiftModel.ScanStepRpm);
            step += Math.Max(open, 1);
        }

        return Closes(limit, model.TorqueAt(limit)) ? Root.OfScaled(scaledNet, Below(), limit) : null;

        double Below() => step == first ? engagement : (step - 1) * ShiftModel.ScanStepRpm;
    }

    private void LookAt(int j)
    {
        position = j;
        floor = model.Floor(j);
        clamp = clamps[j];
        flyweightThrust = flyweightShare * drive.ThrustPerSpeedSquared[j];
        springForce = drive.SpringForce[j];
        driveRadius = model.Positions[j].DriveRadius;
        solvedRpm = double.NaN;
    }

    // How many steps from this one on the clutch is told to stay open at all together; 0 where that cannot be told. A span
    // is looked at where it begins, or where the scan does.
    private int OpenSteps(int step, bool begins)
    {
        foreach (TorqueSpans spans in model.TorqueSpans)
        {
            int start = step - step % spans.Length;
            if ((begins || start == step)
                && spans.TryAround(step, out (double Least, double Greatest) range)
                && StaysOpen(
                    start * ShiftModel.ScanStepRpm, (start + spans.Length - 1) * ShiftModel.ScanStepRpm,
                    model.InThisAir(range.Least), model.InThisAir(range.Greatest)))
            {
                return start + spans.Length - step;
            }
        }

        return 0;
    }

    // True where the net closing thrust is below 0 at every speed and every torque between these.
    private bool StaysOpen(double fromRpm, double toRpm, double leastTorque, double greatestTorque)
    {
        double least = floor.Least(
            Math.Min(clamp.At(leastTorque), clamp.At(greatestTorque)), leastTorque / driveRadius, greatestTorque / driveRadius);
        return Math.Max(Available(fromRpm), Available(toRpm)) < thrustFactor * least * (1 - FloorSlack);
    }

    // True where the net closing thrust is 0 or more; most speeds are told apart without solving the belt.
    private bool Closes(double rpm, double torque)
    {
        double least = floor.Least(clamp.At(torque), torque / driveRadius);
        if (Available(rpm) < thrustFactor * least * (1 - FloorSlack))
            return false;
        solvedNet = Net(rpm, torque);
        solvedRpm = rpm;
        return solvedNet >= 0;
    }

    private double Net(double rpm) => rpm == solvedRpm ? solvedNet : Net(rpm, model.TorqueAt(rpm));

    private double Net(double rpm, double torque) =>
        Available(rpm) - thrustFactor * model.Thrust(position).DriveThrust(clamp.At(torque), torque / driveRadius);

    private double Available(double rpm)
    {
        double speed = Rotation.ToRadiansPerSecond(rpm);
        return flyweightThrust * speed * speed - springForce;
    }
}
