namespace PartPicker.Api.Wire;

/// <summary>
/// The same set bought from stock another way; or, where the line serves one slot, the set that comes closest with another
/// choice in this slot and everything else left as picked, but that another driven spring may go into another hole.
/// </summary>
internal sealed record AlternateWire
{
    /// <summary>The whole set with it in place.</summary>
    public required PartsWire Parts { get; init; }

    /// <summary>The miss of this set.</summary>
    public required double Miss { get; init; }

    /// <summary>True when no single error of this set exceeds its tolerance.</summary>
    public required bool WithinTolerance { get; init; }

    /// <summary>What to buy for the slots of the line, all of it in stock.</summary>
    public required IReadOnlyList<AlternatePurchaseWire> ToBuy { get; init; }
}
