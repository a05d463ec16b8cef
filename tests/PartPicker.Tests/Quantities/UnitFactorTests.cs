using PartPicker.Quantities;
using UnitsNet;
using UnitsNet.Units;
using Xunit;

namespace PartPicker.Tests.Quantities;

public class UnitFactorTests
{
    // UNI-1, [SP 811], exact definitions: 1 lb = 0.45359237 kg, 1 in = 0.0254 m, 1 ft = 0.3048 m,
    // g = 9.80665 m/s², 1 hp = 550 ft·lbf/s.
    [Theory]
    [InlineData("Force", "lbf", 4.4482216152605)]
    [InlineData("Torque", "lbf·ft", 1.3558179483314004)]
    [InlineData("Torque", "lbf·in", 0.1129848290276167)]
    [InlineData("ForcePerLength", "lbf/in", 175.12683524647636)]
    [InlineData("Power", "hp", 745.6998715822702)]
    [Trait("Outside", "UNI-1/1")]
    [Trait("Outside", "UNI-1/2")]
    [Trait("Outside", "UNI-1/3")]
    [Trait("Outside", "UNI-1/4")]
    [Trait("Outside", "UNI-1/5")]
    public void Customary_units_have_their_exact_factors(string dimension, string unit, double si) =>
        Readings.AssertRead(si, QuantityReader.Read(1, unit, Readings.Dimension(dimension)), 1e-12);

    // A second opinion on every row. Where UnitsNet rounds a constant more coarsely, the exact value above holds.
    [Theory]
    [MemberData(nameof(UnitsKnownToUnitsNet))]
    public void The_table_agrees_with_UnitsNet(string dimension, string symbol)
    {
        QuantityInfo info = Readings.Dimension(dimension);
        NamedUnit unit = UnitAliases.For(info).Find(symbol)!;
        double tolerance = unit.UnitsNetUnit is PowerUnit.MechanicalHorsepower ? 2e-5 : 1e-6;

        foreach (double value in new[] { 1, 37.5 })
        {
            double expected = UnitConverter.Convert(value, unit.UnitsNetUnit!, SiUnits[info.Name]);
            Assert.Equal(expected, unit.ToSi(value), tolerance * expected);
        }
    }

    [Fact]
    public void Only_units_that_UnitsNet_lacks_stand_without_one() =>
        Assert.Equal(
            ["lbf·in/rad", "lbf·in/deg", "kgf·m/deg", "kgf·cm/deg"],
            UnitAliases.Dimensions.SelectMany(dimension => dimension.Units)
                .Where(unit => unit.UnitsNetUnit is null)
                .Select(unit => unit.Symbol));

    [Fact]
    public void A_value_comes_back_as_it_was_sent_within_two_units_in_the_last_place()
    {
        foreach (NamedUnit unit in UnitAliases.Dimensions.SelectMany(dimension => dimension.Units))
        {
            foreach (double value in new[] { 0.1, 4.88, 17.5, 38.1, 64.5, 8200.3 })
            {
                // A temperature loses digits to its offset.
                double scale = Math.Max(value, unit.UnitsNetUnit is TemperatureUnit ? 500 : 0);
                Assert.Equal(value, unit.FromSi(unit.ToSi(value)), 2 * (Math.BitIncrement(scale) - scale));
            }
        }
    }

    public static TheoryData<string, string> UnitsKnownToUnitsNet()
    {
        var data = new TheoryData<string, string>();
        foreach (DimensionUnits dimension in UnitAliases.Dimensions)
        {
            foreach (NamedUnit unit in dimension.Units.Where(unit => unit.UnitsNetUnit is not null))
                data.Add(dimension.Info.Name, unit.Symbol);
        }

        return data;
    }

    private static readonly Dictionary<string, Enum> SiUnits = new()
    {
        [nameof(Length)] = LengthUnit.Meter,
        [nameof(Mass)] = MassUnit.Kilogram,
        [nameof(Force)] = ForceUnit.Newton,
        [nameof(Torque)] = TorqueUnit.NewtonMeter,
        [nameof(ForcePerLength)] = ForcePerLengthUnit.NewtonPerMeter,
        [nameof(RotationalStiffness)] = RotationalStiffnessUnit.NewtonMeterPerRadian,
        [nameof(Angle)] = AngleUnit.Radian,
        [nameof(Temperature)] = TemperatureUnit.Kelvin,
        [nameof(RotationalSpeed)] = RotationalSpeedUnit.RadianPerSecond,
        [nameof(Power)] = PowerUnit.Watt,
        [nameof(Speed)] = SpeedUnit.MeterPerSecond,
        [nameof(Pressure)] = PressureUnit.Pascal,
        [nameof(Ratio)] = RatioUnit.DecimalFraction,
        [nameof(LinearDensity)] = LinearDensityUnit.KilogramPerMeter,
    };
}
