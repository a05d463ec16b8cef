using UnitsNet;

namespace PartPicker.Mechanics;

/// <summary>The standard atmosphere and what thin or warm air does to torque.</summary>
public static class Atmosphere
{
    private const double SeaLevelPressurePa = 101_325;
    private const double SeaLevelTemperatureK = 288.15;
    private const double LapseKPerM = 0.0065;
    private const double GravityMPerS2 = 9.80665;
    private const double GasConstantDryAir = 287.05287;
    private const double TropopauseM = 11_000;

    /// <summary>Pressure at a geopotential altitude: p = 101 325 (1 − 0.0065 H / 288.15)^(g₀ / (R L)).</summary>
    /// <param name="altitude">H, geopotential altitude within the troposphere (up to 11 000 m).</param>
    /// <remarks>Source: [ISO 2533]; [USSA].</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The altitude lies above the troposphere.</exception>
    public static Pressure PressureAt(Length altitude)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(altitude.Meters, TropopauseM, nameof(altitude));
        return Pressure.FromPascals(SeaLevelPressurePa * Math.Pow(
            1 - LapseKPerM * altitude.Meters / SeaLevelTemperatureK,
            GravityMPerS2 / (GasConstantDryAir * LapseKPerM)));
    }

    /// <summary>Temperature of the standard day at a geopotential altitude: T = 288.15 − 0.0065 H.</summary>
    /// <remarks>Source: [ISO 2533].</remarks>
    public static Temperature StandardTemperature(Length altitude) =>
        Temperature.FromKelvins(SeaLevelTemperatureK - LapseKPerM * altitude.Meters);

    /// <summary>
    /// Pressure of saturated water vapour over water: ln e = −6096.9385/T + 21.2409642 − 0.02711193 T +
    /// 1.673952·10⁻⁵ T² + 2.433502 ln T, in Pa.
    /// </summary>
    /// <param name="temperature">T (K), from −100 to 100 °C.</param>
    /// <remarks>
    /// Relative humidity counts against water in frost too, as weather services state it. Source: [SON].
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside.</exception>
    public static Pressure SaturationPressure(Temperature temperature)
    {
        double t = temperature.Kelvins;
        if (!ValidRanges.SaturationTemperature.Holds(temperature.DegreesCelsius))
            throw new ArgumentOutOfRangeException(nameof(temperature), temperature, "The law holds from −100 to 100 °C.");
        return Pressure.FromPascals(Math.Exp(
            -6096.9385 / t + 21.2409642 - 2.711193e-2 * t + 1.673952e-5 * t * t + 2.433502 * Math.Log(t)));
    }

    /// <summary>Pressure of the dry part of moist air: p_d = p − h e(T).</summary>
    /// <param name="pressure">p, as a barometer shows it.</param>
    /// <param name="temperature">T, air temperature.</param>
    /// <param name="relativeHumidity">h, a share from 0 to 1.</param>
    /// <remarks>Only dry air burns fuel: the standards correct torque for it. Source: [SAE J1349]; [ISO 1585].</remarks>
    /// <exception cref="ArgumentOutOfRangeException">
    /// h lies outside, T outside the law of the vapour, or the vapour leaves no room for air.
    /// </exception>
    public static Pressure DryPressure(Pressure pressure, Temperature temperature, double relativeHumidity)
    {
        if (!(relativeHumidity is >= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(relativeHumidity), relativeHumidity, "A share from 0 to 1.");
        double dry = pressure.Pascals - relativeHumidity * SaturationPressure(temperature).Pascals;
        return dry > 0
            ? Pressure.FromPascals(dry)
            : throw new ArgumentOutOfRangeException(nameof(pressure), pressure, "All of it is water vapour.");
    }

    /// <summary>Pressure of the dry part of the air at an altitude: p(H) − h e(T).</summary>
    /// <param name="altitude">H, geopotential altitude within the troposphere (up to 11 000 m).</param>
    /// <param name="temperature">T, air temperature.</param>
    /// <param name="relativeHumidity">h, a share from 0 to 1; dry air where null: all of p(H).</param>
    /// <remarks>Source: [ISO 2533]; [SAE J1349]; [ISO 1585].</remarks>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The altitude lies above the troposphere, or the humidity cannot be.
    /// </exception>
    public static Pressure DryPressureAt(Length altitude, Temperature temperature, double? relativeHumidity)
    {
        Pressure pressure = PressureAt(altitude);
        return relativeHumidity is { } share ? DryPressure(pressure, temperature, share) : pressure;
    }

    /// <summary>The temperature of a day at another altitude, as much above the standard one there as here: T + T₀(H') − T₀(H).</summary>
    /// <param name="temperature">T, air temperature here.</param>
    /// <param name="here">H.</param>
    /// <param name="there">H'.</param>
    /// <remarks>Common practice, no source.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">An altitude lies above the troposphere.</exception>
    public static Temperature SameDayTemperature(Temperature temperature, Length here, Length there) => Temperature.FromKelvins(
        StandardTemperature(there).Kelvins + temperature.Kelvins - StandardTemperature(here).Kelvins);

    /// <summary>The factor that a standard multiplies measured torque by to reach its reference air.</summary>
    /// <param name="law">
    /// SAE J1349: cf = 1.180 (99 000/p) √(T/298) − 0.18. ISO 1585: cf = (99 000/p)^1.2 (T/298)^0.6.
    /// </param>
    /// <param name="dryPressure">p, pressure of the dry air.</param>
    /// <param name="temperature">T, air temperature in kelvin as it is.</param>
    /// <remarks>
    /// The standards allow this as a correction only near their reference (0.93 to 1.07); at altitude it is a
    /// model. Source: [SAE J1349] (June 1990); [ISO 1585].
    /// </remarks>
    public static double Correction(AirCorrection law, Pressure dryPressure, Temperature temperature)
    {
        double pressureRatio = 99_000 / dryPressure.Pascals;
        double temperatureRatio = temperature.Kelvins / 298;
        return law switch
        {
            AirCorrection.SaeJ1349 => 1.180 * pressureRatio * Math.Sqrt(temperatureRatio) - 0.18,
            AirCorrection.Iso1585 => Math.Pow(pressureRatio, 1.2) * Math.Pow(temperatureRatio, 0.6),
            _ => throw new ArgumentOutOfRangeException(nameof(law), law, "No such law."),
        };
    }

    /// <summary>Torque in this air over torque on the standard day at sea level: cf(sea level) / cf(here).</summary>
    /// <param name="law">Which standard's correction.</param>
    /// <param name="altitude">H, geopotential altitude within the troposphere (up to 11 000 m).</param>
    /// <param name="temperature">T, air temperature; the standard day's where null.</param>
    /// <param name="relativeHumidity">h, a share from 0 to 1; dry air where null, as the standard day is.</param>
    /// <remarks>Both corrections are taken against the same day, so their reference air drops out.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The altitude lies above the troposphere, or the humidity cannot be.
    /// </exception>
    public static double TorqueFactor(
        AirCorrection law, Length altitude, Temperature? temperature, double? relativeHumidity = null)
    {
        double reference = Correction(
            law, Pressure.FromPascals(SeaLevelPressurePa), Temperature.FromKelvins(SeaLevelTemperatureK));
        Temperature here = temperature ?? StandardTemperature(altitude);
        return reference / Correction(law, DryPressureAt(altitude, here, relativeHumidity), here);
    }

    /// <summary>
    /// Torque of an engine whose boost makes up for thin air up to an altitude H_b: 1 there and below, above it
    /// min(1, g(H)/g(H_b)) with g the factor of an engine without boost.
    /// </summary>
    /// <param name="law">Which standard's correction.</param>
    /// <param name="altitude">H.</param>
    /// <param name="temperature">T, air temperature; the standard day's where null.</param>
    /// <param name="boostedTo">H_b.</param>
    /// <param name="relativeHumidity">h, a share from 0 to 1; dry air where null.</param>
    /// <remarks>
    /// At H_b the day is as much warmer or colder than the standard one as at H, and as humid, so that the factor has no
    /// jump there. Common practice, no source; a boosted engine's own map stands above it.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">
    /// An altitude lies above the troposphere, or the humidity cannot be.
    /// </exception>
    public static double BoostedTorqueFactor(
        AirCorrection law, Length altitude, Temperature? temperature, Length boostedTo, double? relativeHumidity = null)
    {
        if (altitude <= boostedTo)
            return 1;
        Temperature? there = temperature is { } here ? SameDayTemperature(here, altitude, boostedTo) : null;
        return Math.Min(
            1,
            TorqueFactor(law, altitude, temperature, relativeHumidity)
                / TorqueFactor(law, boostedTo, there, relativeHumidity));
    }
}

/// <summary>Published corrections of torque for air.</summary>
public enum AirCorrection
{
    SaeJ1349,
    Iso1585,
}
