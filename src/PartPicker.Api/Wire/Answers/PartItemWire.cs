namespace PartPicker.Api.Wire;

/// <summary>A part with every value that the catalog knows.</summary>
internal record PartItemWire
{
    /// <summary>Unique in the catalog.</summary>
    public required string Id { get; init; }

    /// <summary>driveSpring, flyweight, drivenSpring, helix, belt, shim or kit.</summary>
    [PartKind]
    public required string Kind { get; init; }

    /// <summary>What a person calls it; may be empty.</summary>
    public required string Name { get; init; }

    /// <summary>For a replaced number: the part that stands for it today; null otherwise.</summary>
    public required NamedIdWire? Current { get; init; }

    /// <summary>Its values by name; what is not known is not listed.</summary>
    public required IReadOnlyDictionary<string, FieldValueWire> Fields { get; init; }

    /// <summary>Values that are not stated but follow from those that are, by the name of the field.</summary>
    public required IReadOnlyDictionary<string, QuantityWire> Computed { get; init; }

    /// <summary>What the outlet that was named asks and has; null without one, and where it does not sell the part.</summary>
    public required OfferWire? Offer { get; init; }
}
