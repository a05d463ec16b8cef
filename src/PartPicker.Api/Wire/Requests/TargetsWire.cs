using System.ComponentModel.DataAnnotations;

namespace PartPicker.Api.Wire;

/// <summary>The rpm that are wanted; exactly one of shiftRpm and shiftCurve.</summary>
internal sealed record TargetsWire : IRequestWire
{
    /// <summary>Engine speed at which the belt shall take hold.</summary>
    [Range(RequestLimits.MinRpm, RequestLimits.MaxRpm)]
    public required double EngagementRpm { get; init; }

    /// <summary>One engine speed to be held through the whole shift at full throttle.</summary>
    [Range(RequestLimits.MinRpm, RequestLimits.MaxRpm)]
    public double? ShiftRpm { get; init; }

    /// <summary>Engine speed over ratio: straight lines between the points, held at the ends.</summary>
    [MinLength(1)]
    [MaxLength(RequestLimits.MaxCurvePoints)]
    public IReadOnlyList<RatioRpmWire>? ShiftCurve { get; init; }
}
