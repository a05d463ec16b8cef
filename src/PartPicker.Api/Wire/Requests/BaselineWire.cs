using System.ComponentModel.DataAnnotations;

namespace PartPicker.Api.Wire;

/// <summary>
/// A measured run: with these parts, in this air, it engaged and held these rpm. Exactly one of shiftRpm and
/// shiftCurve.
/// </summary>
internal sealed record BaselineWire : IRequestWire
{
    /// <summary>What was fitted then; members left out come from what is fitted now.</summary>
    public SetWire? Parts { get; init; }

    /// <summary>Engine speed at which the belt took hold; left out where another device starts the machine.</summary>
    [Range(RequestLimits.MinRpm, RequestLimits.MaxRpm)]
    public double? EngagementRpm { get; init; }

    /// <summary>
    /// Engine speed held at full throttle through the whole shift, where no ratio was noted.
    /// </summary>
    [Range(RequestLimits.MinRpm, RequestLimits.MaxRpm)]
    public double? ShiftRpm { get; init; }

    /// <summary>Engine speed held at full throttle, by ratio.</summary>
    [MinLength(1)]
    [MaxLength(RequestLimits.MaxCurvePoints)]
    public IReadOnlyList<RatioRpmWire>? ShiftCurve { get; init; }

    /// <summary>
    /// True: solve the friction of the belt as well, not only the factor on belt thrust. It needs shift points whose ratios
    /// lie a factor of 1.5 apart, and a belt that slips at none of them.
    /// </summary>
    public bool? SolveFriction { get; init; }

    /// <summary>Altitude of the run; sea level when left out. From -500 m to 6000 m.</summary>
    public QuantityInputWire? Altitude { get; init; }

    /// <summary>
    /// Temperature of the air; the standard one of that altitude when left out. From -60 °C to 60 °C.
    /// </summary>
    public QuantityInputWire? Temperature { get; init; }

    /// <summary>
    /// Relative humidity of the air at that temperature; dry air when left out. From 0 % to 100 %.
    /// </summary>
    public QuantityInputWire? RelativeHumidity { get; init; }
}
