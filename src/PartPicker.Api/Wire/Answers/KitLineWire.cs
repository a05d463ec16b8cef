namespace PartPicker.Api.Wire;

/// <summary>A part of a kit.</summary>
internal sealed record KitLineWire
{
    /// <summary>The part's id.</summary>
    public required string Part { get; init; }

    /// <summary>Packs of it.</summary>
    public required int Packs { get; init; }
}
