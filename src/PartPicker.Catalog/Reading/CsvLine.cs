namespace PartPicker.Catalog;

/// <summary>
/// The quoting rules of RFC 4180, and the limits, on one line; a quoted cell ends on the line where it starts.
/// </summary>
internal static class CsvLine
{
    /// <summary>What is wrong with the line; null when nothing is.</summary>
    public static Refusal? Check(string line)
    {
        if (line.Length > ImportLimits.MaxLineLength)
        {
            return new(
                FindingCodes.LineTooLong,
                $"The line has {line.Length} characters; at most {ImportLimits.MaxLineLength} are read.");
        }

        int at = 0;
        while (at <= line.Length)
        {
            int start = at;
            Refusal? refusal = at < line.Length && line[at] == '"' ? Quoted(line, ref at) : Bare(line, ref at);
            if (refusal is not null)
                return refusal;
            if (at - start > ImportLimits.MaxCellLength)
            {
                return new(
                    FindingCodes.CellTooLong,
                    $"A cell has {at - start} characters; at most {ImportLimits.MaxCellLength} are read.");
            }

            at++; // The comma, or the end.
        }

        return null;
    }

    private static Refusal? Bare(string line, ref int at)
    {
        int comma = line.IndexOf(',', at);
        int end = comma < 0 ? line.Length : comma;
        bool stray = line.AsSpan(at, end - at).Contains('"');
        at = end;
        return stray
            ? new(
                FindingCodes.StrayQuote,
                "A cell that does not begin with a quote holds one. Write inches as in; "
                + "put a cell that holds a quote in quotes and double the quote inside.")
            : null;
    }

    private static Refusal? Quoted(string line, ref int at)
    {
        do
        {
            int close = line.IndexOf('"', at + 1);
            if (close < 0)
            {
                return new(
                    FindingCodes.UnclosedQuote,
                    "A quoted cell does not end on its line. Close the quote, or take the line break out.");
            }

            at = close + 1;
        }
        while (at < line.Length && line[at] == '"'); // A doubled quote is a quote in the cell.

        return at < line.Length && line[at] != ','
            ? new(
                FindingCodes.StrayQuote,
                "A quoted cell goes on after its closing quote. Double a quote that belongs to the cell.")
            : null;
    }
}
