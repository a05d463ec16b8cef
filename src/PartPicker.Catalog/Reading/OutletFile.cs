using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>A CSV file of what an outlet has; the name of the file is the id of the outlet.</summary>
internal static class OutletFile
{
    private const long MaxPriceMinor = 1_000_000_000;
    private const int MaxStock = 1_000_000;
    private static readonly string[] ColumnNames = ["partId", "currency", "priceMinor", "stock"];

    public static void Read(FolderFile file, string? text, CatalogDraft draft)
    {
        Findings findings = draft.Findings;
        string id = Path.GetFileNameWithoutExtension(file.Name);
        if (ValueReader.Id(id) is { } badId)
            findings.Add(file.Name, null, null, id, badId with { Reason = $"{badId.Reason} Rename the file." });

        string? currency = null;
        var offers = new Dictionary<string, Offer>(StringComparer.Ordinal);
        var lines = new List<(string, int)>();
        Dictionary<string, int> columns = [];
        if (text is not null && CsvTable.Read(file.Name, text, findings) is { } table
            && FixedColumns.Find(file.Name, table.Header, ColumnNames, findings) is { } found)
        {
            columns = found;
            foreach (CsvRow row in table.Rows)
                ReadRow(row);
            if (table is { Rows.Count: 0, Complete: true })
            {
                findings.Add(file.Name, null, null, null, new(
                    FindingCodes.MissingValue,
                    "The file has no row, so its currency is not known. Fill it or remove it."));
            }
        }

        // Even an outlet whose table was refused is there: labour may name it.
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
}
