using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using PartPicker.Quantities;
using PartPicker.Tests.Catalog;
using UnitsNet;
using Xunit;
using UnitSystem = PartPicker.Quantities.UnitSystem;

namespace PartPicker.Tests.Quantities;

public partial class QuantityWriterTests
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
    public void In_full_every_quantity_of_the_sample_catalog_keeps_the_digits_of_its_text()
    {
        int kept = 0;
        IEnumerable<string> texts = Directory.GetFiles(SampleFolder.Path, "*", SearchOption.AllDirectories)
            .Where(file => Path.GetExtension(file) is ".csv" or ".json" && !file.Contains("answers", StringComparison.Ordinal))
            .SelectMany(file => NumberAndUnit().Matches(File.ReadAllText(file)))
            .Select(match => match.Value).Distinct();
        foreach (string text in texts)
        {
            foreach (DimensionUnits units in UnitAliases.Dimensions)
            {
                QuantityReading reading = QuantityReader.Read(text, units.Info);
                foreach (UnitSystem system in Enum.GetValues<UnitSystem>())
                {
                    if (reading.Problem is not null || !text.EndsWith(" " + units.In(system).Unit.Symbol, StringComparison.Ordinal))
                        continue;
                    double written = QuantityWriter.Write(reading.Value, units.Info, system, fullPrecision: true).Value;
                    Assert.True(
                        written == double.Parse(text.Split(' ')[0], CultureInfo.InvariantCulture), $"{text} is written as {written:R}.");
                    kept++;
                }
            }
        }

        Assert.True(kept > 500, $"Only {kept} texts were found.");
    }

    [GeneratedRegex("[0-9]+(\\.[0-9]+)? [a-zA-Z°][^\"\\s,;:|\\]}]*")]
    private static partial Regex NumberAndUnit();

    [Theory]
    [InlineData("0.212 in")]
    [InlineData("0.1 °C")]
    [InlineData("-40.3 °F")]
    [InlineData("63.4 lbf·ft")]
    [InlineData("123456.789012 lbf/in")]
    public void In_full_a_quantity_is_written_as_it_was_read(string text)
    {
        DimensionUnits units = UnitAliases.Dimensions.First(one => QuantityReader.Read(text, one.Info).Problem is null);
        UnitSystem system = Enum.GetValues<UnitSystem>().First(one => text.EndsWith(" " + units.In(one).Unit.Symbol, StringComparison.Ordinal));

        (double value, string unit) = QuantityWriter.Write(QuantityReader.Read(text, units.Info).Value, units.Info, system, fullPrecision: true);

        Assert.Equal(text, FormattableString.Invariant($"{value:R} {unit}"));
    }

    [Fact]
    public void Full_precision_leaves_the_converted_value_unrounded() =>
        Assert.Equal(
            new WrittenQuantity(38.1234567, "mm"),
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
    public void In_full_a_value_is_read_back_to_fourteen_digits() =>
        Gen.Select(Dimensions, Gen.Enum<UnitSystem>(), Gen.Double[1e-6, 1e6]).Sample((units, system, si) =>
        {
            (double value, string unit) = QuantityWriter.Write(si, units.Info, system, fullPrecision: true);

            double read = QuantityReader.Read(value, unit, units.Info).Value;

            // A temperature near absolute zero loses digits to its offset.
            double scale = Math.Max(si, units.Info.Name == nameof(Temperature) ? 500 : 0);
            Assert.Equal(si, read, 1e-14 * scale);
        });

    private static readonly Gen<DimensionUnits> Dimensions =
        Gen.Int[0, UnitAliases.Dimensions.Count - 1].Select(at => UnitAliases.Dimensions[at]);
}
