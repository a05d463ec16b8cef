using PartPicker.Mechanics;
using PartPicker.Parts;
using static PartPicker.Selection.FitTolerance;
using QuantityLength = UnitsNet.Length;

namespace PartPicker.Selection;

/// <summary>What a flyweight body with its stations must keep, whatever masses it carries.</summary>
internal static class FlyweightRules
{
    public static readonly IReadOnlyList<FitRule<Flyweight>> All =
    [
        new("flyweight-known", "The path of the arm must be known: weighed against another arm only, it has no absolute rpm.", true, Known),
        new("flyweight-family", "Ramps with an adjuster, arms and sliding rollers each belong in a clutch of their family.", true, Family),
        new("flyweight-travel", "Every radius curve must reach from rest to full shift; nothing is guessed beyond it.", true, Travel),
        new("flyweight-outward", "Every mass must move outward over the whole travel, or it does not push.", true, Outward),
        new("flyweight-arm-length", "The arm must have the length that the clutch takes.", false, ArmLength),
        new("flyweight-pin-bore", "The bore must fit the pin of the clutch.", false, PinBore),
        new("flyweight-roller-diameter", "Sliding rollers must fit the ramps of the clutch.", false, RollerDiameter),
        new("flyweight-tip-clearance", "No arm may reach the cover.", false, TipClearance, NamedWhenUnknown: true),
        new("flyweight-set-count", "A set must have as many arms as the clutch.", false, SetCount),
    ];

    /// <summary>True when mass and path of the body are known.</summary>
    public static bool PathKnown(Flyweight body) =>
        body.BodyMass.Kilograms > 0 && (body.RadiusCurve.Count > 0 || body.AdjusterCurves is not null);

    private static FitCheck Known(Flyweight body, MachineModel machine) => FitCheck.Word(
        PathKnown(body),
        body.ReferenceArmId is { } reference
            ? $"it is known only in grams against {reference}; that tells a change of rpm, not an rpm"
            : "its path or its mass is not known: give bodyMass with radiusCurve, armProfile or adjusterCurves");

    private static FitCheck Family(Flyweight body, MachineModel machine)
    {
        DriveFamily family = machine.Profile.DriveClutch.Family;
        bool ramp = body.AdjusterCurves is not null;
        if (ramp || family == DriveFamily.RollerOnAdjustableRamp)
        {
            return FitCheck.Word(
                ramp && family == DriveFamily.RollerOnAdjustableRamp,
                ramp ? "it is an adjustable ramp; the clutch has no adjuster" : "it is no adjustable ramp, and the clutch takes nothing else");
        }

        // An arm has a length and a loose roller has a diameter; a body that states both or neither may be either.
        bool arm = body.ArmLength is not null && body.RollerDiameter is null;
        bool roller = body.RollerDiameter is not null && body.ArmLength is null;
        return family == DriveFamily.SlidingRoller
            ? FitCheck.Word(!arm, "it is an arm; the clutch takes sliding rollers")
            : FitCheck.Word(!roller, "it is a sliding roller; the clutch takes arms");
    }

    private static FitCheck Travel(Flyweight body, MachineModel machine)
    {
        double fullShift = machine.Drivetrain.FullShiftTravel;
        IReadOnlyList<CurvePoint>[] curves = [.. FlyweightChoice.Points(body).Select(c => c.Points)];
        if (curves.Length == 0)
            return FitCheck.NotChecked("its radius curve");
        double from = curves.Max(c => c[0].X);
        double to = curves.Min(c => c[^1].X);
        return FitCheck
            .AtMost(from, 0, QuantityLength.Info, LengthM,
                $"a radius curve starts at {Words.Length(from)} of travel, not at rest")
            .And(FitCheck.AtLeast(to, fullShift, QuantityLength.Info, LengthM,
                $"a radius curve ends at {Words.Length(to)} of travel; full shift is at {Words.Length(fullShift)}"));
    }

    private static FitCheck Outward(Flyweight body, MachineModel machine)
    {
        double fullShift = machine.Drivetrain.FullShiftTravel;
        (string Name, SmoothCurve Curve)[] curves = [.. FlyweightChoice.Curves(body, fullShift)];
        if (curves.Length == 0 || curves.Any(c => !c.Curve.Covers(0, fullShift)))
            return FitCheck.NotChecked("a radius curve over the whole travel");
        (string name, double slope) = curves
            .Select(c => (c.Name, c.Curve.LeastSlope(0, fullShift)))
            .MinBy(c => c.Item2);
        return FitCheck.AtLeast(slope, FlyweightSet.LeastRadiusSlope, null, 0,
            $"the radius of its {name} does not grow with travel everywhere");
    }

    private static FitCheck PinBore(Flyweight body, MachineModel machine) => SameLength(
        body.PinBore, "pin bore", machine, machine.Profile.DriveClutch.PinDiameter, "pinDiameter");

    private static FitCheck RollerDiameter(Flyweight body, MachineModel machine) =>
        machine.Profile.DriveClutch.Family == DriveFamily.SlidingRoller
            ? SameLength(body.RollerDiameter, "roller diameter", machine, machine.Profile.DriveClutch.RollerDiameter, "rollerDiameter")
            : FitCheck.Holds;

    private static FitCheck TipClearance(Flyweight body, MachineModel machine)
    {
        if (machine.Profile.DriveClutch.Family == DriveFamily.SlidingRoller)
            return FitCheck.Holds;
        if (machine.Profile.DriveClutch.TipClearanceRadius is not { } limit)
            return FitCheck.NotStated(machine.Profile.DriveClutch, "tipClearanceRadius", "tip clearance radius of the clutch");
        if (body.TipRadius is not { } tip)
            return FitCheck.NotChecked("tip radius");
        return FitCheck.AtMost(tip.Meters, limit.Meters, QuantityLength.Info, LengthM,
            $"its tip comes {Words.Length(tip.Meters)} from the shaft; the cover leaves {Words.Length(limit.Meters)}");
    }

    private static FitCheck SetCount(Flyweight body, MachineModel machine)
    {
        int wanted = machine.Profile.DriveClutch.ArmCount;
        string pieces = Words.Pieces(machine.Profile.DriveClutch.Family);
        return body.SetCount is not { } count
            ? FitCheck.NotChecked($"{pieces} in a set")
            : FitCheck.Same(count, wanted, null, 0, $"a set has {count} {pieces}; the clutch takes {wanted}");
    }

    private static FitCheck ArmLength(Flyweight body, MachineModel machine) =>
        machine.Profile.DriveClutch.Family == DriveFamily.SlidingRoller
            ? FitCheck.Holds
            : SameLength(body.ArmLength, "arm length", machine, machine.Profile.DriveClutch.ArmLength, "armLength");

    private static FitCheck SameLength(
        QuantityLength? has, string what, MachineModel machine, QuantityLength? wanted, string field)
    {
        if (wanted is not { } limit)
            return FitCheck.NotStated(machine.Profile.DriveClutch, field, $"{Words.Of(field)} of the clutch");
        if (has is not { } measured)
            return FitCheck.NotChecked(what);
        return FitCheck.Same(measured.Meters, limit.Meters, QuantityLength.Info, LengthM,
            $"{what} {Words.Length(measured.Meters)} is not the {Words.Length(limit.Meters)} that the clutch takes");
    }
}
