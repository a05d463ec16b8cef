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
    /// <remarks>Both corrections are taken against the same day, so their reference air drops out.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The altitude lies above the troposphere.</exception>
    public static double TorqueFactor(AirCorrection law, Length altitude, Temperature? temperature)
    {
        double reference = Correction(
            law, Pressure.FromPascals(SeaLevelPressurePa), Temperature.FromKelvins(SeaLevelTemperatureK));
        return reference / Correction(law, PressureAt(altitude), temperature ?? StandardTemperature(altitude));
    }

    /// <summary>
    /// Torque of an engine whose boost makes up for thin air up to an altitude H_b: 1 there and below, above it
    /// min(1, g(H)/g(H_b)) with g the factor of an engine without boost.
    /// </summary>
    /// <param name="law">Which standard's correction.</param>
    /// <param name="altitude">H.</param>
    /// <param name="temperature">T, air temperature; the standard day's where null.</param>
    /// <param name="boostedTo">H_b.</param>
    /// <remarks>
    /// At H_b the day is as much warmer or colder than the standard one as at H, so that the factor has no jump there.
    /// Common practice, no source; a boosted engine's own map stands above it.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">An altitude lies above the troposphere.</exception>
    public static double BoostedTorqueFactor(
        AirCorrection law, Length altitude, Temperature? temperature, Length boostedTo)
    {
        if (altitude <= boostedTo)
            return 1;
        Temperature? there = temperature is { } here
            ? Temperature.FromKelvins(
                StandardTemperature(boostedTo).Kelvins + here.Kelvins - StandardTemperature(altitude).Kelvins)
            : null;
        return Math.Min(1, TorqueFactor(law, altitude, temperature) / TorqueFactor(law, boostedTo, there));
    }
}

/// <summary>Published corrections of torque for air.</summary>
public enum AirCorrection
{
    SaeJ1349,
    Iso1585,
}
