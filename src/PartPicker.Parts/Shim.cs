using UnitsNet;

namespace PartPicker.Parts;

/// <summary>A ring under the drive spring: it shortens the installed length by its thickness.</summary>
public sealed record Shim : Part
{
    public override ItemKind Kind => ItemKind.Shim;

    public Length Thickness { get; init; }
    public Length? OutsideDiameter { get; init; }
    public Length? InsideDiameter { get; init; }
}
