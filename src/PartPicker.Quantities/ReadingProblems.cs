using System.Globalization;

namespace PartPicker.Quantities;

/// <summary>Every sentence that a reader answers with: what was sent, what is wrong, how to write it.</summary>
internal static class ReadingProblems
{
    private const int MaxShownLength = 40;

    public static string Empty(DimensionUnits units) =>
        $"Nothing is written. {WriteFor(units)}";

    public static string TooLong(int length, DimensionUnits units) =>
        $"The text has {length} characters; at most {QuantityReader.MaxTextLength} are read. {WriteFor(units)}";

    public static string Comma(ReadOnlySpan<char> sent, DimensionUnits units) =>
        $"\"{Shown(sent)}\" holds a comma. Write a point before the decimals and nothing between the thousands, "
        + $"for example \"{units.Example}\".";

    public static string NoNumber(ReadOnlySpan<char> sent, DimensionUnits units) =>
        $"\"{Shown(sent)}\" does not start with a number. {WriteFor(units)}";

    public static string NotOneNumber(ReadOnlySpan<char> sent, DimensionUnits units) =>
        $"\"{Shown(sent)}\" holds more than one number. {WriteFor(units)}";

    public static string NotFinite(ReadOnlySpan<char> number, DimensionUnits units) =>
        $"\"{Shown(number)}\" is not a finite number, or too large for one. {WriteFor(units)}";

    public static string Fraction(ReadOnlySpan<char> fraction, DimensionUnits units) =>
        $"\"{Shown(fraction)}\" is a fraction; fractions are read for lengths in inches only. "
        + $"Write decimals, for example \"{units.Example}\".";

    public static string NoUnit(ReadOnlySpan<char> number, DimensionUnits units, bool isFraction)
    {
        string shown = Shown(number);
        // A fraction is read in inches only; elsewhere the two systems may share a unit.
        string[] symbols = isFraction
            ? [units.Inch.Unit.Symbol]
            : [.. new[] { units.Metric.Unit.Symbol, units.Inch.Unit.Symbol }.Distinct()];
        string examples = string.Join(" or ", symbols.Select(symbol => $"\"{shown} {symbol}\""));
        return $"\"{shown}\" has no unit, and a unit is never guessed. Write one, for example {examples}.";
    }

    public static string NoSuchUnit(ReadOnlySpan<char> unit, DimensionUnits units)
    {
        string sent = unit.ToString();
        if (units.FindInAnyCase(sent) is { } near)
        {
            string right = DimensionUnits.ReadSpellings(near)
                .First(spelling => spelling.Equals(sent, StringComparison.OrdinalIgnoreCase));
            return $"Capitals matter in \"{Shown(sent)}\": write \"{right}\" if that is meant.";
        }

        string accepted = string.Join(", ", units.Units.Select(known => known.Symbol));
        // The first that knows it: kg is a mass, though a spring scale shows it as a force.
        return UnitAliases.Dimensions.FirstOrDefault(other => other.Find(sent) is not null) is { } other
            ? $"{Shown(sent)} is {other.Noun}; {units.Noun} was expected, in one of: {accepted}."
            : $"\"{Shown(sent)}\" is no known unit; {units.Noun} is written in one of: {accepted}.";
    }

    private static string WriteFor(DimensionUnits units) =>
        $"Write a number and its unit, for example \"{units.Example}\".";

    // What was sent may be hostile: it is cut, and nothing in it may end a line or hide in a log.
    private static string Shown(ReadOnlySpan<char> sent)
    {
        bool cut = sent.Length > MaxShownLength;
        char[] shown = (cut ? sent[..MaxShownLength] : sent).ToArray();
        for (int i = 0; i < shown.Length; i++)
        {
            if (!IsPlain(shown[i]))
                shown[i] = '?';
        }

        return new string(shown) + (cut ? "…" : "");
    }

    private static bool IsPlain(char c) => char.GetUnicodeCategory(c) is not (
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate
        or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
        or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned);
}
