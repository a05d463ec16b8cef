using UnitsNet;
using UnitsNet.Units;

namespace PartPicker.Quantities;

/// <summary>Reads a quantity as a shop writes it, into SI.</summary>
/// <remarks>
/// The parser of UnitsNet is left alone: it reads "17,5 N/mm" as 175, throws from its Try methods, knows few
/// of a counter's spellings and costs some 70 kB a call.
/// </remarks>
public static class QuantityReader
{
    /// <summary>Longest text that is read: ample for any number and any unit.</summary>
    public const int MaxTextLength = 64;

    /// <summary>Reads number and unit from one text, as in "0.192 in". Any text gets an answer.</summary>
    /// <exception cref="ArgumentException">The dimension is not one of <see cref="UnitAliases"/>.</exception>
    public static QuantityReading Read(string text, QuantityInfo dimension)
    {
        DimensionUnits units = UnitAliases.For(dimension);
        ReadOnlySpan<char> sent = text.AsSpan().Trim();
        if (sent.Length > MaxTextLength)
            return QuantityReading.Refused(ReadingProblems.TooLong(sent.Length, units));
        if (sent.IsEmpty)
            return QuantityReading.Refused(ReadingProblems.Empty(units));
        // No unit has a comma in it, so it can only stand for a decimal point or for thousands.
        if (sent.Contains(','))
            return QuantityReading.Refused(ReadingProblems.Comma(sent, units));

        if (NumberText.ReadFraction(sent, out double value) is > 0 and var fraction)
        {
            return dimension.UnitType == typeof(LengthUnit)
                ? ToSi(value, sent[..fraction], sent[fraction..], units, isFraction: true)
                : QuantityReading.Refused(ReadingProblems.Fraction(sent[..fraction], units));
        }

        return NumberText.ReadDecimal(sent, out value) is > 0 and var number
            ? ToSi(value, sent[..number], sent[number..], units, isFraction: false)
            : QuantityReading.Refused(ReadingProblems.NoNumber(sent, units));
    }

    /// <summary>Reads a number that came apart from its unit.</summary>
    /// <exception cref="ArgumentException">The dimension is not one of <see cref="UnitAliases"/>.</exception>
    public static QuantityReading Read(double value, string unit, QuantityInfo dimension)
    {
        DimensionUnits units = UnitAliases.For(dimension);
        ReadOnlySpan<char> sent = unit.AsSpan().Trim();
        return sent.Length > MaxTextLength
            ? QuantityReading.Refused(ReadingProblems.TooLong(sent.Length, units))
            : ToSi(value, value.ToString("R"), sent, units, isFraction: false);
    }

    private static QuantityReading ToSi(
        double value, ReadOnlySpan<char> number, ReadOnlySpan<char> rest, DimensionUnits units, bool isFraction)
    {
        if (!double.IsFinite(value))
            return QuantityReading.Refused(ReadingProblems.NotFinite(number, units));
        ReadOnlySpan<char> unitText = rest.TrimStart();
        if (unitText.IsEmpty)
            return QuantityReading.Refused(ReadingProblems.NoUnit(number, units));
        // No unit starts so: what was taken for the number was only a part of it.
        if (char.IsAsciiDigit(unitText[0]) || unitText[0] == '.')
            return QuantityReading.Refused(ReadingProblems.NotOneNumber(number, rest, units));

        if (units.Find(unitText) is not { } unit)
            return QuantityReading.Refused(ReadingProblems.NoSuchUnit(unitText, units));
        if (isFraction && unit.UnitsNetUnit is not LengthUnit.Inch)
            return QuantityReading.Refused(ReadingProblems.Fraction(number, units));

        double si = unit.ToSi(value);
        return double.IsFinite(si)
            ? new QuantityReading(si + 0.0, null) // −0 becomes 0.
            : QuantityReading.Refused(ReadingProblems.NotFinite(number, units));
    }
}
