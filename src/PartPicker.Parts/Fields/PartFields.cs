using UnitsNet;

namespace PartPicker.Parts;

/// <summary>The fields of the parts.</summary>
internal static class PartFields
{
    // Ranges are wide enough for any clutch of the trade and tight enough to catch a wrong unit.
    private const double Mm = 1e-3;
    private const double Gram = 1e-3;
    private const double Degree = Math.PI / 180;
    private static readonly Axis SpringLength = new(Length.Info, 1 * Mm, 400 * Mm);
    private static readonly Axis Load = new(Force.Info, 0, 20_000);
    private static readonly Axis Radius = new(Length.Info, 1 * Mm, 300 * Mm);

    public static readonly IReadOnlyList<Field> DriveSpring = FieldRegistry.Sold<DriveSpring>(ItemKind.DriveSpring)
        .Quantity("wireDiameter", Length.Info, 0.5 * Mm, 20 * Mm, s => s.WireDiameter?.Meters, (s, v) => s with { WireDiameter = Length.FromMeters(v) }, "Diameter of the round wire.")
        .Quantity("outsideDiameter", Length.Info, 5 * Mm, 200 * Mm, s => s.OutsideDiameter?.Meters, (s, v) => s with { OutsideDiameter = Length.FromMeters(v) }, "Outside diameter at free length.")
        .Number("activeCoils", 1, 60, s => s.ActiveCoils, (s, v) => s with { ActiveCoils = v }, "Coils that deflect.")
        .Number("totalCoils", 1, 64, s => s.TotalCoils, (s, v) => s with { TotalCoils = v }, "All coils, ends included.")
        .Choice<SpringEnds>("ends", s => s.Ends, (s, v) => s with { Ends = v }, "How the ends are made.")
        .Text("material", 40, s => s.Material, (s, v) => s with { Material = v }, "Wire material, by its key in the wire table.")
        .Quantity("freeLength", Length.Info, 5 * Mm, 400 * Mm, s => s.FreeLength?.Meters, (s, v) => s with { FreeLength = Length.FromMeters(v) }, "Length with no load.")
        .Quantity("solidLength", Length.Info, 2 * Mm, 300 * Mm, s => s.SolidLength?.Meters, (s, v) => s with { SolidLength = Length.FromMeters(v) }, "Length with all coils touching.")
        .Quantity("rate", ForcePerLength.Info, 100, 1_000_000, s => s.Rate?.NewtonsPerMeter, (s, v) => s with { Rate = ForcePerLength.FromNewtonsPerMeter(v) }, "Force per length of compression.")
        .Quantity("firstLength", Length.Info, 2 * Mm, 400 * Mm, s => s.FirstLength?.Meters, (s, v) => s with { FirstLength = Length.FromMeters(v) }, "Length at which the first load was taken.")
        .Quantity("firstLoad", Force.Info, 0, 20_000, s => s.FirstLoad?.Newtons, (s, v) => s with { FirstLoad = Force.FromNewtons(v) }, "Load at the first length.")
        .Quantity("secondLength", Length.Info, 2 * Mm, 400 * Mm, s => s.SecondLength?.Meters, (s, v) => s with { SecondLength = Length.FromMeters(v) }, "Length at which the second load was taken.")
        .Quantity("secondLoad", Force.Info, 0, 20_000, s => s.SecondLoad?.Newtons, (s, v) => s with { SecondLoad = Force.FromNewtons(v) }, "Load at the second length.")
        .Curve("loadTable", SpringLength, Load, 2, s => s.LoadTable, (s, v) => s with { LoadTable = v }, "Measured load over length.")
        .Choice<WindingHand>("windingHand", s => s.WindingHand, (s, v) => s with { WindingHand = v }, "Which way the coil climbs.")
        .Choice<YesNo>("setRemoved", s => s.SetRemoved, (s, v) => s with { SetRemoved = v }, "Whether its maker pressed it solid until it set no more; it may then be stressed higher.")
        .Count("toleranceGrade", 1, 3, s => s.ToleranceGrade, (s, v) => s with { ToleranceGrade = v }, "Grade of its tolerances by EN 15800; 1 is the finest.")
        .Fields;

