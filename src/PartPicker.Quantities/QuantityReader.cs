using System.Globalization;
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
        ReadOnlySpan<char> sent = text;
        if (sent.Length > MaxTextLength)
            return QuantityReading.Refused(ReadingProblems.TooLong(sent.Length, units));
        sent = sent.Trim();
        if (sent.IsEmpty)
            return QuantityReading.Refused(ReadingProblems.Empty(units));
        // No unit has a comma in it, so it can only stand for a decimal point or for thousands.
        if (sent.Contains(','))
            return QuantityReading.Refused(ReadingProblems.Comma(sent, units));

        int length = NumberText.ReadFraction(sent, out double value);
        bool isFraction = length > 0;
        if (!isFraction)
            length = NumberText.ReadDecimal(sent, out value);
        if (length == 0)
            return QuantityReading.Refused(ReadingProblems.NoNumber(sent, units));

        ReadOnlySpan<char> number = sent[..length];
        if (isFraction && dimension.UnitType != typeof(LengthUnit))
            return QuantityReading.Refused(ReadingProblems.Fraction(number, units));
        ReadOnlySpan<char> unit = sent[length..].TrimStart();
        // No unit starts so: what was taken for the number was only a part of it.
        return !unit.IsEmpty && (char.IsAsciiDigit(unit[0]) || unit[0] == '.')
            ? QuantityReading.Refused(ReadingProblems.NotOneNumber(sent, units))
            : ToSi(value, number, unit, units, isFraction);
    }

    /// <summary>Reads a number that came apart from its unit.</summary>
    /// <exception cref="ArgumentException">The dimension is not one of <see cref="UnitAliases"/>.</exception>
    public static QuantityReading Read(double value, string unit, QuantityInfo dimension)
    {
        DimensionUnits units = UnitAliases.For(dimension);
        ReadOnlySpan<char> sent = unit.AsSpan().Trim();
        return sent.Length > MaxTextLength
            ? QuantityReading.Refused(ReadingProblems.TooLong(sent.Length, units))
            : ToSi(value, value.ToString("R", CultureInfo.InvariantCulture), sent, units, isFraction: false);
    }

    private static QuantityReading ToSi(
        double value, ReadOnlySpan<char> number, ReadOnlySpan<char> unitText,
        DimensionUnits units, bool isFraction)
    {
        if (!double.IsFinite(value))
            return QuantityReading.Refused(ReadingProblems.NotFinite(number, units));
        if (unitText.IsEmpty)
            return QuantityReading.Refused(ReadingProblems.NoUnit(number, units, isFraction)) with { UnitMissing = true };
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
