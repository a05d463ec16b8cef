using System.Globalization;
using CsCheck;
using PartPicker.Quantities;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Quantities;

public class QuantityReaderTests
{
    [Theory]
    [InlineData("0.192 in", 0.0048768)]
    [InlineData("0.192in", 0.0048768)]
    [InlineData(".192\"", 0.0048768)]
    [InlineData("  38.1\t mm ", 0.0381)]
    [InlineData("+38.1 mm", 0.0381)]
    [InlineData("-38.1 mm", -0.0381)]
    [InlineData("38. mm", 0.038)]
    [InlineData("0038 mm", 0.038)]
    [InlineData("3.81e1 mm", 0.0381)]
    [InlineData("381E-1mm", 0.0381)]
    [InlineData("0 mm", 0)]
    public void A_number_and_its_unit_are_read(string text, double si) =>
        Readings.AssertRead(si, QuantityReader.Read(text, Length.Info), 1e-14);

    [Theory]
    [InlineData("1/4 in", 0.25)]
    [InlineData("1/4\"", 0.25)]
    [InlineData("1 3/4 in", 1.75)]
    [InlineData("1-3/4 in", 1.75)]
    [InlineData("1  3/4in", 1.75)]
    [InlineData("-1 3/4 inches", -1.75)]
    [InlineData("3/2 in", 1.5)]
    [InlineData("0/4 in", 0)]
    [InlineData("2 11/64 in", 2.171875)]
    public void A_length_in_inches_may_be_a_fraction(string text, double inches) =>
        Readings.AssertRead(inches * 0.0254, QuantityReader.Read(text, Length.Info), 1e-14);

    [Theory]
    [InlineData("Temperature", "-40 °F", 233.15)]
    [InlineData("Temperature", "-40 °C", 233.15)]
    [InlineData("Temperature", "72 F", 295.37222222222222)]
    [InlineData("Temperature", "0 K", 0)]
    public void A_temperature_is_read_with_its_offset(string dimension, string text, double si) =>
        Readings.AssertRead(si, QuantityReader.Read(text, Readings.Dimension(dimension)), 1e-14);

    private const string HowToWrite = "Write a number and its unit, for example \"17.5 N/mm\".";
    private const string CommaRemedy =
        "Write a point before the decimals and nothing between the thousands, for example \"17.5 N/mm\".";
    private const string FractionRemedy =
        "is a fraction; fractions are read for lengths in inches only. Write decimals, for example";
    private const string Units = "N/mm, N/cm, N/m, kN/m, lbf/in, lbf/ft, kgf/mm, kgf/cm";
    private const string OneOf = $"a force per length is written in one of: {Units}.";
    private const string Expected = $"a force per length was expected, in one of: {Units}.";

