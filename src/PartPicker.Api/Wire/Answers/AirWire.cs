using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>Where, how warm and how humid it is where the machine runs.</summary>
internal sealed record AirWire
{
    /// <summary>Altitude.</summary>
    public required QuantityWire Altitude { get; init; }

    /// <summary>Temperature; null stands for the standard one of that altitude.</summary>
    public required QuantityWire? Temperature { get; init; }

    /// <summary>Relative humidity; null stands for dry air.</summary>
    public required QuantityWire? RelativeHumidity { get; init; }

    /// <summary>Which published law scales engine torque with the air.</summary>
    [WordsOf(typeof(AirLaw))]
    public required string AirLaw { get; init; }
}
