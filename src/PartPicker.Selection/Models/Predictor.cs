using PartPicker.Mechanics;
using PartPicker.Parts;
using UnitsNet;

namespace PartPicker.Selection;

/// <summary>One machine in one air, anchored or not: turns a set in hand into what it does.</summary>
internal sealed class Predictor(MachineModel machine, ShiftModel model, double torqueFactor, Anchoring? anchoring)
{
    public MachineModel Machine { get; } = machine;

    public ShiftModel Model { get; } = model;

    public Anchoring? Anchoring { get; } = anchoring;

    /// <summary>Torque in this air over torque at sea level.</summary>
    public double TorqueFactor { get; } = torqueFactor;

    /// <summary>The run behind the anchor, kept so that it can be solved again; null without one.</summary>
    public MeasuredRun? Run { get; init; }

    public DriveSide Drive(SpringChoice spring, FlyweightChoice flyweight) => Drive(Model, Machine, spring, flyweight);

    public DrivenSide Driven(DrivenChoice choice) => Driven(Model, Machine, choice);

    /// <summary>The drive side of a part pair that keeps every rule needed to compute.</summary>
    public static DriveSide Drive(
        ShiftModel model, MachineModel machine, SpringChoice spring, FlyweightChoice flyweight) =>
        model.Drive(DriveForce(machine, spring), flyweight.Model(machine), spring.ShimThickness);

    /// <summary>Force of a drive spring on its shims over every length that it takes.</summary>
    public static LinearCurve DriveForce(MachineModel machine, SpringChoice spring)
    {
        MachineModel shorter = machine.OnShims(spring.ShimThickness);
        return SpringModels.Reaching(
            SpringModels.Force(spring.Spring)!, shorter.ShortestDriveSpring, shorter.Drivetrain.DriveSpringLength,
            FitTolerance.LengthM);
    }

    /// <summary>Axial force of a driven spring over every length that it takes.</summary>
    public static LinearCurve DrivenForce(MachineModel machine, DrivenSpring spring) => SpringModels.Reaching(
        SpringModels.Axial(spring)!, machine.ShortestDrivenSpring, machine.Drivetrain.DrivenSpringLength,
        FitTolerance.LengthM);

    /// <summary>The driven side of a choice that keeps every rule needed to compute.</summary>
    public static DrivenSide Driven(ShiftModel model, MachineModel machine, DrivenChoice choice)
    {
        HelixCam cam = HelixRules.Cam(choice.Helix, machine);
        return model.Driven(
            DrivenForce(machine, choice.Spring), DrivenTwist(machine, choice, cam), choice.PreloadTwist, cam,
            StiffeningCoils(machine, choice));
    }

    /// <summary>Torque of a driven spring over every twist that it takes.</summary>
    public static LinearCurve DrivenTwist(MachineModel machine, DrivenChoice choice, HelixCam cam) => Reaching(
        SpringModels.Twist(choice, machine)!, choice.PreloadTwist, cam.Turn(machine.FullShift.OpeningTravel));

    /// <summary>Torque over twist from a preload to the turn (rad) of the cam at full shift.</summary>
    public static LinearCurve Reaching(LinearCurve twist, double preload, double wholeTurn) =>
        SpringModels.Reaching(twist, preload, preload + wholeTurn, FitTolerance.AngleRad);

    /// <summary>The coils by which twist stiffens the driven spring; null where the machine leaves that out.</summary>
    public static double? StiffeningCoils(MachineModel machine, DrivenChoice choice) =>
        machine.Profile.DrivenClutch.TwistStiffening == YesNo.Yes ? choice.Spring.ActiveCoils : null;