    public static readonly IReadOnlyList<Field> Flyweight = FieldRegistry.Sold<Flyweight>(ItemKind.Flyweight)
        .Quantity("bodyMass", Mass.Info, 1 * Gram, 500 * Gram, f => f.BodyMass.Kilograms > 0 ? f.BodyMass.Kilograms : null, (f, v) => f with { BodyMass = Mass.FromKilograms(v) }, "Mass of one arm or roller without station masses.")
        .Quantity("armLength", Length.Info, 5 * Mm, 200 * Mm, f => f.ArmLength?.Meters, (f, v) => f with { ArmLength = Length.FromMeters(v) }, "Pin to tip of one arm.")
        .Quantity("pinBore", Length.Info, 1 * Mm, 50 * Mm, f => f.PinBore?.Meters, (f, v) => f with { PinBore = Length.FromMeters(v) }, "Bore of the pin that the arm swings on.")
        .Quantity("rollerDiameter", Length.Info, 2 * Mm, 80 * Mm, f => f.RollerDiameter?.Meters, (f, v) => f with { RollerDiameter = Length.FromMeters(v) }, "Outside diameter of a sliding roller.")
        .Quantity("tipRadius", Length.Info, 5 * Mm, 300 * Mm, f => f.TipRadius?.Meters, (f, v) => f with { TipRadius = Length.FromMeters(v) }, "Farthest that any point of the arm comes from the shaft.")
        .Count("setCount", 1, 24, f => f.SetCount, (f, v) => f with { SetCount = v }, "Arms or rollers in a set.")
        .Reference("armProfile", ItemKind.ArmProfile, f => f.ArmProfileId, (f, v) => f with { ArmProfileId = v }, "The arm profile whose curves it has.")
        .Reference("referenceArm", ItemKind.Flyweight, f => f.ReferenceArmId, (f, v) => f with { ReferenceArmId = v }, "The arm that it is weighed against.")
        .Quantity("massOverReference", Mass.Info, -200 * Gram, 200 * Gram, f => f.MassOverReference?.Kilograms, (f, v) => f with { MassOverReference = Mass.FromKilograms(v) }, "Mass of one arm less that of the reference arm.")
        .Curve("radiusCurve", FieldRegistry.Travel, Radius, 2, f => f.RadiusCurve.Count == 0 ? null : f.RadiusCurve, (f, v) => f with { RadiusCurve = v }, "Radius of gyration of the body about the shaft, over sheave travel.")
        .NamedCurves("adjusterCurves", FieldRegistry.Travel, Radius, 2, f => f.AdjusterCurves, (f, v) => f with { AdjusterCurves = v }, "Paths of an adjustable ramp, by the step of its adjuster.")
        .Quantities("pinMasses", Mass.Info, 0, 100 * Gram, f => f.PinMasses, (f, v) => f with { PinMasses = v }, "Masses of the pins that an adjustable ramp takes.")
        .Curve("heelCurve", FieldRegistry.Travel, Radius, 2, f => f.HeelCurve, (f, v) => f with { HeelCurve = v }, "Radius of the heel station, over sheave travel.")
        .Quantities("heelMasses", Mass.Info, 0, 100 * Gram, f => f.HeelMasses, (f, v) => f with { HeelMasses = v }, "Masses that fit the heel station; 0 g is an empty one.")
        .Choice<MassHolding>("heelHolding", f => f.HeelHolding, (f, v) => f with { HeelHolding = v }, "How a mass is held in the heel station; taking a rivet out destroys it.")
        .Quantity("heelMassLimit", Mass.Info, 0, 100 * Gram, f => f.HeelMassLimit?.Kilograms, (f, v) => f with { HeelMassLimit = Mass.FromKilograms(v) }, "Most that the heel station may carry.")
        .Quantity("heelLengthLimit", Length.Info, 0, 60 * Mm, f => f.HeelLengthLimit?.Meters, (f, v) => f with { HeelLengthLimit = Length.FromMeters(v) }, "Longest mass that the heel station takes, for whoever orders one: masses have no length in a catalog, so no rule asks for it.")
        .Curve("middleCurve", FieldRegistry.Travel, Radius, 2, f => f.MiddleCurve, (f, v) => f with { MiddleCurve = v }, "Radius of the middle station, over sheave travel.")
        .Quantities("middleMasses", Mass.Info, 0, 100 * Gram, f => f.MiddleMasses, (f, v) => f with { MiddleMasses = v }, "Masses that fit the middle station; 0 g is an empty one.")
        .Choice<MassHolding>("middleHolding", f => f.MiddleHolding, (f, v) => f with { MiddleHolding = v }, "How a mass is held in the middle station; taking a rivet out destroys it.")
        .Quantity("middleMassLimit", Mass.Info, 0, 100 * Gram, f => f.MiddleMassLimit?.Kilograms, (f, v) => f with { MiddleMassLimit = Mass.FromKilograms(v) }, "Most that the middle station may carry.")
        .Quantity("middleLengthLimit", Length.Info, 0, 60 * Mm, f => f.MiddleLengthLimit?.Meters, (f, v) => f with { MiddleLengthLimit = Length.FromMeters(v) }, "Longest mass that the middle station takes, for whoever orders one: masses have no length in a catalog, so no rule asks for it.")
        .Curve("tipCurve", FieldRegistry.Travel, Radius, 2, f => f.TipCurve, (f, v) => f with { TipCurve = v }, "Radius of the tip station, over sheave travel.")
        .Quantities("tipMasses", Mass.Info, 0, 100 * Gram, f => f.TipMasses, (f, v) => f with { TipMasses = v }, "Masses that fit the tip station; 0 g is an empty one.")
        .Choice<MassHolding>("tipHolding", f => f.TipHolding, (f, v) => f with { TipHolding = v }, "How a mass is held in the tip station; taking a rivet out destroys it.")
        .Quantity("tipMassLimit", Mass.Info, 0, 100 * Gram, f => f.TipMassLimit?.Kilograms, (f, v) => f with { TipMassLimit = Mass.FromKilograms(v) }, "Most that the tip station may carry.")
        .Quantity("tipLengthLimit", Length.Info, 0, 60 * Mm, f => f.TipLengthLimit?.Meters, (f, v) => f with { TipLengthLimit = Length.FromMeters(v) }, "Longest mass that the tip station takes, for whoever orders one: masses have no length in a catalog, so no rule asks for it.")
        .Fields;

