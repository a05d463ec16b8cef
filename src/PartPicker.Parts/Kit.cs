namespace PartPicker.Parts;

/// <summary>Several parts at one price.</summary>
public sealed record Kit : Part
{
    public override ItemKind Kind => ItemKind.Kit;

    /// <summary>What is in it, in packs as each part is sold by itself.</summary>
    public IReadOnlyList<KitLine> Contents { get; init; } = [];
}

/// <summary>A part of a kit and how many packs of it.</summary>
public sealed record KitLine(string PartId, int Packs);