    public Prediction Predict(SetUp set)
    {
        DriveSide drive = Drive(set.Spring, set.Flyweight);
        DrivenSide driven = Driven(set.Driven);
        ShiftPoint[] curve = [.. Model.Positions.Select((p, j) => Point(p, j, drive, driven))];
        return new Prediction
        {
            LockUpRpm = Machine.StartsByBelt ? Model.LockUpRpm(drive) : null,
            Reverse = set.Driven.Helix.ReverseDeg is { } degrees ? Reverse(degrees, curve[0]) : null,
            EngagementRpm = Machine.StartsByBelt ? drive.Engagement.Rpm : null,
            EngagementTravel = Length.FromMeters(drive.Engagement.Travel),
            ShiftOutRpm = curve[^1].Upshift?.Rpm,
            PeakPowerRpm = Model.PeakPowerRpm,
            PeakPower = Power.FromWatts(Model.PeakPower),
            TorqueFactor = TorqueFactor,
            Anchoring = Anchoring,
            Curve = curve,
        };
    }

    private ReverseClamp Reverse(double degrees, ShiftPoint lowGear)
    {
        Angle angle = Angle.FromDegrees(degrees);
        UnitsNet.Length radius = UnitsNet.Length.FromMeters(Machine.Drivetrain.CamRadius);
        Torque? cam = lowGear.Upshift is { } low
            ? low.EngineTorque * (Machine.Drivetrain.CamTorqueShare * Machine.Drivetrain.BeltEfficiency * lowGear.Ratio)
            : null;
        return new ReverseClamp(
            angle,
            Math.Tan(lowGear.HelixAngle.Radians) / Math.Tan(angle.Radians),
            cam is { } driving ? HelixCam.Thrust(driving, radius, lowGear.HelixAngle, Angle.Zero) : null,
            cam is { } braking ? HelixCam.Thrust(braking, radius, angle, Angle.Zero) : null);
    }

    private ShiftPoint Point(BeltPosition position, int j, DriveSide drive, DrivenSide driven) => new()
    {
        Ratio = position.Ratio,
        Travel = Length.FromMeters(position.Travel),
        OpeningTravel = Length.FromMeters(position.OpeningTravel),
        DriveRadius = Length.FromMeters(position.DriveRadius),
        DrivenRadius = Length.FromMeters(position.DrivenRadius),
        DriveWrap = Angle.FromRadians(position.DriveWrap),
        DrivenWrap = Angle.FromRadians(position.DrivenWrap),
        HelixAngle = Angle.FromRadians(driven.HelixAngle[j]),
        CamTurn = Angle.FromRadians(driven.CamTurn[j]),
        HelixHold = Model.HelixHold(driven, j),
        Upshift = Wrap(Model.Balance(drive, driven, j, ShiftDirection.Upshift)),
        Backshift = Wrap(Model.Balance(drive, driven, j, ShiftDirection.Backshift)),
    };

    private static Balance? Wrap(ShiftBalance? balance) => balance is not { } b ? null : new Balance
    {
        Rpm = b.Rpm,
        EngineTorque = Torque.FromNewtonMeters(b.EngineTorque),
        Power = Power.FromWatts(b.Power),
        PowerLost = Power.FromWatts(b.PowerLost),
        DrivenClamp = Force.FromNewtons(b.DrivenClamp),
        DriveThrust = Force.FromNewtons(b.DriveThrust),
        FlyweightThrust = Force.FromNewtons(b.FlyweightThrust),
        SpringForce = Force.FromNewtons(b.SpringForce),
        TightTension = Force.FromNewtons(b.Belt.TightNet + b.CentrifugalTension),
        SlackTension = Force.FromNewtons(b.Belt.SlackNet + b.CentrifugalTension),
        TightTensionNet = Force.FromNewtons(b.Belt.TightNet),
        SlackTensionNet = Force.FromNewtons(b.Belt.SlackNet),
        ActiveArc = Angle.FromRadians(b.Belt.ActiveArc),
        DriveActiveArc = Angle.FromRadians(b.Belt.DriveActiveArc),
        SlipMargin = double.IsNaN(b.Belt.SlipMargin) ? null : b.Belt.SlipMargin,
        Slips = b.Slips,
        DrivenSlips = b.Belt.DrivenSlips,
        BeltSpeed = Speed.FromMetersPerSecond(b.BeltSpeed),
        VehicleSpeed = Speed.FromMetersPerSecond(b.VehicleSpeed),
    };
}
