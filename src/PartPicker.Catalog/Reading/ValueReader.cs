using System.Globalization;
using System.Text.Json;
using PartPicker.Parts;
using PartPicker.Quantities;
using UnitsNet;

namespace PartPicker.Catalog;

/// <summary>One text to one value. Each reader returns null, or why it takes nothing.</summary>
internal static class ValueReader
{
    /// <summary>Relative play at the ends of a range, so that a limit reads the same in every unit.</summary>
    private const double RangePlay = 1e-9;

    public static Refusal? Quantity(
        string text, string? unit, QuantityInfo dimension, double min, double max, out double si)
    {
        si = 0;
        QuantityReading reading;
        if (unit is null)
        {
            reading = QuantityReader.Read(text, dimension);
        }
        else if (Finite(text, out double number) is { } notANumber)
        {
            return notANumber with { Reason = $"{notANumber.Reason} The header states the unit, {unit}." };
        }
        else
        {
            reading = QuantityReader.Read(number, unit, dimension);
        }

        if (reading.Problem is { } problem)
            return new(text.Contains(',') ? FindingCodes.DecimalComma : FindingCodes.BadQuantity, problem);
        si = reading.Value;
        return Within(si, min, max) ? null : new(FindingCodes.OutOfRange, Range(Shown(min), Shown(max)));

        string Shown(double limit)
        {
            // Millimetres suit whatever fits a hand, not an altitude.
            if (dimension == Length.Info && max > 10)
                return $"{limit} m";
            WrittenQuantity written = QuantityWriter.Write(limit, dimension, Quantities.UnitSystem.Metric);
            return $"{written.Value} {written.Unit}";
        }
    }

    /// <summary>A bare number in a range.</summary>
    public static Refusal? Number(string text, double min, double max, out double value)
    {
        if (Finite(text, out value) is { } refusal)
            return refusal;
        return Within(value, min, max)
            ? null
            : new(FindingCodes.OutOfRange, Range($"{Math.Round(min, 9)}", $"{Math.Round(max, 9)}"));
    }

    public static Refusal? Whole(string text, long min, long max, out long value)
    {
        if (!long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out value))
            return new(FindingCodes.BadNumber, "A whole number belongs here, in digits alone.");
        return value >= min && value <= max ? null : new(FindingCodes.OutOfRange, Range($"{min}", $"{max}"));
    }

    public static Refusal? Text(string text, int maxLength)
    {
        if (text.Length == 0 || text.Length > maxLength)
        {
            return new(
                FindingCodes.BadText, $"The text has {text.Length} characters; 1 to {maxLength} are allowed.");
        }

        return text.Any(char.IsControl)
            ? new(FindingCodes.BadText, "The text holds a control character, such as a tab. Take it out.")
            : null;
    }

    public static Refusal? Id(string text) =>
        text.Length is > 0 and <= CatalogItem.MaxIdLength
        && text.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '.' or '_')
            ? null
            : new(
                FindingCodes.BadId,
                $"An id is 1 to {CatalogItem.MaxIdLength} characters: letters a to z, digits, '-', '.' and '_'.");

    public static Refusal? Choice(string text, Type choiceType, out object? value)
    {
        value = Array.Find(choiceType.GetEnumNames(), name => Word(name) == text) is { } found
            ? Enum.Parse(choiceType, found)
            : null;
        return value is not null
            ? null
            : new(FindingCodes.BadChoice, $"One of these belongs here: {Words(choiceType)}.");
    }

    public static string Words(Type choiceType) => string.Join(", ", choiceType.GetEnumNames().Select(Word));

    public static string Word(string name) => JsonNamingPolicy.CamelCase.ConvertName(name);

    private static Refusal? Finite(string text, out double value)
    {
        const NumberStyles style =
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        if (double.TryParse(text, style, CultureInfo.InvariantCulture, out value) && double.IsFinite(value))
        {
            value += 0.0; // −0 becomes 0.
            return null;
        }

        return text.Contains(',')
            ? new(FindingCodes.DecimalComma, "A number takes a point before decimals, nothing between thousands.")
            : new(FindingCodes.BadNumber, "A bare number belongs here, such as 12.5, without a unit.");
    }

    private static bool Within(double value, double min, double max) =>
        value >= min - Math.Abs(min) * RangePlay && value <= max + Math.Abs(max) * RangePlay;

    private static string Range(string min, string max) =>
        $"The value must be {min} to {max}. Is it in the right unit?";
}
