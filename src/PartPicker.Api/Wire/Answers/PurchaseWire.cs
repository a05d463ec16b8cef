using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>One line of a shopping list.</summary>
internal sealed record PurchaseWire
{
    /// <summary>A part or a kit.</summary>
    public required string Id { get; init; }

    /// <summary>What a person calls it; may be empty.</summary>
    public required string Name { get; init; }

    /// <summary>Packs of it.</summary>
    public required int Packs { get; init; }

    /// <summary>Price of all these packs; null when not known.</summary>
    public required PriceWire? Price { get; init; }

    /// <summary>Packs in stock; null when not known.</summary>
    public required int? Stock { get; init; }

    /// <summary>The changed slots that it serves.</summary>
    [WordsOf(typeof(Slot))]
    public required IReadOnlyList<string> Covers { get; init; }

    /// <summary>
    /// When it is out of stock: what the stock has in its place; null otherwise, and where the stock has nothing that keeps
    /// the rules of the request.
    /// </summary>
    public required AlternateWire? Alternate { get; init; }
}
