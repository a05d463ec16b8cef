namespace PartPicker.Api.Wire;

/// <summary>A word and how many parts have it.</summary>
internal sealed record FacetCountWire
{
    /// <summary>The word.</summary>
    public required string Word { get; init; }

    /// <summary>How many parts have it.</summary>
    public required int Count { get; init; }
}
