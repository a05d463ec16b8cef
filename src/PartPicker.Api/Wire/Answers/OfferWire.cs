namespace PartPicker.Api.Wire;

/// <summary>What an outlet asks for a part, and how many it has.</summary>
internal sealed record OfferWire
{
    /// <summary>Price of one pack; null when not known.</summary>
    public required PriceWire? Price { get; init; }

    /// <summary>Packs in stock; null when not known.</summary>
    public required int? Stock { get; init; }
}
