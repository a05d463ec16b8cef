using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>A part with every value that the catalog knows.</summary>
internal sealed record PartWire
{
    /// <summary>The catalog that was read.</summary>
    public required string CatalogRevision { get; init; }

    /// <summary>Unique in the catalog.</summary>
    public required string Id { get; init; }

    /// <summary>driveSpring, flyweight, drivenSpring or helix.</summary>
    [WordsOf(typeof(ItemKind))]
    public required string Kind { get; init; }

    /// <summary>What a person calls it; may be empty.</summary>
    public required string Name { get; init; }

    /// <summary>Its values by name; what is not known is not listed.</summary>
    public required IReadOnlyDictionary<string, FieldValueWire> Fields { get; init; }
}
