namespace PartPicker.Api.Wire;

/// <summary>An amount of money.</summary>
internal sealed record PriceWire
{
    /// <summary>In minor units of the currency, as in cents.</summary>
    public required long AmountMinor { get; init; }

    /// <summary>ISO 4217 code.</summary>
    public required string Currency { get; init; }
}
