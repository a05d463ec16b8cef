namespace PartPicker.Api.Wire;

/// <summary>A flyweight body and what is in its stations; all arms carry the same.</summary>
internal sealed record FlyweightChoiceWire
{
    /// <summary>Unique in the catalog.</summary>
    public required string Id { get; init; }

    /// <summary>What a person calls it; may be empty.</summary>
    public required string Name { get; init; }

    /// <summary>Mass by station (heel, middle, tip); a station that is not listed is empty.</summary>
    public required IReadOnlyDictionary<string, QuantityWire> StationMasses { get; init; }
}
