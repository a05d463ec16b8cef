using UnitsNet;

namespace PartPicker.Parts;

/// <summary>The fields of the pieces that make a machine profile.</summary>
internal static class MachineFields
{
    private const double Mm = 1e-3;
    private static readonly Axis Radius = new(Length.Info, 1 * Mm, 300 * Mm);

    public static readonly IReadOnlyList<Field> Engine = FieldRegistry.Piece<Engine>(ItemKind.Engine)
        .Curve("torqueCurve", new(null, 0, 30_000), new(Torque.Info, 0, 2_000), 2, e => e.TorqueCurve.Count == 0 ? null : e.TorqueCurve, (e, v) => e with { TorqueCurve = v }, "Full-throttle torque over rpm, at sea level; or else the two peaks.")
        .Number("peakTorqueRpm", 500, 20_000, e => e.PeakTorqueRpm, (e, v) => e with { PeakTorqueRpm = v }, "Engine speed of the greatest torque, where no curve is known.")
        .Quantity("peakTorque", Torque.Info, 0.5, 2_000, e => e.PeakTorque?.NewtonMeters, (e, v) => e with { PeakTorque = Torque.FromNewtonMeters(v) }, "Greatest torque at full throttle, at sea level.")
        .Number("peakPowerRpm", 500, 20_000, e => e.PeakPowerRpm, (e, v) => e with { PeakPowerRpm = v }, "Engine speed of the greatest power.")
        .Quantity("peakPower", Power.Info, 100, 1_000_000, e => (double?)e.PeakPower?.Watts, (e, v) => e with { PeakPower = Power.FromWatts(v) }, "Greatest power at full throttle, at sea level.")
        .Quantity("boostedTo", Length.Info, 0, AirState.MaxAltitudeM, e => e.BoostedTo?.Meters, (e, v) => e with { BoostedTo = Length.FromMeters(v) }, "Altitude up to which boost makes up for thin air.")
        .Number("revLimitRpm", 500, 30_000, e => e.RevLimitRpm, (e, v) => e with { RevLimitRpm = v }, "Highest engine speed that is allowed.", required: true)
        .Number("idleRpm", 100, 10_000, e => e.IdleRpm, (e, v) => e with { IdleRpm = v }, "Engine speed at idle.", required: true)
        .Fields;

