using PartPicker.Mechanics;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>Air and what it does to torque, against the standards; keys as in docs/sources.md.</summary>
public sealed class PublishedAirTests
{
    private const double GasConstantDryAir = 287.05287;

    // ATM-1, [ISO 2533], [USSA]: temperature, pressure and density by geopotential altitude.
    [Theory]
    [InlineData(0, 288.150, 101_325, 1.22500)]
    [InlineData(500, 284.900, 95_460.8, 1.16727)]
    [InlineData(1000, 281.650, 89_874.6, 1.11164)]
    [InlineData(1500, 278.400, 84_556.0, 1.05807)]
    [InlineData(2000, 275.150, 79_495.2, 1.00649)]
    [InlineData(3000, 268.650, 70_108.5, 0.90912)]
    [InlineData(4000, 262.150, 61_640.2, 0.81913)]
    [Trait("Outside", "ATM-1/1")]
    [Trait("Outside", "ATM-1/2")]
    [Trait("Outside", "ATM-1/3")]
    [Trait("Outside", "ATM-1/4")]
    [Trait("Outside", "ATM-1/5")]
    [Trait("Outside", "ATM-1/6")]
    [Trait("Outside", "ATM-1/7")]
    public void Air_by_geopotential_altitude_is_that_of_the_standard(
        double metres, double kelvins, double pascals, double density)
    {
        double pressure = Atmosphere.PressureAt(Length.FromMeters(metres)).Pascals;
        double temperature = Atmosphere.StandardTemperature(Length.FromMeters(metres)).Kelvins;

        Assert.Equal(kelvins, temperature, 1e-9);
        Assert.Equal(pascals, pressure, 0.05);
        Assert.Equal(density, pressure / (GasConstantDryAir * temperature), 5e-6);
    }

    // [AND] App. D: pressure by geometric altitude Z, with H = 6 356 766 Z/(6 356 766 + Z).
    [Theory]
    [InlineData(1000, 8.9876e4)]
    [InlineData(2000, 7.9501e4)]
    [InlineData(3000, 7.0121e4)]
    [InlineData(4000, 6.1660e4)]
    [Trait("Outside", "AND/1")]
    [Trait("Outside", "AND/2")]
    [Trait("Outside", "AND/3")]
    [Trait("Outside", "AND/4")]
    public void Pressure_by_geometric_altitude_is_that_of_Anderson(double metres, double pascals) =>
        Assert.Equal(
            pascals,
            Atmosphere.PressureAt(Length.FromMeters(6_356_766 * metres / (6_356_766 + metres))).Pascals,
            0.5);

    // [SAE J1349] and [ISO 1585] on the dry standard day, recomputed: torque here over torque in reference
    // air. The first is written with Celsius degrees counted from 273, not 273.15: in kelvin its temperature
    // is 0.15 lower.
    [Theory]
    [InlineData(0, 1.04886, 1.04920)]
    [InlineData(500, 0.98403, 0.98343)]
    [InlineData(1000, 0.92309, 0.92110)]
    [InlineData(1500, 0.86580, 0.86206)]
    [InlineData(2000, 0.81190, 0.80619)]
    [InlineData(3000, 0.71344, 0.70336)]
    [InlineData(4000, 0.62616, 0.61161)]
    public void Corrections_by_altitude_are_those_of_the_standards(double metres, double saeJ1349, double iso1585)
    {
        Pressure pressure = Atmosphere.PressureAt(Length.FromMeters(metres));
        Temperature temperature = Atmosphere.StandardTemperature(Length.FromMeters(metres));
        var from273 = Temperature.FromKelvins(temperature.Kelvins - 0.15);

        Assert.Equal(saeJ1349, 1 / Atmosphere.Correction(AirCorrection.SaeJ1349, pressure, from273), 5e-6);
        Assert.Equal(iso1585, 1 / Atmosphere.Correction(AirCorrection.Iso1585, pressure, temperature), 5e-6);
    }

