namespace PartPicker.Api.Wire;

/// <summary>An id and what a person calls it.</summary>
internal sealed record NamedIdWire
{
    /// <summary>Unique in the catalog.</summary>
    public required string Id { get; init; }

    /// <summary>What a person calls it; may be empty.</summary>
    public required string Name { get; init; }
}
