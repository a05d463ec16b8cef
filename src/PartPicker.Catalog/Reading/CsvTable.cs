using nietras.SeparatedValues;

namespace PartPicker.Catalog;

/// <summary>A row with its line in the file.</summary>
internal sealed record CsvRow(int Line, string[] Cells);

/// <summary>The rows of a CSV file, the first of them the header; cells trimmed, blank rows left out.</summary>
/// <param name="Header">The names as written.</param>
/// <param name="Rows">As many cells each as the header.</param>
/// <param name="Complete">False when some line could not be read.</param>
internal sealed record CsvTable(CsvRow Header, IReadOnlyList<CsvRow> Rows, bool Complete)
{
    /// <summary>Null when there is no table to speak of.</summary>
    public static CsvTable? Read(string file, string text, Findings findings)
    {
        string[] lines = text.Split(["\r\n", "\n", "\r"], StringSplitOptions.None);
        if (lines.Length - 1 > ImportLimits.MaxLines)
        {
            findings.Add(file, null, null, null, new(
                FindingCodes.TooManyLines,
                $"The file has {lines.Length} lines; at most {ImportLimits.MaxLines} are read. Shorten it."));
            return null;
        }

        int first = Array.FindIndex(lines, line => !string.IsNullOrWhiteSpace(line));
        if (first < 0)
        {
            findings.Add(file, null, null, null, new(
                FindingCodes.MissingHeader, "The file is empty. Its first line must name the columns."));
            return null;
        }

        // A header is names alone: a semicolon or tab in it can only be the delimiter.
        if (lines[first].AsSpan().ContainsAny(';', '\t'))
        {
            findings.Add(file, first + 1, null, lines[first], new(
                FindingCodes.WrongDelimiter,
                "The columns are parted by semicolons or tabs. Part them by commas, and write a point before "
                + "decimals."));
            return null;
        }

        int before = findings.Count;
        List<CsvRow> rows = Split(file, lines, findings);
        if (rows is not [CsvRow header, ..] || header.Line != first + 1)
            return null; // The header itself was refused.

        rows.RemoveAt(0);
        rows.RemoveAll(row => !HasWidth(file, row, header.Cells.Length, findings));
        return new CsvTable(header, rows, Complete: findings.Count == before);
    }

    /// <remarks>
    /// Each line is held to the quoting rules before the parser sees it. Left alone, the parser takes a stray
    /// quote, as in 0.192", for the start of a quoted stretch and swallows rows up to the next one.
    /// </remarks>
    private static List<CsvRow> Split(string file, string[] lines, Findings findings)
    {
        for (int i = 0; i < lines.Length; i++)
        {
            if (CsvLine.Check(lines[i]) is not { } refusal)
                continue;
            findings.Add(file, i + 1, null, lines[i], refusal);
            lines[i] = "";
        }

        var rows = new List<CsvRow>();
        using SepReader reader = Sep.New(',')
            .Reader(o => o with { HasHeader = false, Unescape = true, DisableColCountCheck = true })
            .FromText(string.Join('\n', lines));
        // No cell spans lines, so rows and lines go together.
        int line = 0;
        foreach (SepReader.Row row in reader)
        {
            line++;
            var cells = new string[row.ColCount];
            for (int i = 0; i < cells.Length; i++)
                cells[i] = row[i].Span.Trim().ToString();
            if (Array.Exists(cells, c => c.Length > 0))
                rows.Add(new CsvRow(line, cells));
        }

        return rows;
    }

    private static bool HasWidth(string file, CsvRow row, int width, Findings findings)
    {
        if (row.Cells.Length == width)
            return true;
        findings.Add(file, row.Line, null, string.Join(',', row.Cells), new(
            FindingCodes.RaggedRow,
            $"The row has {row.Cells.Length} cells, the header {width}. Put a cell that holds a comma in "
            + "quotes; decimals take a point."));
        return false;
    }
}