    // 900 mbar of dry air at 30 °C, which is 303 K in both, recomputed.
    [Theory]
    [InlineData(AirCorrection.SaeJ1349, 1.12884)]
    [InlineData(AirCorrection.Iso1585, 1.13242)]
    public void Corrections_of_a_warm_day_are_those_of_the_standards(AirCorrection law, double factor) =>
        Assert.Equal(
            factor,
            Atmosphere.Correction(law, Pressure.FromMillibars(900), Temperature.FromKelvins(303)),
            5e-6);

    // Recomputed: relative to the standard day at sea level, in metres and (ALT-1) in thousands of feet.
    [Trait("Outside", "ALT-1")]
    [Theory]
    [InlineData(AirCorrection.SaeJ1349, 1000, 0.8801)]
    [InlineData(AirCorrection.SaeJ1349, 2000, 0.7741)]
    [InlineData(AirCorrection.SaeJ1349, 3000, 0.6802)]
    [InlineData(AirCorrection.SaeJ1349, 4000, 0.5970)]
    [InlineData(AirCorrection.Iso1585, 1000, 0.8779)]
    [InlineData(AirCorrection.Iso1585, 2000, 0.7684)]
    [InlineData(AirCorrection.Iso1585, 3000, 0.6704)]
    [InlineData(AirCorrection.Iso1585, 4000, 0.5829)]
    [InlineData(AirCorrection.SaeJ1349, 914.4, 0.890)]
    [InlineData(AirCorrection.SaeJ1349, 1524, 0.823)]
    [InlineData(AirCorrection.SaeJ1349, 3048, 0.676)]
    public void Torque_falls_with_altitude_by_the_ratio_of_corrections(
        AirCorrection law, double metres, double factor) =>
        Assert.Equal(
            factor,
            Atmosphere.TorqueFactor(law, Length.FromMeters(metres), temperature: null),
            law == AirCorrection.SaeJ1349 && metres % 1000 != 0 ? 5e-4 : 5e-5);

    // From the plain factors, recomputed above by SAE J1349: 0.8801 at 1000 m, 0.7741 at 2000 m, 0.6802 at 3000 m.
    [Theory]
    [InlineData(0, 1)]
    [InlineData(1000, 1)]
    [InlineData(2000, 0.7741 / 0.8801)]
    [InlineData(3000, 0.6802 / 0.8801)]
    public void Boost_makes_up_for_thin_air_up_to_its_altitude(double metres, double factor) =>
        Assert.Equal(
            factor,
            Atmosphere.BoostedTorqueFactor(
                AirCorrection.SaeJ1349, Length.FromMeters(metres), null, Length.FromMeters(1000)),
            1.5e-4);

    [Fact]
    public void A_boosted_factor_has_no_jump_at_its_altitude_on_a_warm_day()
    {
        Length boosted = Length.FromMeters(1500);
        Temperature warm = Temperature.FromKelvins(305);
        double above = Atmosphere.BoostedTorqueFactor(AirCorrection.Iso1585, Length.FromMeters(1500.01), warm, boosted);
        Assert.InRange(above, 1 - 1e-5, 1);
    }

    // By ISO 1585 torque goes by p^1.2 T^−0.6. 15 K above the standard day: 283.65 K at 3000 m, 293.4 K at 1500 m.
    [Fact]
    public void A_warm_day_is_as_much_warmer_where_boost_ends()
    {
        double pressures = Math.Pow(268.65 / 278.4, 9.80665 / (287.05287 * 0.0065));
        Assert.Equal(
            Math.Pow(pressures, 1.2) * Math.Pow(293.4 / 283.65, 0.6),
            Atmosphere.BoostedTorqueFactor(
                AirCorrection.Iso1585, Length.FromMeters(3000), Temperature.FromKelvins(283.65), Length.FromMeters(1500)),
            1e-12);
    }

