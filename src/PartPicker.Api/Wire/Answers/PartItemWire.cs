using System.Text.Json.Serialization;

namespace PartPicker.Api.Wire;

/// <summary>A part in a list.</summary>
internal sealed record PartItemWire : PartFactsWire
{
    /// <summary>Price of one pack at the outlet that was named; null when not known, or none was named.</summary>
    [JsonPropertyOrder(1)]
    public required PriceWire? Price { get; init; }

    /// <summary>Packs in stock there; null when not known, or no outlet was named.</summary>
    [JsonPropertyOrder(1)]
    public required int? Stock { get; init; }
}
