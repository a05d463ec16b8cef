using PartPicker.Mechanics;

namespace PartPicker.TestKit;

/// <summary>The balance by the plainest search: net thrust solved at every 10 rpm from engagement on, then halving.</summary>
public static class PlainCurve
{
    private const double Step = 10;
    private const double Narrow = 1e-9;

    /// <summary>Upshift and backshift rpm at every position of the model; null where it does not shift.</summary>
    public static (double? Up, double? Back)[] Of(Drivetrain machine, ShiftModel model, DriveSide drive, DrivenSide driven) =>
    [
        .. model.Positions.Select((_, j) => (
            Rpm(machine, model, drive, driven, j, ShiftDirection.Upshift),
            Rpm(machine, model, drive, driven, j, ShiftDirection.Backshift))),
    ];

    /// <summary>The rpm at position j; null where it does not shift.</summary>
    public static double? Rpm(
        Drivetrain machine, ShiftModel model, DriveSide drive, DrivenSide driven, int j, ShiftDirection direction)
    {
        BeltPosition position = model.Positions[j];
        var belt = new BeltThrust(
            machine.GrooveHalfAngle, machine.FrictionAt(position.DriveRadius), machine.FrictionAt(position.DrivenRadius),
            position.DriveWrap, position.DrivenWrap, machine.ThrustForm);
        bool up = direction == ShiftDirection.Upshift;
        ClampLine clamp = (up ? driven.Upshift : driven.Backshift)[j];
        double share = up ? 1 - machine.FlyweightFrictionShare : 1 + machine.FlyweightFrictionShare;

        double below = drive.Engagement.Rpm;
        if (below > machine.RevLimitRpm)
            return null;
        if (Net(below) >= 0)
            return below;
        for (double rpm = Step * (Math.Floor(below / Step) + 1); below < machine.RevLimitRpm; rpm += Step)
        {
            double above = Math.Min(rpm, machine.RevLimitRpm);
            if (Net(above) >= 0)
                return Halved(below, above);
            below = above;
        }

        return null;

        double Net(double rpm)
        {
            double speed = rpm * Math.PI / 30;
            double torque = model.TorqueAt(rpm);
            return share * drive.ThrustPerSpeedSquared[j] * speed * speed - drive.SpringForce[j]
                - model.Anchor.Thrust * belt.DriveThrust(clamp.At(torque), torque / position.DriveRadius);
        }

        double Halved(double open, double closed)
        {
            while (closed - open > Narrow)
            {
                double middle = (open + closed) / 2;
                (open, closed) = Net(middle) >= 0 ? (open, middle) : (middle, closed);
            }

            return closed;
        }
    }
}