    public static readonly IReadOnlyList<Field> DrivenSpring = FieldRegistry.Sold<DrivenSpring>(ItemKind.DrivenSpring)
        .Quantity("wireDiameter", Length.Info, 0.5 * Mm, 20 * Mm, s => s.WireDiameter?.Meters, (s, v) => s with { WireDiameter = Length.FromMeters(v) }, "Diameter of the round wire.")
        .Quantity("outsideDiameter", Length.Info, 5 * Mm, 200 * Mm, s => s.OutsideDiameter?.Meters, (s, v) => s with { OutsideDiameter = Length.FromMeters(v) }, "Outside diameter at rest.")
        .Quantity("insideDiameter", Length.Info, 3 * Mm, 200 * Mm, s => s.InsideDiameter?.Meters, (s, v) => s with { InsideDiameter = Length.FromMeters(v) }, "Inside diameter at rest, where stated.")
        .Number("activeCoils", 1, 60, s => s.ActiveCoils, (s, v) => s with { ActiveCoils = v }, "Coils that deflect, legs included.")
        .Number("bodyCoils", 1, 60, s => s.BodyCoils, (s, v) => s with { BodyCoils = v }, "Coils of the body.")
        .Text("material", 40, s => s.Material, (s, v) => s with { Material = v }, "Wire material, by its key in the wire table.")
        .Quantity("freeLength", Length.Info, 5 * Mm, 400 * Mm, s => s.FreeLength?.Meters, (s, v) => s with { FreeLength = Length.FromMeters(v) }, "Length with no load.")
        .Quantity("rate", ForcePerLength.Info, 0, 1_000_000, s => s.Rate?.NewtonsPerMeter, (s, v) => s with { Rate = ForcePerLength.FromNewtonsPerMeter(v) }, "Force per length of compression.")
        .Quantity("loadLength", Length.Info, 2 * Mm, 400 * Mm, s => s.LoadLength?.Meters, (s, v) => s with { LoadLength = Length.FromMeters(v) }, "Length at which the load was taken.")
        .Quantity("load", Force.Info, 0, 20_000, s => s.Load?.Newtons, (s, v) => s with { Load = Force.FromNewtons(v) }, "Axial load at that length.")
        .Quantity("twistRate", RotationalStiffness.Info, 0, 1_000, s => s.TwistRate?.NewtonMetersPerRadian, (s, v) => s with { TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(v) }, "Torque per angle of twist.")
        .Number("firstTwistDeg", 0, 1_080, s => s.FirstTwistDeg, (s, v) => s with { FirstTwistDeg = v }, "Twist at which the first torque was taken, in degrees.")
        .Quantity("firstTorque", Torque.Info, 0, 500, s => s.FirstTorque?.NewtonMeters, (s, v) => s with { FirstTorque = Torque.FromNewtonMeters(v) }, "Torque at the first twist.")
        .Number("secondTwistDeg", 0, 1_080, s => s.SecondTwistDeg, (s, v) => s with { SecondTwistDeg = v }, "Twist at which the second torque was taken, in degrees.")
        .Quantity("secondTorque", Torque.Info, 0, 500, s => s.SecondTorque?.NewtonMeters, (s, v) => s with { SecondTorque = Torque.FromNewtonMeters(v) }, "Torque at the second twist.")
        .Curve("loadTable", SpringLength, Load, 2, s => s.LoadTable, (s, v) => s with { LoadTable = v }, "Measured axial load over length.")
        .Number("legOffsetDeg", -180, 180, s => s.LegOffsetDeg, (s, v) => s with { LegOffsetDeg = v }, "Twist that its legs add to every hole, in degrees.")
        .Choice<WindingHand>("windingHand", s => s.WindingHand, (s, v) => s with { WindingHand = v }, "Which way the coil climbs.")
        .Choice<SpringLegs>("legs", s => s.Legs, (s, v) => s with { Legs = v }, "How its ends take hold.")
        .Number("twistLimitDeg", 0, 1_080, s => s.TwistLimitDeg, (s, v) => s with { TwistLimitDeg = v }, "Greatest twist that the supplier allows, in degrees.")
        .Quantity("solidLength", Length.Info, 2 * Mm, 300 * Mm, s => s.SolidLength?.Meters, (s, v) => s with { SolidLength = Length.FromMeters(v) }, "Length of body and legs with all coils touching, at rest.")
        .Curve("torqueTable", new(null, 0, 1_080 * Degree, Degree), new(Torque.Info, 0, 500), 2, s => s.TorqueTable, (s, v) => s with { TorqueTable = v }, "Measured torque over twist in degrees.")
        .Count("toleranceGrade", 1, 3, s => s.ToleranceGrade, (s, v) => s with { ToleranceGrade = v }, "Grade of its tolerances by DIN 2194; 1 is the finest.")
        .Fields;

