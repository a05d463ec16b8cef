using UnitsNet;

namespace PartPicker.Api.Wire;

/// <summary>What a quantity of a request must be.</summary>
/// <param name="Dimension">Its kind.</param>
/// <param name="Min">Least value, in SI.</param>
/// <param name="Max">Greatest value, in SI.</param>
/// <param name="Expected">The same for a person, with an example.</param>
internal sealed record QuantityRule(QuantityInfo Dimension, double Min, double Max, string Expected)
{
    public static readonly QuantityRule Altitude = new(
        Length.Info, RequestLimits.MinAltitudeM, RequestLimits.MaxAltitudeM,
        "a length with its unit from -500 m to 6000 m, as in \"300 m\" or \"1000 ft\"");

    public static readonly QuantityRule Temperature = new(
        UnitsNet.Temperature.Info, RequestLimits.MinTemperatureK, RequestLimits.MaxTemperatureK,
        "a temperature with its unit from -60 °C to 60 °C, as in \"10 °C\" or \"50 °F\"");

    public static readonly QuantityRule StationMass = new(
        Mass.Info, 0, RequestLimits.MaxStationMassKg, "a mass with its unit from 0 g to 100 g, as in \"4 g\"");

    // The end of a range stated in one unit must hold in every other.
    private const double Slack = 1e-9;

    public bool Holds(double si) => si >= Min - Slack && si <= Max + Slack;
}
