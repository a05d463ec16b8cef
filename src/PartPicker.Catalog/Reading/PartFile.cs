using PartPicker.Parts;
using PartPicker.Quantities;

namespace PartPicker.Catalog;

/// <summary>A CSV file of parts of one kind; the header names fields of the registry.</summary>
internal static class PartFile
{
    public static void Read(FolderFile file, string? text, CatalogDraft draft)
    {
        ItemKind kind = file.Kind!.Value;
        CsvTable? table = text is null ? null : CsvTable.Read(file.Name, text, draft.Findings);
        if (table is not { Complete: true })
            draft.Lose([kind]);
        if (table is null)
            return;

        int afterLines = draft.Findings.Count;
        Column?[] columns = Columns(kind, file.Name, table.Header, draft.Findings);
        // With a column that was not understood no row is whole, though its other cells can be read.
        bool headerSound = draft.Findings.Count == afterLines;
        foreach (CsvRow row in table.Rows)
            draft.Add(Row(kind, file.Name, columns, headerSound, row, draft.Findings));
    }

    /// <summary>The field of each column; null where it cannot be told.</summary>
    private static Column?[] Columns(ItemKind kind, string file, CsvRow header, Findings findings)
    {
        IReadOnlyList<Field> fields = FieldRegistry.For(kind);
        var columns = new Column?[header.Cells.Length];
        var seen = new HashSet<string>();
        for (int i = 0; i < columns.Length; i++)
        {
            (string name, string? unit) = NameAndUnit(header.Cells[i]);
            Field? field = fields.FirstOrDefault(f => f.Name == name);
            Refusal? refusal = field is null ? UnknownColumn(fields)
                : !seen.Add(name) ? new(FindingCodes.DuplicateColumn, "The column stands twice. Leave one out.")
                : unit is null ? null
                : HeaderUnit(field, unit);
            if (refusal is not null)
                findings.Add(file, header.Line, header.Cells[i], null, refusal);
            if (refusal?.Code == FindingCodes.DuplicateColumn)
            {
                // Nobody can tell which of the two is meant.
                columns = Array.ConvertAll(columns, c => c?.Field == field ? null : c);
            }
            else if (refusal is null)
            {
                columns[i] = new Column(field!, unit);
            }
        }

        foreach (Field missing in fields.Where(f => f.Required && !seen.Contains(f.Name)))
        {
            findings.Add(file, header.Line, missing.Name, null, new(
                FindingCodes.MissingColumn, $"The column {missing.Name} is needed. {missing.Sentence}"));
        }

        return columns;
    }

    private static DraftItem Row(
        ItemKind kind, string file, Column?[] columns, bool headerSound, CsvRow row, Findings findings)
    {
        int before = findings.Count;
        CatalogItem item = FieldRegistry.Blank(kind);
        var written = new Dictionary<string, string>();
        for (int i = 0; i < columns.Length; i++)
        {
            if (columns[i] is not { } column)
                continue;
            string cell = row.Cells[i];
            if (cell.Length > 0)
            {
                written[column.Field.Name] = cell;
                item = WithCell(item, column, cell);
            }
            else if (column.Field.Required)
            {
                findings.Add(file, row.Line, column.Field.Name, null, new(
                    FindingCodes.MissingValue, $"A value is needed. {column.Field.Sentence}"));
            }
        }

        if (MakesMachines(kind))
            item = item with { Origins = OfASupplier(kind, written.Keys) };
        return new DraftItem(
            item, new ItemPlace(file, row.Line, Pointer: null), written, headerSound && findings.Count == before);

        CatalogItem WithCell(CatalogItem current, Column column, string cell)
        {
            WrittenValue taken = CsvTokens.Take(column.Field, column.Unit, cell);
            object? value = FieldReader.Read(column.Field, taken, (token, refusal) =>
                findings.Add(file, row.Line, token.Place, token.Written, refusal));
            return value is null ? current : column.Field.Set(current, value);
        }
    }

    /// <summary>Whether machines are made of this kind: then it must be told how its values are known.</summary>
    private static bool MakesMachines(ItemKind kind) =>
        FieldRegistry.For(ItemKind.Machine).Any(f => f.RefersTo == kind);

    /// <summary>What stands in a list of parts is what the supplier states.</summary>
    private static Dictionary<string, Origin> OfASupplier(ItemKind kind, IReadOnlyCollection<string> stated) =>
        FieldRegistry.For(kind)
            .Where(f => f.HasOrigin && stated.Contains(f.Name))
            .ToDictionary(f => f.Name, _ => Origin.Drawing);

    /// <summary>"rate [N/mm]" is the field rate in N/mm.</summary>
    private static (string Name, string? Unit) NameAndUnit(string header)
    {
        int open = header.IndexOf('[');
        return open > 0 && header.EndsWith(']')
            ? (header[..open].TrimEnd(), header[(open + 1)..^1].Trim())
            : (header, null);
    }

    private static Refusal? HeaderUnit(Field field, string unit)
    {
        if (field.Shape is not (FieldShape.Quantity or FieldShape.Quantities))
        {
            return new(
                FindingCodes.UnitInHeader,
                $"{field.Name} takes no unit in the header: "
                + (field.Shape is FieldShape.Curve or FieldShape.NamedCurves
                    ? "write units in the points."
                    : "its cells have none."));
        }

        return QuantityReader.Read(1, unit, field.Dimension!).Problem is { } problem
            ? new(FindingCodes.BadQuantity, problem)
            : null;
    }

    private static Refusal UnknownColumn(IReadOnlyList<Field> fields) => new(
        FindingCodes.UnknownColumn, $"No such column. Known: {string.Join(", ", fields.Select(f => f.Name))}.");

    private sealed record Column(Field Field, string? Unit);
}
