using System.Text.Json.Serialization;

namespace PartPicker.Api.Wire;

/// <summary>A part by itself.</summary>
internal sealed record PartWire : PartItemWire
{
    /// <summary>The catalog that was read.</summary>
    [JsonPropertyOrder(-1)]
    public required string CatalogRevision { get; init; }
}
