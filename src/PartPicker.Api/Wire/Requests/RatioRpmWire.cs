using System.ComponentModel.DataAnnotations;

namespace PartPicker.Api.Wire;

/// <summary>An engine speed at a ratio.</summary>
internal sealed record RatioRpmWire : IRequestWire
{
    /// <summary>
    /// Driven pitch radius over drive pitch radius: about 3 in low gear, below 1 in overdrive.
    /// </summary>
    [Range(RequestLimits.MinRatio, RequestLimits.MaxRatio)]
    public required double Ratio { get; init; }

    /// <summary>Engine speed there.</summary>
    [Range(RequestLimits.MinRpm, RequestLimits.MaxRpm)]
    public required double Rpm { get; init; }
}
