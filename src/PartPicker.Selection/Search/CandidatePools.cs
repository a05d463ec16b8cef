using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What fits: the drive side's parts and the driven side's choices, each in the order that breaks ties.</summary>
/// <param name="DriveSprings">By id, then by shim and count, none first.</param>
/// <param name="Flyweights">By id, then by ramp step, then by masses from pin and heel to tip.</param>
/// <param name="Driven">By spring, hole and helix.</param>
internal sealed record CandidatePools(
    IReadOnlyList<SpringChoice> DriveSprings,
    IReadOnlyList<FlyweightChoice> Flyweights,
    DrivenPool Driven)
{
    /// <summary>Sets that these pools make.</summary>
    public long Combinations => DriveSprings.Count * ((long)Flyweights.Count * Driven.Count);

    public bool Empty => DriveSprings.Count == 0 || Flyweights.Count == 0 || Driven.Count == 0;

    /// <summary>The slots whose refusals leave no set: those of the empty pools, and every slot where none is empty.</summary>
    public bool InTheWay(Slot slot) => !Empty || slot switch
    {
        Slot.DriveSpring => DriveSprings.Count == 0,
        Slot.Flyweight => Flyweights.Count == 0,
        _ => Driven.Count == 0,
    };
}
