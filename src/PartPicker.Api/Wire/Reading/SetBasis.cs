using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>Where the members come from that a set leaves out.</summary>
/// <param name="Set">The set that is changed; null when there is none, or when it could not be read.</param>
/// <param name="MustBeWhole">True when there is nothing to complete a set from.</param>
internal readonly record struct SetBasis(PartSet? Set, bool MustBeWhole)
{
    /// <summary>What the machine was delivered with.</summary>
    /// <param name="machine">Null when the machine is not known: that is fault enough.</param>
    public static SetBasis Of(MachineProfile? machine) =>
        new(machine?.Machine.Fitted, MustBeWhole: machine is { Machine.Fitted: null });
}