    [Theory]
    [InlineData("", $"Nothing is written. {HowToWrite}")]
    [InlineData(" \t\u00A0", $"Nothing is written. {HowToWrite}")]
    [InlineData("17,5 N/mm", $"\"17,5 N/mm\" holds a comma. {CommaRemedy}")]
    [InlineData("1,750 N/m", $"\"1,750 N/m\" holds a comma. {CommaRemedy}")]
    [InlineData(",5 N/mm", $"\",5 N/mm\" holds a comma. {CommaRemedy}")]
    [InlineData("1.750,5 N/m", $"\"1.750,5 N/m\" holds a comma. {CommaRemedy}")]
    [InlineData("17.5.1 N/mm", $"\"17.5.1 N/mm\" holds more than one number. {HowToWrite}")]
    [InlineData("1 750 N/m", $"\"1 750 N/m\" holds more than one number. {HowToWrite}")]
    [InlineData("1 5/4 N/m", $"\"1 5/4 N/m\" holds more than one number. {HowToWrite}")]
    [InlineData("NaN N/mm", $"\"NaN N/mm\" does not start with a number. {HowToWrite}")]
    [InlineData("Infinity N/mm", $"\"Infinity N/mm\" does not start with a number. {HowToWrite}")]
    [InlineData("-∞ N/mm", $"\"-∞ N/mm\" does not start with a number. {HowToWrite}")]
    [InlineData("N/mm", $"\"N/mm\" does not start with a number. {HowToWrite}")]
    [InlineData("N/mm 17.5", $"\"N/mm 17.5\" does not start with a number. {HowToWrite}")]
    [InlineData(". N/mm", $"\". N/mm\" does not start with a number. {HowToWrite}")]
    [InlineData("- 17.5 N/mm", $"\"- 17.5 N/mm\" does not start with a number. {HowToWrite}")]
    [InlineData("--17.5 N/mm", $"\"--17.5 N/mm\" does not start with a number. {HowToWrite}")]
    [InlineData("(17.5) N/mm", $"\"(17.5) N/mm\" does not start with a number. {HowToWrite}")]
    [InlineData("١٧ N/mm", $"\"١٧ N/mm\" does not start with a number. {HowToWrite}")]
    [InlineData("1e400 N/mm", $"\"1e400\" is not a finite number, or too large for one. {HowToWrite}")]
    [InlineData("-1e400 N/mm", $"\"-1e400\" is not a finite number, or too large for one. {HowToWrite}")]
    [InlineData("1e308 N/mm", $"\"1e308\" is not a finite number, or too large for one. {HowToWrite}")]
    [InlineData("17.5", "\"17.5\" has no unit, and a unit is never guessed. "
        + "Write one, for example \"17.5 N/mm\" or \"17.5 lbf/in\".")]
    [InlineData("17.5 furlongs", $"\"furlongs\" is no known unit; {OneOf}")]
    [InlineData("0x11 N/mm", $"\"x11 N/mm\" is no known unit; {OneOf}")]
    [InlineData("17e N/mm", $"\"e N/mm\" is no known unit; {OneOf}")]
    [InlineData("17.5 N/mm N/mm", $"\"N/mm N/mm\" is no known unit; {OneOf}")]
    [InlineData("17.5 N\u202E/mm", $"\"N?/mm\" is no known unit; {OneOf}")]
    [InlineData("17.5 N\r\n/mm", $"\"N??/mm\" is no known unit; {OneOf}")]
    [InlineData("1/4 N/mm", $"\"1/4\" {FractionRemedy} \"17.5 N/mm\".")]
    [InlineData("5 kg", $"kg is a mass; {Expected}")]
    [InlineData("5 mm", $"mm is a length; {Expected}")]
    [InlineData("5 ft-lb", $"ft-lb is a torque; {Expected}")]
    public void A_rate_that_cannot_be_read_is_refused_with_a_remedy(string text, string problem) =>
        Assert.Equal(problem, Readings.AssertRefused(QuantityReader.Read(text, ForcePerLength.Info)));

    [Theory]
    [InlineData("5 kg", "kg is a mass; a length was expected, in one of: mm, cm, m, in, ft, thou.")]
    [InlineData("1/4 mm", $"\"1/4\" {FractionRemedy} \"38.1 mm\".")]
    [InlineData("1 3/4 ft", $"\"1 3/4\" {FractionRemedy} \"38.1 mm\".")]
    [InlineData("1/4", "\"1/4\" has no unit, and a unit is never guessed. Write one, for example \"1/4 in\".")]
    [InlineData("1/0 in", "\"1/0\" is not a finite number, or too large for one. "
        + "Write a number and its unit, for example \"38.1 mm\".")]
    [InlineData("0/0 in", "\"0/0\" is not a finite number, or too large for one. "
        + "Write a number and its unit, for example \"38.1 mm\".")]
    [InlineData("1 5/4 in", "\"1 5/4 in\" holds more than one number. "
        + "Write a number and its unit, for example \"38.1 mm\".")]
    public void A_length_that_cannot_be_read_is_refused_with_a_remedy(string text, string problem) =>
        Assert.Equal(problem, Readings.AssertRefused(QuantityReader.Read(text, Length.Info)));