    public static readonly IReadOnlyList<Field> DriveClutch = FieldRegistry.Piece<DriveClutch>(ItemKind.DriveClutch)
        .Number("sheaveHalfAngleDeg", 5, 25, c => c.SheaveHalfAngleDeg, (c, v) => c with { SheaveHalfAngleDeg = v }, "Half of the groove angle, in degrees.", required: true)
        .Quantity("contactTravel", Length.Info, 0, 50 * Mm, c => c.ContactTravel.Meters, (c, v) => c with { ContactTravel = Length.FromMeters(v) }, "Sheave travel from rest to belt contact.", required: true)
        .Quantity("fullShiftTravel", Length.Info, 1 * Mm, 150 * Mm, c => c.FullShiftTravel.Meters, (c, v) => c with { FullShiftTravel = Length.FromMeters(v) }, "Sheave travel from rest to full shift.", required: true)
        .Quantity("contactPitchRadius", Length.Info, 10 * Mm, 150 * Mm, c => c.ContactPitchRadius.Meters, (c, v) => c with { ContactPitchRadius = Length.FromMeters(v) }, "Pitch radius of the belt at contact.", required: true)
        .Count("armCount", 1, 24, c => c.ArmCount, (c, v) => c with { ArmCount = v }, "Number of flyweight arms.", required: true)
        .Quantity("springLength", Length.Info, 5 * Mm, 300 * Mm, c => c.SpringLength.Meters, (c, v) => c with { SpringLength = Length.FromMeters(v) }, "Length of the drive spring with the clutch at rest.", required: true)
        .Number("flyweightFrictionShare", 0, 0.2, c => c.FlyweightFrictionShare, (c, v) => c with { FlyweightFrictionShare = v }, "Share of flyweight thrust lost to friction.", standard: 0)
        .Choice<DriveThrustLaw>("thrustLaw", c => c.ThrustLaw, (c, v) => c with { ThrustLaw = v }, "How the belt carries its tension around the drive sheave.", standard: DriveThrustLaw.TwoArc)
        .Quantity("cupBore", Length.Info, 5 * Mm, 250 * Mm, c => c.CupBore?.Meters, (c, v) => c with { CupBore = Length.FromMeters(v) }, "Bore around the drive spring.")
        .Quantity("postDiameter", Length.Info, 1 * Mm, 200 * Mm, c => c.PostDiameter?.Meters, (c, v) => c with { PostDiameter = Length.FromMeters(v) }, "Post inside the drive spring.")
        .Quantity("armLength", Length.Info, 5 * Mm, 200 * Mm, c => c.ArmLength?.Meters, (c, v) => c with { ArmLength = Length.FromMeters(v) }, "Pin-to-tip length of the arms that this clutch takes.")
        .Quantity("pinDiameter", Length.Info, 1 * Mm, 50 * Mm, c => c.PinDiameter?.Meters, (c, v) => c with { PinDiameter = Length.FromMeters(v) }, "Pin that the arms swing on.")
        .Quantity("rollerDiameter", Length.Info, 2 * Mm, 80 * Mm, c => c.RollerDiameter?.Meters, (c, v) => c with { RollerDiameter = Length.FromMeters(v) }, "Diameter of the rollers that slide in its ramps.")
        .Quantity("tipClearanceRadius", Length.Info, 5 * Mm, 300 * Mm, c => c.TipClearanceRadius?.Meters, (c, v) => c with { TipClearanceRadius = Length.FromMeters(v) }, "Distance from the shaft that no arm may pass.")
        .Choice<SpringSeat>("springSeat", c => c.SpringSeat, (c, v) => c with { SpringSeat = v }, "Seat of the drive spring: flat for ground ends, stepped for others.")
        .Choice<SpringFixing>("springFixing", c => c.SpringFixing, (c, v) => c with { SpringFixing = v }, "How both ends of the drive spring are held; by default on flat, parallel, guided seats.", standard: SpringFixing.BothFixed)
        .Count("shimLimit", 0, 10, c => c.ShimLimit, (c, v) => c with { ShimLimit = v }, "Most shims under the drive spring.")
        .Choice<DriveFamily>("family", c => c.Family, (c, v) => c with { Family = v }, "How its flyweights push.", standard: DriveFamily.ArmOnRoller)
        .Choice<StartDevice>("startDevice", c => c.StartDevice, (c, v) => c with { StartDevice = v }, "What starts the machine moving.", standard: StartDevice.Belt)
        .Fields;

    public static readonly IReadOnlyList<Field> DrivenClutch = FieldRegistry.Piece<DrivenClutch>(ItemKind.DrivenClutch)
        .Quantity("camRadius", Length.Info, 5 * Mm, 200 * Mm, c => c.CamRadius.Meters, (c, v) => c with { CamRadius = Length.FromMeters(v) }, "Radius of the cam track.", required: true)
        .Number("camTorqueShare", 0.01, 1, c => c.CamTorqueShare, (c, v) => c with { CamTorqueShare = v }, "Share of the belt torque that passes the cam.", standard: 0.5)
        .Quantity("springLength", Length.Info, 5 * Mm, 300 * Mm, c => c.SpringLength.Meters, (c, v) => c with { SpringLength = Length.FromMeters(v) }, "Length of the driven spring in low gear.", required: true)
        .Number("camFrictionDeg", 0, 20, c => c.CamFrictionDeg, (c, v) => c with { CamFrictionDeg = v }, "Friction angle of the cam, in degrees.", standard: 0)
        .Choice<YesNo>("twistStiffening", c => c.TwistStiffening, (c, v) => c with { TwistStiffening = v }, "Whether the twist of the driven spring stiffens its push, where its active coils are known.", standard: YesNo.No)
        .Quantity("hubDiameter", Length.Info, 1 * Mm, 200 * Mm, c => c.HubDiameter?.Meters, (c, v) => c with { HubDiameter = Length.FromMeters(v) }, "Hub that the driven spring sits over.")
        .Holes("holes", 0, 720, c => c.Holes.Count == 0 ? null : c.Holes, (c, v) => c with { Holes = v }, "Preload twist in low gear, in degrees, by the name of the spring hole or of the pair of holes.")
        .Number("adjusterFromDeg", 0, 720, c => c.AdjusterFromDeg, (c, v) => c with { AdjusterFromDeg = v }, "Least twist of an adjuster, in degrees.")
        .Number("adjusterToDeg", 0, 720, c => c.AdjusterToDeg, (c, v) => c with { AdjusterToDeg = v }, "Greatest twist of an adjuster, in degrees.")
        .Number("adjusterStepDeg", 1, 720, c => c.AdjusterStepDeg, (c, v) => c with { AdjusterStepDeg = v }, "Degrees from one setting of an adjuster to the next.")
        .Choice<WindingHand>("windingHand", c => c.WindingHand, (c, v) => c with { WindingHand = v }, "Winding hand of the springs that it takes.")
        .Choice<SpringLegs>("legs", c => c.Legs, (c, v) => c with { Legs = v }, "The spring ends that its holes take.")
        .Text("helixMount", 40, c => c.HelixMount, (c, v) => c with { HelixMount = v }, "How a helix is fixed to it, in a word.")
        .Choice<DrivenFamily>("family", c => c.Family, (c, v) => c with { Family = v }, "What closes it.", standard: DrivenFamily.TorsionAndHelix)
        .Fields;

