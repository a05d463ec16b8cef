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

    public static string NotOneNumber(ReadOnlySpan<char> number, ReadOnlySpan<char> rest, DimensionUnits units) =>
        $"\"{Shown(number)}{Shown(rest)}\" holds more than one number. {WriteFor(units)}";

    public static string NotFinite(ReadOnlySpan<char> number, DimensionUnits units) =>
        $"\"{Shown(number)}\" is not a finite number, or too large for one. {WriteFor(units)}";

    public static string Fraction(ReadOnlySpan<char> fraction, DimensionUnits units) =>
        $"\"{Shown(fraction)}\" is a fraction; fractions are read for lengths in inches only. "
        + $"Write decimals, for example \"{units.Example}\".";

    public static string NoUnit(ReadOnlySpan<char> number, DimensionUnits units)
    {
        string shown = Shown(number);
        string metric = units.Metric.Unit.Symbol;
        string inch = units.Inch.Unit.Symbol;
        string examples = metric == inch
            ? $"\"{shown} {metric}\""
            : $"\"{shown} {metric}\" or \"{shown} {inch}\"";
        return $"\"{shown}\" has no unit, and a unit is never guessed: write {examples}, whichever is meant.";
    }

    public static string NoSuchUnit(ReadOnlySpan<char> unit, DimensionUnits units)
    {
        string sent = unit.ToString();
        string shown = Shown(unit);
        if (units.FindInAnyCase(sent) is { } near)
        {
            string right = DimensionUnits.ReadSpellings(near)
                .First(spelling => spelling.Equals(sent, StringComparison.OrdinalIgnoreCase));
            return $"Capitals matter in \"{shown}\": write \"{right}\" if that is meant.";
        }

        string accepted = string.Join(", ", units.Units.Select(known => known.Symbol));
        string[] others = [.. UnitAliases.Dimensions
            .Where(other => other.Find(sent) is not null)
            .Select(other => other.Noun)];
        return others.Length > 0
            ? $"{shown} is {string.Join(" or ", others)}; {units.Noun} was expected, in one of: {accepted}."
            : $"\"{shown}\" is no known unit; {units.Noun} is written in one of: {accepted}.";
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
