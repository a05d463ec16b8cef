using System.Text.Json.Serialization;

namespace PartPicker.Api.Wire;

/// <summary>A part with every value that the catalog knows.</summary>
internal sealed record PartWire : PartFactsWire
{
    /// <summary>The catalog that was read.</summary>
    [JsonPropertyOrder(-1)]
    public required string CatalogRevision { get; init; }

    /// <summary>What the outlets that were named ask for it.</summary>
    [JsonPropertyOrder(1)]
    public required IReadOnlyList<OfferWire> Offers { get; init; }
}