    [Theory]
    [InlineData(double.NaN, "mm", "\"NaN\" is not a finite number, or too large for one. ")]
    [InlineData(double.NegativeInfinity, "mm", "\"-Infinity\" is not a finite number, or too large for one. ")]
    [InlineData(38.1, "", "\"38.1\" has no unit, and a unit is never guessed. ")]
    [InlineData(38.1, " ", "\"38.1\" has no unit, and a unit is never guessed. ")]
    [InlineData(38.1, null, "\"38.1\" has no unit, and a unit is never guessed. ")]
    [InlineData(38.1, "N", "N is a force; a length was expected")]
    [InlineData(38.1, "1/4 in", "\"1/4 in\" is no known unit; ")]
    public void A_number_that_came_apart_from_its_unit_is_held_to_the_same(double value, string? unit, string start) =>
        Assert.StartsWith(start, Readings.AssertRefused(QuantityReader.Read(value, unit!, Length.Info)));

    [Fact]
    public void A_missing_text_is_an_empty_one() =>
        Assert.StartsWith("Nothing is written.", Readings.AssertRefused(QuantityReader.Read(null!, Length.Info)));

    [Fact]
    public void The_longest_text_that_is_read_is_named_when_it_is_passed()
    {
        string longest = new string('0', QuantityReader.MaxTextLength - "1 mm".Length) + "1 mm";

        Readings.AssertRead(0.001, QuantityReader.Read(longest, Length.Info), 1e-14);
        Assert.StartsWith(
            "The text has 65 characters; at most 64 are read.",
            Readings.AssertRefused(QuantityReader.Read("0" + longest, Length.Info)));
        Assert.StartsWith(
            "The text has 1000000 characters; at most 64 are read.",
            Readings.AssertRefused(QuantityReader.Read(1, new string('m', 1_000_000), Length.Info)));
    }

    [Fact]
    public void Zero_has_no_sign() =>
        Assert.False(double.IsNegative(QuantityReader.Read("-0 mm", Length.Info).Value));

    [Fact]
    public void The_culture_of_the_machine_changes_nothing()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        var commas = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        commas.NumberFormat.NumberDecimalSeparator = ",";
        commas.NumberFormat.NumberGroupSeparator = ".";
        try
        {
            CultureInfo.CurrentCulture = commas;
            Readings.AssertRead(0.0381, QuantityReader.Read("38.1 mm", Length.Info), 1e-14);
            Readings.AssertRefused(QuantityReader.Read("38,1 mm", Length.Info));
            Assert.StartsWith("\"38.1\"", QuantityReader.Read(38.1, "", Length.Info).Problem);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Any_text_gets_a_value_or_one_short_line()
    {
        Gen<string> hostile = Gen.Char.Array[0, 80].Select(chars => new string(chars));
        Gen<string> near = Gen.Char["0123456789+-./,eE ·*°\"'#\u00A0\u202E\uD800inmlbfgNdrakKMP"].Array[0, 24]
            .Select(chars => new string(chars));
        string[] starts = ["", "1", "-0.5", "1e300", "1/4", "1 3/4", "NaN", "∞", "1e999999999999"];
        Gen<string> number = Gen.Int[0, starts.Length - 1].Select(at => starts[at]);
        Gen<string> text = Gen.Select(number, Gen.OneOf(hostile, near), (start, rest) => start + rest);

        Gen.Select(text, Gen.Int[0, UnitAliases.Dimensions.Count - 1]).Sample((sent, at) =>
        {
            QuantityInfo dimension = UnitAliases.Dimensions[at].Info;
            foreach (QuantityReading reading in
                new[] { QuantityReader.Read(sent, dimension), QuantityReader.Read(1e300, sent, dimension) })
            {
                if (reading.Problem is null)
                    Assert.True(double.IsFinite(reading.Value));
                else
                    Assert.True(IsOneShortLine(Readings.AssertRefused(reading)), reading.Problem);
            }
        }, iter: 20_000);
    }

    [Fact]
    public void Any_decimal_number_is_read_as_the_double_that_it_names() =>
        Gen.Double[-1e9, 1e9].Sample(value =>
            Assert.Equal(
                value + 0.0,
                QuantityReader.Read(FormattableString.Invariant($"{value:R} m"), Length.Info).Value));

    private static bool IsOneShortLine(string problem) =>
        problem.Length < 250 && !problem.Any(c => char.IsControl(c) || char.IsSurrogate(c));
}
