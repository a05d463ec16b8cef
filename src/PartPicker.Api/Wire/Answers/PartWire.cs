using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>A part with every value that the catalog knows.</summary>
internal record PartItemWire
{
    /// <summary>Unique in the catalog.</summary>
    public required string Id { get; init; }

    /// <summary>The kind of part.</summary>
    [WordsOf(typeof(ItemKind))]
    public required string Kind { get; init; }

    /// <summary>What a person calls it; may be empty.</summary>
    public required string Name { get; init; }

    /// <summary>The part that replaced it; null when it is the current one.</summary>
    public required NamedIdWire? Current { get; init; }

    /// <summary>Its values by name; what is not known is not listed.</summary>
    public required IReadOnlyDictionary<string, FieldValueWire> Fields { get; init; }

    /// <summary>Values that are not stated but follow from those that are.</summary>
    public required IReadOnlyDictionary<string, QuantityWire> Computed { get; init; }

    /// <summary>Price and stock at the outlet that was named; null without one, and where it does not sell the part.</summary>
    public required OfferWire? Offer { get; init; }
}

/// <summary>A part by itself.</summary>
internal sealed record PartWire : PartItemWire
{
    /// <summary>The catalog that was read.</summary>
    public required string CatalogRevision { get; init; }
}
