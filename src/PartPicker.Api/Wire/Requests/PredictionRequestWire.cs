using System.ComponentModel.DataAnnotations;
using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>What does this set do on this machine?</summary>
internal sealed record PredictionRequestWire : IRequestWire
{
    /// <summary>Id of the machine, from GET /v1/machines.</summary>
    [StringLength(RequestLimits.MaxNameLength, MinimumLength = 1)]
    public required string Machine { get; init; }

    /// <summary>
    /// The set to predict; members left out come from the set that the machine was delivered with.
    /// </summary>
    public SetWire? Parts { get; init; }

    /// <summary>
    /// A measured run that ties the model to this very machine; the machine's own when left out.
    /// </summary>
    public BaselineWire? Baseline { get; init; }

    /// <summary>False leaves every measured run aside, and takes no baseline beside it; true when left out.</summary>
    public bool? Anchor { get; init; }

    /// <summary>
    /// Altitude of the place where it runs; sea level when left out. From -500 m to 6000 m.
    /// </summary>
    public QuantityInputWire? Altitude { get; init; }

    /// <summary>
    /// Temperature of the air; the standard one of that altitude when left out. From -60 °C to 60 °C.
    /// </summary>
    public QuantityInputWire? Temperature { get; init; }

    /// <summary>
    /// Relative humidity of the air at that temperature; dry air when left out. From 0 % to 100 %.
    /// </summary>
    public QuantityInputWire? RelativeHumidity { get; init; }

    /// <summary>Which published law scales engine torque with the air; saeJ1349 when left out.</summary>
    [WordsOf(typeof(AirLaw))]
    public string? AirLaw { get; init; }

    /// <summary>At how many ratios the curve is computed; 9 when left out.</summary>
    [Range(RequestLimits.MinRatioPoints, RequestLimits.MaxRatioPoints)]
    public int? RatioPoints { get; init; }

    /// <summary>
    /// Numbers of the answer to take apart down to their inputs, by their names in the answer: engagementRpm,
    /// engagementBandRpm, lockUpRpm, shiftOutRpm, peakPower, torqueFactor, anchoring.flyweightFactor and
    /// anchoring.thrustFactor; of the n-th point of the curve, counted from 1 in low gear, upshiftRpm/n, backshiftRpm/n,
    /// hysteresisRpm/n, upshiftBandRpm/n, ratio/n, helixHold/n and what else says where the belt runs; power/n, slipMargin/n,
    /// drivenClamp/n and so on for the balance of the upshift there, backshift.power/n and so on for that of the backshift;
    /// of the k-th sensitivity sensitivities/k.engagementRpm and sensitivities/k.upshiftRpm/n. The page
    /// /docs/model/shift-curve lists all of them, and what is not taken apart.
    /// </summary>
    [MaxLength(RequestLimits.MaxExplained)]
    [ExplainedForm]
    public IReadOnlyList<string>? Explain { get; init; }
}
