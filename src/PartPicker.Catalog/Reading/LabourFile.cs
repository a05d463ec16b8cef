using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>The CSV file that says how long a change of each slot takes at each outlet.</summary>
internal static class LabourFile
{
    private const int MaxMinutes = 1_000;
    private const string Outlet = "outlet";
    private const string SlotColumn = "slot";
    private const string Minutes = "minutes";
    private static readonly string[] ColumnNames = [Outlet, SlotColumn, Minutes];

    public static void Read(FolderFile file, string text, CatalogDraft draft)
    {
        Findings findings = draft.Findings;
        if (CsvTable.Read(file.Name, text, findings) is not { } table
            || FixedColumns.Find(file.Name, table.Header, ColumnNames, findings) is not { } columns)
        {
            return;
        }

        foreach (CsvRow row in table.Rows)
            ReadRow(row);

        void ReadRow(CsvRow row)
        {
            int before = findings.Count;
            string outlet = Cell(Outlet);
            Refuse(Outlet, ValueReader.Id(outlet));
            Refuse(SlotColumn, ValueReader.Choice(Cell(SlotColumn), typeof(Slot), out object? slot));
            Refuse(Minutes, ValueReader.Whole(Cell(Minutes), 0, MaxMinutes, out long minutes));
            if (findings.Count > before)
                return;
            if (!draft.Labour.TryAdd((outlet, (Slot)slot!), new((int)minutes, file.Name, row.Line)))
            {
                Refuse(SlotColumn, new(
                    FindingCodes.DuplicateValue, "The outlet has this slot already. Leave one out."));
            }

            string Cell(string column) => row.Cells[columns[column]];

            void Refuse(string column, Refusal? refusal)
            {
                string cell = Cell(column);
                if (refusal is not null)
                    findings.Add(file.Name, row.Line, column, cell.Length == 0 ? null : cell, refusal);
            }
        }
    }
}
