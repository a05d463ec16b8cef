using System.ComponentModel.DataAnnotations;

namespace PartPicker.Api.Wire;

/// <summary>One axis of a grid: values, or from, to and step.</summary>
internal sealed record GridAxisWire : IRequestWire
{
    /// <summary>JSON pointer (RFC 6901) to the member of request that it sets, as in "/altitude" or "/targets/shiftRpm".</summary>
    [StringLength(RequestLimits.MaxNameLength, MinimumLength = 1)]
    [PointerForm]
    public required string Member { get; init; }

    /// <summary>The values one by one, of any type that the member takes.</summary>
    [MinLength(1)]
    [MaxLength(RequestLimits.MaxGridPoints)]
    public IReadOnlyList<AnyValueWire>? Values { get; init; }

    /// <summary>The first number.</summary>
    [Range(-RequestLimits.MaxAxisNumber, RequestLimits.MaxAxisNumber)]
    public double? From { get; init; }

    /// <summary>No number goes beyond it; it is one itself where the steps meet it.</summary>
    [Range(-RequestLimits.MaxAxisNumber, RequestLimits.MaxAxisNumber)]
    public double? To { get; init; }

    /// <summary>From one number to the next.</summary>
    [Range(RequestLimits.MinAxisStep, RequestLimits.MaxAxisNumber)]
    public double? Step { get; init; }

    /// <summary>The unit of the numbers, for a member that takes a quantity; bare numbers when left out.</summary>
    [StringLength(RequestLimits.MaxNameLength, MinimumLength = 1)]
    public string? Unit { get; init; }
}
