using PartPicker.Quantities;

namespace PartPicker.Api.Wire;

/// <summary>One page of parts.</summary>
internal sealed record PartListWire
{
    /// <summary>The catalog that was read.</summary>
    public required string CatalogRevision { get; init; }

    /// <summary>The system that quantities are written in: metric or inch.</summary>
    [WordsOf(typeof(UnitSystem))]
    public required string Units { get; init; }

    /// <summary>The parts of this page.</summary>
    public required IReadOnlyList<PartItemWire> Items { get; init; }

    /// <summary>Parts that match, on all pages.</summary>
    public required int Total { get; init; }

    /// <summary>To be sent as cursor for the next page; null on the last one.</summary>
    public required string? NextCursor { get; init; }

    /// <summary>How all that match divide by the words of a field.</summary>
    public required IReadOnlyList<FacetWire> Facets { get; init; }
}

/// <summary>How parts divide by the words of one field.</summary>
internal sealed record FacetWire
{
    /// <summary>The field.</summary>
    public required string Field { get; init; }

    /// <summary>Its words, most frequent first.</summary>
    public required IReadOnlyList<FacetCountWire> Counts { get; init; }
}

/// <summary>A word and how many parts have it.</summary>
internal sealed record FacetCountWire
{
    /// <summary>The word.</summary>
    public required string Word { get; init; }

    /// <summary>How many parts have it.</summary>
    public required int Count { get; init; }
}
