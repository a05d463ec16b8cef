namespace PartPicker.Api.Wire;

/// <summary>What one outlet asks for a part, and how many it has.</summary>
internal sealed record OfferWire
{
    /// <summary>The outlet's id.</summary>
    public required string Outlet { get; init; }

    /// <summary>Price of one pack; null when not known.</summary>
    public required PriceWire? Price { get; init; }

    /// <summary>Packs in stock; null when not known.</summary>
    public required int? Stock { get; init; }
}
