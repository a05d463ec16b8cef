using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>A machine at K positions of its belt: the tables that every air and every anchor share.</summary>
/// <param name="model">With the torque of sea level and no anchor.</param>
internal sealed class MachineAtPoints(ShiftModel model)
{
    private readonly Lazy<BeltBounds[]> belts = new(() => [.. model.Positions.Select((_, j) => new BeltBounds(model, j))]);

    /// <summary>With the torque of sea level and no anchor.</summary>
    public ShiftModel Model => model;

    /// <summary>Bounds on the thrust of the belt at each position.</summary>
    public BeltBounds[] Belts => belts.Value;
}
