using PartPicker.Quantities;

namespace PartPicker.Api.Wire;

/// <summary>One page of a list of parts.</summary>
internal sealed record PartListWire
{
    /// <summary>The catalog that was listed.</summary>
    public required string CatalogRevision { get; init; }

    /// <summary>The system that quantities are written in: metric or inch.</summary>
    [WordsOf(typeof(UnitSystem))]
    public required string Units { get; init; }

    /// <summary>The parts of this page.</summary>
    public required IReadOnlyList<PartItemWire> Items { get; init; }

    /// <summary>How many parts there are on all pages.</summary>
    public required int Total { get; init; }

    /// <summary>Asks for the next page, as cursor; null on the last one.</summary>
    public required string? NextCursor { get; init; }

    /// <summary>How the parts of all pages divide by the words of a field; the words can be asked for.</summary>
    public required IReadOnlyList<FacetWire> Facets { get; init; }
}