    public static readonly IReadOnlyList<Field> ArmProfile = FieldRegistry.Piece<ArmProfile>(ItemKind.ArmProfile)
        .Curve("radiusCurve", FieldRegistry.Travel, Radius, 2, p => p.RadiusCurve, (p, v) => p with { RadiusCurve = v }, "Radius of gyration of the body about the shaft, over sheave travel.", required: true)
        .Curve("heelCurve", FieldRegistry.Travel, Radius, 2, p => p.HeelCurve, (p, v) => p with { HeelCurve = v }, "Radius of the heel station, over sheave travel.")
        .Curve("middleCurve", FieldRegistry.Travel, Radius, 2, p => p.MiddleCurve, (p, v) => p with { MiddleCurve = v }, "Radius of the middle station, over sheave travel.")
        .Curve("tipCurve", FieldRegistry.Travel, Radius, 2, p => p.TipCurve, (p, v) => p with { TipCurve = v }, "Radius of the tip station, over sheave travel.")
        .Fields;

    public static readonly IReadOnlyList<Field> Gearing = FieldRegistry.Piece<Gearing>(ItemKind.Gearing)
        .Quantity("tyreRadius", Length.Info, 20 * Mm, 2_000 * Mm, g => g.TyreRadius.Meters, (g, v) => g with { TyreRadius = Length.FromMeters(v) }, "Rolling radius of the tyre or track drive.", required: true)
        .Number("finalDrive", 0.1, 100, g => g.FinalDrive, (g, v) => g with { FinalDrive = v }, "Turns of the driven clutch per turn of the wheel.", required: true)
        .Fields;

    public static readonly IReadOnlyList<Field> Machine = FieldRegistry.Piece<Machine>(ItemKind.Machine)
        .Reference("engine", ItemKind.Engine, m => m.EngineId, (m, v) => m with { EngineId = v }, "The engine.", required: true)
        .Reference("driveClutch", ItemKind.DriveClutch, m => m.DriveClutchId, (m, v) => m with { DriveClutchId = v }, "The drive clutch.", required: true)
        .Reference("drivenClutch", ItemKind.DrivenClutch, m => m.DrivenClutchId, (m, v) => m with { DrivenClutchId = v }, "The driven clutch.", required: true)
        .Reference("belt", ItemKind.Belt, m => m.BeltId, (m, v) => m with { BeltId = v }, "The belt.", required: true)
        .Reference("gearing", ItemKind.Gearing, m => m.GearingId, (m, v) => m with { GearingId = v }, "The gearing.", required: true)
        .Text("use", 40, m => m.Use, (m, v) => m with { Use = v }, "What the machine is used for, in a word.")
        .Quantity("centreDistance", Length.Info, 50 * Mm, 2_000 * Mm, m => m.CentreDistance.Meters, (m, v) => m with { CentreDistance = Length.FromMeters(v) }, "Distance between the shafts.", required: true)
        .Fields;
}
