using CsCheck;
using PartPicker.Quantities;
using UnitsNet;
using Xunit;
using UnitSystem = PartPicker.Quantities.UnitSystem;

namespace PartPicker.Tests.Quantities;

public class QuantityWriterTests
{
    // Factors as in UnitAliasTests; each value is worked out by hand from them and rounded to the stated digits.
    [Theory]
    [InlineData("Length", 0.0381234567, 38.123, "mm", 1.5009, "in")]
    [InlineData("Mass", 0.0645678, 64.57, "g", 64.57, "g")]
    [InlineData("Force", 1234.567, 1234.6, "N", 277.5, "lbf")]
    [InlineData("Torque", 85.4321, 85.43, "N·m", 63.01, "lbf·ft")]
    [InlineData("ForcePerLength", 17512.6835, 17.513, "N/mm", 100, "lbf/in")]
    [InlineData("RotationalStiffness", 3.4567, 60.33, "N·mm/deg", 0.534, "lbf·in/deg")]
    [InlineData("Angle", 0.628319, 36, "deg", 36, "deg")]
    [InlineData("Temperature", 295.372, 22.2, "°C", 72, "°F")]
    [InlineData("RotationalSpeed", 858.702, 8200, "rpm", 8200, "rpm")]
    [InlineData("Power", 110123.4, 110.12, "kW", 147.68, "hp")]
    [InlineData("Speed", 33.3333, 120, "km/h", 74.6, "mph")]
    [InlineData("Pressure", 861234567, 861.2, "MPa", 124912, "psi")]
    [InlineData("LinearDensity", 0.45678, 0.457, "kg/m", 0.307, "lb/ft")]
    public void A_value_is_stated_in_the_unit_and_digits_of_its_dimension(
        string dimension, double si, double metric, string metricUnit, double inch, string inchUnit)
    {
        QuantityInfo info = Readings.Dimension(dimension);

        Assert.Equal(new WrittenQuantity(metric, metricUnit), QuantityWriter.Write(si, info, UnitSystem.Metric));
        Assert.Equal(new WrittenQuantity(inch, inchUnit), QuantityWriter.Write(si, info, UnitSystem.Inch));
    }

    [Theory]
    [InlineData(0.25, 0.3)]
    [InlineData(-0.25, -0.3)]
    [InlineData(0.75, 0.8)]
    [InlineData(1000.125, 1000.1)]
    public void A_half_is_rounded_away_from_zero(double newtons, double written) =>
        Assert.Equal(written, QuantityWriter.Write(newtons, Force.Info, UnitSystem.Metric).Value);

    [Theory]
    [InlineData(-0.0, false)]
    [InlineData(-0.0, true)]
    [InlineData(-0.01, false)]
    public void Zero_has_no_sign(double newtons, bool fullPrecision)
    {
        double written = QuantityWriter.Write(newtons, Force.Info, UnitSystem.Metric, fullPrecision).Value;

        Assert.Equal(0, written);
        Assert.False(double.IsNegative(written));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e308)]
    public void A_value_that_is_not_finite_is_never_written(double meters) =>
        Assert.Throws<ArgumentOutOfRangeException>(
            () => QuantityWriter.Write(meters, Length.Info, UnitSystem.Metric));

    [Fact]
    public void Full_precision_leaves_the_converted_value_unrounded() =>
        Assert.Equal(
            new WrittenQuantity(0.0381234567 * 1_000, "mm"),
            QuantityWriter.Write(0.0381234567, Length.Info, UnitSystem.Metric, fullPrecision: true));

    [Fact]
    public void What_is_written_is_read_back_within_its_rounding() =>
        Gen.Select(Dimensions, Gen.Enum<UnitSystem>(), Gen.Double[-1e4, 1e4]).Sample((units, system, value) =>
        {
            UnitForm form = units.In(system);

            (double rounded, string unit) = QuantityWriter.Write(form.Unit.ToSi(value), units.Info, system);
            string text = FormattableString.Invariant($"{rounded:R} {unit}");
            double read = QuantityReader.Read(text, units.Info).Value;

            double half = (0.5 * Math.Pow(10, -form.Decimals)) + 1e-10;
            Assert.Equal(value, form.Unit.FromSi(read), half);
        });

    [Fact]
    public void Full_precision_is_read_back_within_two_units_in_the_last_place() =>
        Gen.Select(Dimensions, Gen.Enum<UnitSystem>(), Gen.Double[1e-6, 1e6]).Sample((units, system, si) =>
        {
            (double value, string unit) = QuantityWriter.Write(si, units.Info, system, fullPrecision: true);

            double read = QuantityReader.Read(value, unit, units.Info).Value;

            // A temperature near absolute zero loses digits to its offset.
            double scale = Math.Max(si, units.Info.Name == nameof(Temperature) ? 500 : 0);
            Assert.Equal(si, read, 2 * (Math.BitIncrement(scale) - scale));
        });

    private static readonly Gen<DimensionUnits> Dimensions =
        Gen.Int[0, UnitAliases.Dimensions.Count - 1].Select(at => UnitAliases.Dimensions[at]);
}
