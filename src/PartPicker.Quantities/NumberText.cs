using System.Globalization;

namespace PartPicker.Quantities;

/// <summary>Reads the number that a text starts with.</summary>
/// <remarks>Each reader returns how many characters the number took; 0 when there is none.</remarks>
internal static class NumberText
{
    /// <summary>[sign] digits [. digits] [e [sign] digits]; infinite when too large for a double.</summary>
    public static int ReadDecimal(ReadOnlySpan<char> text, out double value)
    {
        int whole = SignLength(text);
        int end = whole + DigitCount(text[whole..]);
        int digits = end - whole;
        if (end < text.Length && text[end] == '.')
        {
            int decimals = DigitCount(text[(end + 1)..]);
            digits += decimals;
            end += 1 + decimals;
        }

        value = double.NaN;
        if (digits == 0)
            return 0;
        end += ExponentLength(text[end..]);
        value = double.Parse(text[..end], NumberStyles.Float, CultureInfo.InvariantCulture);
        return end;
    }

    /// <summary>A fraction as a counter writes it: 1/4, 1 3/4, 1-3/4; below one after a whole number.</summary>
    public static int ReadFraction(ReadOnlySpan<char> text, out double value)
    {
        value = double.NaN;
        int sign = SignLength(text);
        int at = sign;
        if (!ReadWhole(text, ref at, out double first))
            return 0;

        double whole = 0;
        double numerator = first;
        bool mixed = text.Length > at && text[at] != '/';
        if (mixed)
        {
            whole = first;
            int gap = text[at] == '-' ? 1 : text[at..].Length - text[at..].TrimStart().Length;
            at += gap;
            if (gap == 0 || !ReadWhole(text, ref at, out numerator))
                return 0;
        }

        if (at == text.Length || text[at++] != '/' || !ReadWhole(text, ref at, out double denominator))
            return 0;
        if (mixed && numerator >= denominator)
            return 0;

        double size = whole + (numerator / denominator);
        value = text[0] == '-' ? -size : size;
        return at;
    }

    private static bool ReadWhole(ReadOnlySpan<char> text, ref int at, out double value)
    {
        int digits = DigitCount(text[at..]);
        value = digits == 0
            ? double.NaN
            : double.Parse(text.Slice(at, digits), NumberStyles.None, CultureInfo.InvariantCulture);
        at += digits;
        return digits > 0;
    }

    private static int ExponentLength(ReadOnlySpan<char> text)
    {
        if (text.IsEmpty || text[0] is not ('e' or 'E'))
            return 0;
        int sign = SignLength(text[1..]);
        int digits = DigitCount(text[(1 + sign)..]);
        return digits == 0 ? 0 : 1 + sign + digits;
    }

    private static int SignLength(ReadOnlySpan<char> text) => !text.IsEmpty && text[0] is '+' or '-' ? 1 : 0;

    private static int DigitCount(ReadOnlySpan<char> text)
    {
        int other = text.IndexOfAnyExceptInRange('0', '9');
        return other < 0 ? text.Length : other;
    }
}
