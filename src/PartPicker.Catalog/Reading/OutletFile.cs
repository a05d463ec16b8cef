using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>A CSV file of what an outlet has; the name of the file is the id of the outlet.</summary>
internal static class OutletFile
{
    private const long MaxPriceMinor = 1_000_000_000;
    private const int MaxStock = 1_000_000;
    private static readonly string[] ColumnNames = ["partId", "currency", "priceMinor", "stock"];

    public static void Read(FolderFile file, string text, CatalogDraft draft)
    {
        Findings findings = draft.Findings;
        string id = Path.GetFileNameWithoutExtension(file.Name);
        if (ValueReader.Id(id) is { } badId)
            findings.Add(file.Name, null, null, id, badId with { Reason = $"{badId.Reason} Rename the file." });
        if (CsvTable.Read(file.Name, text, findings) is not { } table
            || Columns(file.Name, table.Header, findings) is not { } columns)
        {
            return;
        }

        string? currency = null;
        var offers = new Dictionary<string, Offer>(StringComparer.Ordinal);
        var lines = new List<(string, int)>();
        foreach (CsvRow row in table.Rows)
            ReadRow(row);
        if (table is { Rows.Count: 0, Complete: true })
        {
            findings.Add(file.Name, null, null, null, new(
                FindingCodes.MissingValue,
                "The file has no row, so its currency is not known. Fill it or remove it."));
        }

        draft.Outlets.Add(new DraftOutlet(new Outlet(id, currency ?? "", offers), file.Name, lines));

        void ReadRow(CsvRow row)
        {
            string partId = row.Cells[columns["partId"]];
            string paidIn = row.Cells[columns["currency"]];
            Refusal? badPart = ValueReader.Id(partId) ?? Twin(partId);
            Refuse("partId", partId, badPart);
            Refusal? badCurrency = Currency(paidIn, currency);
            Refuse("currency", paidIn, badCurrency);
            long? price = Whole("priceMinor", MaxPriceMinor);
            long? stock = Whole("stock", MaxStock);
            currency ??= badCurrency is null ? paidIn : null;
            if (badPart is not null)
                return;
            offers.Add(partId, new Offer(price, (int?)stock));
            lines.Add((partId, row.Line));

            long? Whole(string column, long max)
            {
                string cell = row.Cells[columns[column]];
                if (cell.Length == 0)
                    return null;
                Refuse(column, cell, ValueReader.Whole(cell, 0, max, out long value));
                return value;
            }

            void Refuse(string column, string value, Refusal? refusal)
            {
                if (refusal is not null)
                    findings.Add(file.Name, row.Line, column, value.Length == 0 ? null : value, refusal);
            }
        }

        Refusal? Twin(string partId) => offers.ContainsKey(partId)
            ? new(FindingCodes.DuplicateId, "The part has a row in this file already. Join the two.")
            : null;
    }

    private static Refusal? Currency(string written, string? before)
    {
        if (written.Length != 3 || !written.All(char.IsAsciiLetterUpper))
        {
            return new(
                FindingCodes.BadCurrency, "A currency is three capital letters, as in ISO 4217: EUR, USD, CAD.");
        }

        return before is null || written == before
            ? null
            : new(FindingCodes.MixedCurrency, $"An outlet has one currency, and an earlier row has {before}.");
    }

    /// <summary>Where each column stands; null when one is missing, unknown or double.</summary>
    private static Dictionary<string, int>? Columns(string file, CsvRow header, Findings findings)
    {
        int before = findings.Count;
        var columns = new Dictionary<string, int>();
        for (int i = 0; i < header.Cells.Length; i++)
        {
            string name = header.Cells[i];
            if (!ColumnNames.Contains(name))
                Refuse(name, FindingCodes.UnknownColumn, $"No such column. Known: {string.Join(", ", ColumnNames)}.");
            else if (!columns.TryAdd(name, i))
                Refuse(name, FindingCodes.DuplicateColumn, "The column stands twice. Leave one out.");
        }

        foreach (string missing in ColumnNames.Where(name => !columns.ContainsKey(name)))
            Refuse(missing, FindingCodes.MissingColumn, $"The column {missing} is needed. Empty cells: not known.");
        return findings.Count == before ? columns : null;

        void Refuse(string column, string code, string reason) =>
            findings.Add(file, header.Line, column, null, new(code, reason));
    }
}
