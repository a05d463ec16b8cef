namespace PartPicker.Catalog;

/// <summary>The columns of a CSV file that holds no items: all are needed, in any order.</summary>
internal static class FixedColumns
{
    /// <summary>Where each column stands; null when one is missing, unknown or double.</summary>
    public static Dictionary<string, int>? Find(
        string file, CsvRow header, IReadOnlyList<string> names, Findings findings)
    {
        int before = findings.Count;
        var columns = new Dictionary<string, int>();
        for (int i = 0; i < header.Cells.Length; i++)
        {
            string name = header.Cells[i];
            if (!names.Contains(name))
                Refuse(name, FindingCodes.UnknownColumn, $"No such column. Known: {string.Join(", ", names)}.");
            else if (!columns.TryAdd(name, i))
                Refuse(name, FindingCodes.DuplicateColumn, "The column stands twice. Leave one out.");
        }

        foreach (string missing in names.Where(name => !columns.ContainsKey(name)))
            Refuse(missing, FindingCodes.MissingColumn, $"The column {missing} is needed.");
        return findings.Count == before ? columns : null;

        void Refuse(string column, string code, string reason) =>
            findings.Add(file, header.Line, column, null, new(code, reason));
    }
}
