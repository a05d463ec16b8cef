using System.ComponentModel.DataAnnotations;

namespace PartPicker.Api.Wire;

/// <summary>An engine speed at a vehicle speed.</summary>
internal sealed record SpeedRpmWire : IRequestWire
{
    /// <summary>Vehicle speed, from 0 km/h to 540 km/h.</summary>
    public required QuantityInputWire Speed { get; init; }

    /// <summary>Engine speed there.</summary>
    [Range(RequestLimits.MinRpm, RequestLimits.MaxRpm)]
    public required double Rpm { get; init; }
}
