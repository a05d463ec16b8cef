using PartPicker.Parts;
using QuantityLength = UnitsNet.Length;

namespace PartPicker.Selection;

/// <summary>What a belt must keep to run on a machine in place of its own.</summary>
internal static class BeltRules
{
    public static readonly IReadOnlyList<FitRule<Belt>> All =
    [
        new("belt-pitch-length", "The belt must have the pitch length of the machine's own.", false, PitchLength),
        new("belt-top-width", "The belt must have the top width of the machine's own: a narrower one sinks into the sheaves.", false, TopWidth),
    ];

    private static FitCheck PitchLength(Belt belt, MachineModel machine) => FitCheck.Same(
        belt.PitchLength.Meters, machine.Profile.Belt.PitchLength.Meters, QuantityLength.Info, PitchLengthM,
        $"pitch length {Words.Length(belt.PitchLength.Meters)} is not the {Words.Length(machine.Profile.Belt.PitchLength.Meters)} "
        + "of the machine's belt");

    private static FitCheck TopWidth(Belt belt, MachineModel machine)
    {
        if (machine.Profile.Belt.TopWidth is not { } own)
            return FitCheck.NotStated(machine.Profile.Belt, "topWidth", "top width of the machine's belt");
        if (belt.TopWidth is not { } has)
            return FitCheck.NotChecked("top width");
        return FitCheck.Same(has.Meters, own.Meters, QuantityLength.Info, TopWidthM,
            $"top width {Words.Length(has.Meters)} is not the {Words.Length(own.Meters)} of the machine's belt");
    }

    // Belts of one length differ from each other by this much when new (common practice, no source).
    public const double PitchLengthM = 1.000001e-3;
    public const double TopWidthM = 0.300001e-3;
}
