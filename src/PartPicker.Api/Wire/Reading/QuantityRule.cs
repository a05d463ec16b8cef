using UnitsNet;

namespace PartPicker.Api.Wire;

/// <summary>What a quantity of a request must be.</summary>
/// <param name="Dimension">Its kind.</param>
/// <param name="Min">Least value, in SI.</param>
/// <param name="Max">Greatest value, in SI.</param>
/// <param name="Expected">The same for a person, with an example.</param>
/// <param name="Units">The units that it is usually stated in.</param>
internal sealed record QuantityRule(
    QuantityInfo Dimension, double Min, double Max, string Expected, params IReadOnlyList<string> Units)
{
    public static readonly QuantityRule Altitude = new(
        Length.Info, RequestLimits.MinAltitudeM, RequestLimits.MaxAltitudeM,
        "a length with its unit from -500 m to 6000 m, as in \"300 m\" or \"1000 ft\"", "m", "ft");

    public static readonly QuantityRule Temperature = new(
        UnitsNet.Temperature.Info, RequestLimits.MinTemperatureK, RequestLimits.MaxTemperatureK,
        "a temperature with its unit from -60 °C to 60 °C, as in \"10 °C\" or \"50 °F\"", "°C", "°F");

    public static readonly QuantityRule RelativeHumidity = new(
        Ratio.Info, RequestLimits.MinRelativeHumidity, RequestLimits.MaxRelativeHumidity,
        "a relative humidity from 0 % to 100 %, as in \"60 %\"", "%");

    public static readonly QuantityRule StationMass = new(
        Mass.Info, 0, RequestLimits.MaxStationMassKg, "a mass with its unit from 0 g to 100 g, as in \"4 g\"", "g", "gr");

    public static readonly QuantityRule VehicleSpeed = new(
        Speed.Info, RequestLimits.MinSpeedMPerS, RequestLimits.MaxSpeedMPerS,
        "a speed with its unit from 0 km/h to 540 km/h, as in \"40 km/h\" or \"25 mph\"", "km/h", "mph");

    // The end of a range stated in one unit must hold in every other.
    private const double Slack = 1e-9;

    /// <summary>What to write in place of a number that came without its unit.</summary>
    public string WithUnit(string number) =>
        $"the unit, which is never guessed: {string.Join(" or ", Units.Select(unit => $"\"{number} {unit}\""))}; {Expected}";

    public bool Holds(double si) => si >= Min - Slack && si <= Max + Slack;
}
