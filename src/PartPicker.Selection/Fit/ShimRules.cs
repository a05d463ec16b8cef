using PartPicker.Parts;
using static PartPicker.Selection.FitTolerance;
using QuantityLength = UnitsNet.Length;

namespace PartPicker.Selection;

/// <summary>What a shim under the drive spring must keep.</summary>
internal static class ShimRules
{
    public static readonly IReadOnlyList<FitRule<Shim>> All =
    [
        new("shim-outside-diameter", "The shim must go into the cup.", false, OutsideDiameter),
        new("shim-inside-diameter", "The shim must go over the post.", false, InsideDiameter),
    ];

    private static FitCheck OutsideDiameter(Shim shim, MachineModel machine)
    {
        if (machine.Profile.DriveClutch.CupBore is not { } bore)
            return FitCheck.NotStated(machine.Profile.DriveClutch, "cupBore", "cup bore of the clutch");
        if (shim.OutsideDiameter is not { } outside)
            return FitCheck.NotChecked("outside diameter");
        return FitCheck.AtMost(outside.Meters, bore.Meters, QuantityLength.Info, LengthM,
            $"outside diameter {Words.Length(outside.Meters)} exceeds the cup bore {Words.Length(bore.Meters)}");
    }

    private static FitCheck InsideDiameter(Shim shim, MachineModel machine)
    {
        if (machine.Profile.DriveClutch.PostDiameter is not { } post)
            return FitCheck.NotStated(machine.Profile.DriveClutch, "postDiameter", "post diameter of the clutch");
        if (shim.InsideDiameter is not { } inside)
            return FitCheck.NotChecked("inside diameter");
        return FitCheck.AtLeast(inside.Meters, post.Meters, QuantityLength.Info, LengthM,
            $"inside diameter {Words.Length(inside.Meters)} does not clear the post {Words.Length(post.Meters)}");
    }
}