    // [STM]: MPa to five decimals, so half of the last is 5 Pa.
    [Theory]
    [InlineData(10, 1_230)]
    [InlineData(20, 2_340)]
    [InlineData(30, 4_250)]
    [InlineData(40, 7_390)]
    [InlineData(60, 19_950)]
    [InlineData(90, 70_180)]
    [Trait("Outside", "STM/1")]
    [Trait("Outside", "STM/2")]
    [Trait("Outside", "STM/3")]
    [Trait("Outside", "STM/4")]
    [Trait("Outside", "STM/5")]
    [Trait("Outside", "STM/6")]
    public void The_vapour_pressure_is_that_of_the_steam_table(double celsius, double pascals) =>
        Assert.Equal(pascals, Atmosphere.SaturationPressure(Temperature.FromDegreesCelsius(celsius)).Pascals, 5.0);

    // ATM-2, [SAE J607]: (29.92/p_d) √(T/520) with T = °F + 460, of a sultry and of a cool day. Computed through, the first
    // is 1.1011, not the printed 1.1005. No steps are printed. Both printed factors come out, to the last digit, where
    // pressures are kept to the hundredth of an inch, as a barometer is read, and their ratio to three decimals:
    // 29.92/(28.85 − 1.03) = 1.075 and 29.92/(30.10 − 0.15) = 0.999. No law of the vapour explains it: it would have to
    // lie 1.5 % below the steam table.
    [Theory]
    [InlineData(85, 0.85, 28.85, 1.1011, 1.1005, 4)]
    [InlineData(55, 0.35, 30.10, 0.9943, 0.994, 3)]
    [Trait("Outside", "ATM-2/1")]
    [Trait("Outside", "ATM-2/2")]
    public void Vapour_is_taken_off_the_barometer_as_in_the_older_standard(
        double fahrenheit, double humidity, double barometer, double through, double printed, int printedDecimals)
    {
        double dry = Atmosphere.DryPressure(
            Pressure.FromInchesOfMercury(barometer), Temperature.FromDegreesFahrenheit(fahrenheit), humidity).InchesOfMercury;
        double warmth = Math.Sqrt((fahrenheit + 460) / 520);
        Assert.Equal(through, 29.92 / dry * warmth, 5e-5);

        double byHand = Math.Round(29.92 / (barometer - Math.Round(barometer - dry, 2)), 3);
        Assert.Equal(printed, Math.Round(byHand * warmth, printedDecimals), 1e-9);
    }

    // ATM-3, [SAE J1349] as quoted: at 85 °F, 24.71 inHg and 0.121 inHg of vapour an engine has 81.1 % of its rated power,
    // a factor of 1.233. The quotation counts Celsius degrees from 273; in kelvin as it is the factor is 1.2337.
    [Fact]
    [Trait("Outside", "ATM-3")]
    public void The_correction_of_a_humid_day_at_altitude_is_that_of_the_standard()
    {
        Temperature air = Temperature.FromDegreesFahrenheit(85);
        double humidity = Pressure.FromInchesOfMercury(0.121) / Atmosphere.SaturationPressure(air);
        Pressure dry = Atmosphere.DryPressure(Pressure.FromInchesOfMercury(24.71), air, humidity);

        double quoted = Atmosphere.Correction(AirCorrection.SaeJ1349, dry, Temperature.FromKelvins(air.Kelvins - 0.15));
        Assert.Equal(1.233, quoted, 5e-4);
        Assert.Equal(0.811, 1 / quoted, 5e-4);
        Assert.Equal(1.2337, Atmosphere.Correction(AirCorrection.SaeJ1349, dry, air), 5e-5);
    }

    // Factors to the last bit as they were before humidity could be stated.
    [Theory]
    [InlineData(0, null, 1)]
    [InlineData(1500, null, 0.8254631588900851)]
    [InlineData(1500, 303.15, 0.785944411094762)]
    [InlineData(-500, 233.15, 1.2204962671606017)]
    public void Without_humidity_no_digit_of_the_torque_changes(double metres, double? kelvins, double factor)
    {
        Temperature? temperature = kelvins is { } k ? Temperature.FromKelvins(k) : null;
        Assert.Equal(factor, Atmosphere.TorqueFactor(AirCorrection.SaeJ1349, Length.FromMeters(metres), temperature));
        Assert.Equal(factor, Atmosphere.TorqueFactor(AirCorrection.SaeJ1349, Length.FromMeters(metres), temperature, 0));
    }

