using System.ComponentModel.DataAnnotations;

namespace PartPicker.Api.Wire;

/// <summary>
/// The rpm that are wanted; exactly one of shiftRpm, shiftCurve, speedCurve, peakPower and shiftChangeRpm. Without a
/// measured run, or with a profile of class defaults, only engagementChangeRpm and shiftChangeRpm can be answered.
/// </summary>
internal sealed record TargetsWire : IRequestWire
{
    /// <summary>Engine speed at which the belt shall take hold; left out where another device starts the machine.</summary>
    [Range(RequestLimits.MinRpm, RequestLimits.MaxRpm)]
    public double? EngagementRpm { get; init; }

    /// <summary>One engine speed to be held through the whole shift at full throttle.</summary>
    [Range(RequestLimits.MinRpm, RequestLimits.MaxRpm)]
    public double? ShiftRpm { get; init; }

    /// <summary>Engine speed over ratio: straight lines between the points, held at the ends.</summary>
    [MinLength(1)]
    [MaxLength(RequestLimits.MaxCurvePoints)]
    public IReadOnlyList<RatioRpmWire>? ShiftCurve { get; init; }

    /// <summary>Engine speed over vehicle speed: straight lines between the points, held at the ends.</summary>
    [MinLength(1)]
    [MaxLength(RequestLimits.MaxCurvePoints)]
    public IReadOnlyList<SpeedRpmWire>? SpeedCurve { get; init; }

    /// <summary>True: hold the engine speed of the greatest power in this air.</summary>
    [OnlyTrue]
    public bool? PeakPower { get; init; }

    /// <summary>In place of engagementRpm: by how much engagement shall change from that of what is fitted.</summary>
    [Range(-RequestLimits.MaxChangeRpm, RequestLimits.MaxChangeRpm)]
    public double? EngagementChangeRpm { get; init; }

    /// <summary>By how much the rpm held at full throttle shall change, at every ratio, from that of what is fitted.</summary>
    [Range(-RequestLimits.MaxChangeRpm, RequestLimits.MaxChangeRpm)]
    public double? ShiftChangeRpm { get; init; }
}
