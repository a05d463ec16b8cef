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
        new("flyweight-travel", "Every radius curve must reach from rest to full shift; nothing is guessed beyond it.", true, Travel),
        new("flyweight-outward", "Every mass must move outward over the whole travel, or it does not push.", true, Outward),
        new("flyweight-arm-length", "The arm must have the length that the clutch takes.", false, ArmLength),
    ];

    private static FitCheck Travel(Flyweight body, MachineModel machine)
    {
        double fullShift = machine.Drivetrain.FullShiftTravel;
        IReadOnlyList<CurvePoint>[] curves = [body.RadiusCurve, .. body.Stations().Select(s => s.RadiusCurve)];
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
        (StationName? Station, SmoothCurve Curve)[] curves = [.. FlyweightChoice.Curves(body, fullShift)];
        if (curves.Any(c => !c.Curve.Covers(0, fullShift)))
            return FitCheck.NotChecked("a radius curve over the whole travel");
        (StationName? station, double slope) = curves
            .Select(c => (c.Station, c.Curve.LeastSlope(0, fullShift)))
            .MinBy(c => c.Item2);
        string what = station is { } name ? $"{Words.Camel(name.ToString())} station" : "body";
        return FitCheck.AtLeast(slope, LeastRadiusSlope, null, 0,
            $"the radius of its {what} does not grow with travel everywhere");
    }

    private static FitCheck ArmLength(Flyweight body, MachineModel machine)
    {
        if (machine.Profile.DriveClutch.ArmLength is not { } wanted)
            return FitCheck.NotChecked("arm length of the clutch");
        if (body.ArmLength is not { } has)
            return FitCheck.NotChecked("arm length");
        return FitCheck.Same(has.Meters, wanted.Meters, QuantityLength.Info, LengthM,
            $"arm length {Words.Length(has.Meters)} is not the {Words.Length(wanted.Meters)} that the clutch takes");
    }

    // Radius gained per travel: below this an arm stands still and its engagement speed has no meaning.
    private const double LeastRadiusSlope = 1e-6;
}