    // By ISO 1585 torque goes by the dry pressure to the power of 1.2: at 30 °C saturated vapour is 4247 Pa.
    [Fact]
    public void Humid_air_takes_torque()
    {
        Temperature warm = Temperature.FromKelvins(303.15);
        double factor = Atmosphere.TorqueFactor(AirCorrection.Iso1585, Length.Zero, warm, 0.8)
            / Atmosphere.TorqueFactor(AirCorrection.Iso1585, Length.Zero, warm);
        Assert.Equal(Math.Pow(1 - 0.8 * 4247.03 / 101_325, 1.2), factor, 1e-7);
    }

    [Fact]
    public void A_boosted_factor_has_no_jump_at_its_altitude_on_a_humid_day()
    {
        double above = Atmosphere.BoostedTorqueFactor(
            AirCorrection.SaeJ1349, Length.FromMeters(1500.01), Temperature.FromKelvins(305), Length.FromMeters(1500), 0.9);
        Assert.InRange(above, 1 - 1e-5, 1);
    }

    // By ISO 1585 as above, with the vapour at either altitude: 283.65 K at 3000 m, 293.4 K at 1500 m.
    [Fact]
    public void A_humid_day_is_as_humid_where_boost_ends()
    {
        double there = Dry(1500, 293.4);
        double here = Dry(3000, 283.65);
        Assert.Equal(
            Math.Pow(here / there, 1.2) * Math.Pow(293.4 / 283.65, 0.6),
            Atmosphere.BoostedTorqueFactor(
                AirCorrection.Iso1585, Length.FromMeters(3000), Temperature.FromKelvins(283.65), Length.FromMeters(1500), 0.8),
            1e-12);

        double Dry(double metres, double kelvins) => Atmosphere.PressureAt(Length.FromMeters(metres)).Pascals
            - 0.8 * Atmosphere.SaturationPressure(Temperature.FromKelvins(kelvins)).Pascals;
    }

    [Fact]
    public void Saturated_air_is_still_air_and_vapour_alone_is_none()
    {
        Temperature boiling = Temperature.FromDegreesCelsius(100);
        Pressure vapour = Atmosphere.SaturationPressure(boiling);
        Assert.Equal(0.5, Atmosphere.DryPressure(Pressure.FromPascals(vapour.Pascals + 0.5), boiling, 1).Pascals, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => Atmosphere.DryPressure(vapour, boiling, 1));
        Assert.InRange(Atmosphere.SaturationPressure(Temperature.FromDegreesCelsius(-100)).Pascals, 1e-4, 1e-2);
    }

    [Theory]
    [InlineData(101_325, 20, 1.01)]
    [InlineData(101_325, 20, -0.01)]
    [InlineData(101_325, 20, double.NaN)]
    [InlineData(101_325, 101, 0.5)]
    [InlineData(101_325, -101, 0.5)]
    [InlineData(2_000, 20, 1)]
    public void Air_that_cannot_be_is_refused(double pascals, double celsius, double humidity) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Atmosphere.DryPressure(
            Pressure.FromPascals(pascals), Temperature.FromDegreesCelsius(celsius), humidity));

    [Fact]
    public void Altitude_above_the_troposphere_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Atmosphere.PressureAt(Length.FromMeters(11_001)));

    [Fact]
    public void Temperature_given_replaces_that_of_the_standard_day()
    {
        Length altitude = Length.FromMeters(1000);
        Temperature standard = Atmosphere.StandardTemperature(altitude);

        Assert.Equal(
            Atmosphere.TorqueFactor(AirCorrection.Iso1585, altitude, null),
            Atmosphere.TorqueFactor(AirCorrection.Iso1585, altitude, standard),
            1e-15);

        // ISO 1585 goes by T^0.6 at equal pressure.
        Relative.Equal(
            Math.Pow(standard.Kelvins / 300, 0.6),
            Atmosphere.TorqueFactor(AirCorrection.Iso1585, altitude, Temperature.FromKelvins(300))
                / Atmosphere.TorqueFactor(AirCorrection.Iso1585, altitude, null),
            1e-12);
    }
}
