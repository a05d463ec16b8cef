using PartPicker.Mechanics;

namespace PartPicker.TestKit;

/// <summary>The balance by the plainest search: net thrust solved at every 10 rpm from engagement on, then halving.</summary>
/// <param name="machine">The machine without its parts.</param>
/// <param name="positions">Where the balance is wanted; the sides run along it.</param>
/// <param name="torqueFactor">Torque in this air over torque at sea level.</param>
/// <param name="thrustFactor">a_b; a_f is in the drive side.</param>
public sealed class PlainCurve(
    Drivetrain machine, IReadOnlyList<BeltPosition> positions, double torqueFactor, double thrustFactor)
{
    private const double Step = 10;
    private const double Narrow = 1e-9;

    /// <summary>Upshift and backshift rpm at every position; null where it does not shift.</summary>
    public (double? Up, double? Back)[] Of(DriveSide drive, DrivenSide driven) =>
    [
        .. positions.Select((_, j) => (
            Rpm(drive, driven, j, ShiftDirection.Upshift), Rpm(drive, driven, j, ShiftDirection.Backshift))),
    ];

    /// <summary>The rpm at position j; null where it does not shift.</summary>
    public double? Rpm(DriveSide drive, DrivenSide driven, int j, ShiftDirection direction)
    {
        BeltPosition position = positions[j];
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
            double torque = torqueFactor * machine.Engine.At(rpm);
            return share * drive.ThrustPerSpeedSquared[j] * speed * speed - drive.SpringForce[j]
                - thrustFactor * belt.DriveThrust(clamp.At(torque), torque / position.DriveRadius);
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