    public static readonly IReadOnlyList<Field> Helix = FieldRegistry.Sold<Helix>(ItemKind.Helix)
        .Number("helixDeg", 10, 80, h => h.HelixDeg, (h, v) => h with { HelixDeg = v }, "Angle from the plane of rotation, in degrees; the start angle of a two-angle helix.")
        .Number("finishDeg", 10, 80, h => h.FinishDeg, (h, v) => h with { FinishDeg = v }, "Finish angle of a two-angle helix, in degrees.")
        .Quantity("finishTravel", Length.Info, 1 * Mm, 100 * Mm, h => h.FinishTravel?.Meters, (h, v) => h with { FinishTravel = Length.FromMeters(v) }, "Opening travel at which the finish angle is reached.")
        .Curve("anglePoints", FieldRegistry.Travel, new(null, 10 * Degree, 80 * Degree, Degree), 2, h => h.AnglePoints, (h, v) => h with { AnglePoints = v }, "Angle in degrees over opening travel.")
        .Number("reverseDeg", 10, 80, h => h.ReverseDeg, (h, v) => h with { ReverseDeg = v }, "Angle of the flanks that bear under reverse power, in degrees: a flatter one clamps harder on engine braking.")
        .Quantity("camRadius", Length.Info, 5 * Mm, 200 * Mm, h => h.CamRadius?.Meters, (h, v) => h with { CamRadius = Length.FromMeters(v) }, "Radius of the cam track.")
        .Text("mount", 40, h => h.Mount, (h, v) => h with { Mount = v }, "How it is fixed, in the word that its clutch uses.")
        .Fields;

