using UnitsNet;

namespace PartPicker.Parts;

/// <summary>The fields of the pieces that make a machine profile.</summary>
internal static class MachineFields
{
    private const double Mm = 1e-3;

    public static readonly IReadOnlyList<Field> Engine = FieldRegistry.Named<Engine>(ItemKind.Engine)
        .Curve("torqueCurve", new(null, 0, 30_000), new(Torque.Info, 0, 2_000), 2, e => e.TorqueCurve, (e, v) => e with { TorqueCurve = v }, "Full-throttle torque over rpm, at sea level.", required: true)
        .Number("revLimitRpm", 500, 30_000, e => e.RevLimitRpm, (e, v) => e with { RevLimitRpm = v }, "Highest engine speed that is allowed.", required: true)
        .Number("idleRpm", 100, 10_000, e => e.IdleRpm, (e, v) => e with { IdleRpm = v }, "Engine speed at idle.", required: true)
        .Fields;

    public static readonly IReadOnlyList<Field> DriveClutch = FieldRegistry.Named<DriveClutch>(ItemKind.DriveClutch)
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
        .Fields;

    public static readonly IReadOnlyList<Field> DrivenClutch = FieldRegistry.Named<DrivenClutch>(ItemKind.DrivenClutch)
        .Quantity("camRadius", Length.Info, 5 * Mm, 200 * Mm, c => c.CamRadius.Meters, (c, v) => c with { CamRadius = Length.FromMeters(v) }, "Radius of the cam track.", required: true)
        .Number("camTorqueShare", 0.01, 1, c => c.CamTorqueShare, (c, v) => c with { CamTorqueShare = v }, "Share of the belt torque that passes the cam.", standard: 0.5)
        .Quantity("springLength", Length.Info, 5 * Mm, 300 * Mm, c => c.SpringLength.Meters, (c, v) => c with { SpringLength = Length.FromMeters(v) }, "Length of the driven spring in low gear.", required: true)
        .Number("camFrictionDeg", 0, 20, c => c.CamFrictionDeg, (c, v) => c with { CamFrictionDeg = v }, "Friction angle of the cam, in degrees.", standard: 0)
        .Quantity("hubDiameter", Length.Info, 1 * Mm, 200 * Mm, c => c.HubDiameter?.Meters, (c, v) => c with { HubDiameter = Length.FromMeters(v) }, "Hub that the driven spring sits over.")
        .Holes("holes", 0, 720, c => c.Holes, (c, v) => c with { Holes = v }, "Preload twist in low gear, in degrees, by the name of the spring hole.")
        .Fields;

    public static readonly IReadOnlyList<Field> Belt = FieldRegistry.Named<Belt>(ItemKind.Belt)
        .Quantity("pitchLength", Length.Info, 100 * Mm, 5_000 * Mm, b => b.PitchLength.Meters, (b, v) => b with { PitchLength = Length.FromMeters(v) }, "Length along the pitch line.", required: true)
        .Quantity("massPerLength", LinearDensity.Info, 0, 5, b => b.MassPerLength.KilogramsPerMeter, (b, v) => b with { MassPerLength = LinearDensity.FromKilogramsPerMeter(v) }, "Mass per length.", required: true)
        .Number("friction", 0.05, 1.5, b => b.Friction, (b, v) => b with { Friction = v }, "Friction of belt on sheave.", required: true)
        .Number("efficiency", 0.5, 1, b => b.Efficiency, (b, v) => b with { Efficiency = v }, "Share of the power that the belt passes on.", required: true)
        .Fields;

    public static readonly IReadOnlyList<Field> Gearing = FieldRegistry.Named<Gearing>(ItemKind.Gearing)
        .Quantity("tyreRadius", Length.Info, 20 * Mm, 2_000 * Mm, g => g.TyreRadius.Meters, (g, v) => g with { TyreRadius = Length.FromMeters(v) }, "Rolling radius of the tyre or track drive.", required: true)
        .Number("finalDrive", 0.1, 100, g => g.FinalDrive, (g, v) => g with { FinalDrive = v }, "Turns of the driven clutch per turn of the wheel.", required: true)
        .Fields;

    public static readonly IReadOnlyList<Field> Machine = FieldRegistry.Named<Machine>(ItemKind.Machine)
        .Reference("engine", ItemKind.Engine, m => m.EngineId, (m, v) => m with { EngineId = v }, "The engine.")
        .Reference("driveClutch", ItemKind.DriveClutch, m => m.DriveClutchId, (m, v) => m with { DriveClutchId = v }, "The drive clutch.")
        .Reference("drivenClutch", ItemKind.DrivenClutch, m => m.DrivenClutchId, (m, v) => m with { DrivenClutchId = v }, "The driven clutch.")
        .Reference("belt", ItemKind.Belt, m => m.BeltId, (m, v) => m with { BeltId = v }, "The belt.")
        .Reference("gearing", ItemKind.Gearing, m => m.GearingId, (m, v) => m with { GearingId = v }, "The gearing.")
        .Quantity("centreDistance", Length.Info, 50 * Mm, 2_000 * Mm, m => m.CentreDistance.Meters, (m, v) => m with { CentreDistance = Length.FromMeters(v) }, "Distance between the shafts.", required: true)
        .Fields;
}
