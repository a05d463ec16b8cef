using PartPicker.Mechanics;
using PartPicker.Parts;
using static PartPicker.Selection.FitTolerance;
using QuantityLength = UnitsNet.Length;

namespace PartPicker.Selection;

/// <summary>What a helix must keep.</summary>
internal static class HelixRules
{
    public static readonly IReadOnlyList<FitRule<Helix>> All =
    [
        new("helix-travel", "The points of a helix must reach over the whole opening travel.", true, Travel),
        new("helix-self-lock", "The helix must neither lock itself on the upshift nor pass 90° on the backshift.", true, SelfLock),
        new("helix-cam-radius", "The cam track must have the radius that the clutch takes.", false, CamRadius),
        new("helix-mount", "The helix must be fixed the way that the clutch takes.", false, Mount),
    ];

    /// <summary>The cam as the model sees it; its radius is the clutch's.</summary>
    public static HelixCam Cam(Helix helix, MachineModel machine) =>
        new(helix.Angles().Select(p => (p.X, p.Y)), machine.Drivetrain.CamRadius);

    private static FitCheck Travel(Helix helix, MachineModel machine)
    {
        double needed = machine.FullShift.OpeningTravel;
        if (helix.AnglePoints is not { } points)
            return FitCheck.Holds;
        return FitCheck
            .AtMost(points[0].X, 0, QuantityLength.Info, LengthM,
                $"its points start at {Words.Length(points[0].X)} of opening travel, not in low gear")
            .And(FitCheck.AtLeast(points[^1].X, needed, QuantityLength.Info, LengthM,
                $"its points end at {Words.Length(points[^1].X)} of opening travel; "
                + $"full shift needs {Words.Length(needed)}"));
    }

    private static FitCheck SelfLock(Helix helix, MachineModel machine)
    {
        double friction = machine.Drivetrain.CamFrictionAngle;
        (double least, double greatest) = Cam(helix, machine).AngleRange(machine.FullShift.OpeningTravel);
        return FitCheck
            .AtMost(greatest + friction, Math.PI / 2, UnitsNet.Angle.Info, -AngleRad,
                $"angle with friction {Words.Degrees(greatest + friction)} reaches 90°")
            .And(FitCheck.AtLeast(least, friction, UnitsNet.Angle.Info, -AngleRad,
                $"angle {Words.Degrees(least)} does not exceed the friction angle {Words.Degrees(friction)}: "
                + "it locks itself"));
    }

    private static FitCheck Mount(Helix helix, MachineModel machine)
    {
        if (machine.Profile.DrivenClutch.HelixMount is not { } wanted)
            return FitCheck.NotStated(machine.Profile.DrivenClutch, "helixMount", "helix mount of the clutch");
        if (helix.Mount is not { } has)
            return FitCheck.NotChecked("mount");
        return FitCheck.Word(
            string.Equals(has, wanted, StringComparison.OrdinalIgnoreCase), $"its mount is \"{has}\"; the clutch takes \"{wanted}\"");
    }

    private static FitCheck CamRadius(Helix helix, MachineModel machine)
    {
        if (helix.CamRadius is not { } has)
            return FitCheck.NotChecked("cam radius");
        double wanted = machine.Drivetrain.CamRadius;
        return FitCheck.Same(has.Meters, wanted, QuantityLength.Info, LengthM,
            $"cam radius {Words.Length(has.Meters)} is not the {Words.Length(wanted)} that the clutch takes");
    }
}