    public static readonly IReadOnlyList<Field> Belt = FieldRegistry.Sold<Belt>(ItemKind.Belt)
        .Quantity("pitchLength", Length.Info, 100 * Mm, 5_000 * Mm, b => b.PitchLength.Meters, (b, v) => b with { PitchLength = Length.FromMeters(v) }, "Length along the pitch line.", required: true)
        .Quantity("massPerLength", LinearDensity.Info, 0, 5, b => b.MassPerLength.KilogramsPerMeter, (b, v) => b with { MassPerLength = LinearDensity.FromKilogramsPerMeter(v) }, "Mass per length.", required: true)
        .Number("friction", 0.05, 1.5, b => b.Friction, (b, v) => b with { Friction = v }, "Friction of belt on sheave.", required: true)
        .Curve("frictionByRadius", new(Length.Info, 5 * Mm, 400 * Mm), new(null, 0.05, 1.5), 2, b => b.FrictionByRadius, (b, v) => b with { FrictionByRadius = v }, "Friction over pitch radius, straight lines between; it takes the place of friction and must cover every radius that the belt runs at.")
        .Number("efficiency", 0.5, 1, b => b.Efficiency, (b, v) => b with { Efficiency = v }, "Share of the power that the belt passes on.", required: true)
        .Quantity("topWidth", Length.Info, 5 * Mm, 100 * Mm, b => b.TopWidth?.Meters, (b, v) => b with { TopWidth = Length.FromMeters(v) }, "Width across the top when new.")
        .Quantity("wearLimit", Length.Info, 5 * Mm, 100 * Mm, b => b.WearLimit?.Meters, (b, v) => b with { WearLimit = Length.FromMeters(v) }, "Width across the top below which it is worn out.")
        .Fields;

    public static readonly IReadOnlyList<Field> Shim = FieldRegistry.Sold<Shim>(ItemKind.Shim)
        .Quantity("thickness", Length.Info, 0.05 * Mm, 20 * Mm, s => s.Thickness.Meters, (s, v) => s with { Thickness = Length.FromMeters(v) }, "How much it shortens the spring.", required: true)
        .Quantity("outsideDiameter", Length.Info, 5 * Mm, 200 * Mm, s => s.OutsideDiameter?.Meters, (s, v) => s with { OutsideDiameter = Length.FromMeters(v) }, "Outside diameter.")
        .Quantity("insideDiameter", Length.Info, 1 * Mm, 200 * Mm, s => s.InsideDiameter?.Meters, (s, v) => s with { InsideDiameter = Length.FromMeters(v) }, "Inside diameter.")
        .Fields;

    public static readonly IReadOnlyList<Field> Kit = FieldRegistry.Sold<Kit>(ItemKind.Kit)
        .KitLines("contents", k => k.Contents, (k, v) => k with { Contents = v }, "The parts in it, with how many packs of each.")
        .Fields;
}
