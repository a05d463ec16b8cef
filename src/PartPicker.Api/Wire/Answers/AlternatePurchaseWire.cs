namespace PartPicker.Api.Wire;

/// <summary>What to buy in place of a line that is out of stock.</summary>
internal sealed record AlternatePurchaseWire
{
    /// <summary>A part or a kit.</summary>
    public required string Id { get; init; }

    /// <summary>What a person calls it; may be empty.</summary>
    public required string Name { get; init; }

    /// <summary>Packs of it.</summary>
    public required int Packs { get; init; }

    /// <summary>Price of all these packs; null when not known.</summary>
    public required PriceWire? Price { get; init; }

    /// <summary>Packs in stock.</summary>
    public required int Stock { get; init; }
}
