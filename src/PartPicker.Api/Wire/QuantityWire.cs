namespace PartPicker.Api.Wire;

/// <summary>A number and its unit; the unit of a bare number is empty.</summary>
internal sealed record QuantityWire
{
    /// <summary>The number.</summary>
    public required double Value { get; init; }

    /// <summary>The unit that the number is in; empty for a bare number.</summary>
    public required string Unit { get; init; }
}
