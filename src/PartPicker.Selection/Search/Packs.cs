using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>How many packs of a part a machine needs.</summary>
internal static class Packs
{
    /// <summary>⌈pieces needed / pieces in a pack⌉, 1 or more.</summary>
    /// <remarks>
    /// A flyweight needs one piece for each arm; where nothing is said of its pack, a pack is a whole set. Everything
    /// else needs one piece, shims one for each.
    /// </remarks>
    public static int Needed(Part part, MachineProfile machine, int shims = 1)
    {
        int pieces = part switch
        {
            Flyweight => machine.DriveClutch.ArmCount,
            Shim => shims,
            _ => 1,
        };
        return (pieces + PerPack(part, machine) - 1) / PerPack(part, machine);
    }

    /// <summary>Packs of a part in a kit.</summary>
    public static int In(Kit kit, string partId) => kit.Contents.Where(line => line.PartId == partId).Sum(line => line.Packs);

    private static int PerPack(Part part, MachineProfile machine) => part switch
    {
        { PackQuantity: { } stated } => stated,
        Flyweight { SoldAs: null or SoldAs.Set } flyweight => flyweight.SetCount ?? machine.DriveClutch.ArmCount,
        { SoldAs: SoldAs.Pair } => 2,
        _ => 1,
    };
}
