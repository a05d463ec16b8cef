using System.ComponentModel.DataAnnotations;

namespace PartPicker.Api.Wire;

/// <summary>
/// A quantity as sent: text with its unit, as in "64.5 g", or an object of value and unit. A bare number is
/// refused, because a shop may mean either system.
/// </summary>
internal sealed record QuantityInputWire
{
    /// <summary>The number.</summary>
    public required double Value { get; init; }

    /// <summary>The unit, as the trade writes it: mm, in, g, oz, °C, °F and so on.</summary>
    [StringLength(RequestLimits.MaxNameLength, MinimumLength = 1)]
    public required string Unit { get; init; }
}
