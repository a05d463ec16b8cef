namespace PartPicker.Api.Wire;

/// <summary>How parts divide by the words of one field.</summary>
internal sealed record FacetWire
{
    /// <summary>The name of the field, or kind.</summary>
    public required string Field { get; init; }

    /// <summary>The words, the most frequent first; the 30 most frequent where there are more.</summary>
    public required IReadOnlyList<FacetCountWire> Counts { get; init; }
}
