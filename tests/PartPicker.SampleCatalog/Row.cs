using System.Globalization;

namespace PartPicker.SampleCatalog;

/// <summary>Cells by column. What is not set stays empty.</summary>
public sealed class Row
{
    private readonly Dictionary<string, string> cells = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<string, string> Cells => cells;

    internal string this[string column]
    {
        set => cells[column] = value;
    }

    internal void Set(string column, Written value) => cells[column] = value.Text;

    internal void Set(string column, double value) =>
        cells[column] = value.ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>A copy under another id, to be changed further.</summary>
    internal Row As(string id, string name)
    {
        var copy = new Row();
        foreach ((string column, string cell) in cells)
            copy.cells[column] = cell;
        copy["id"] = id;
        copy["name"] = name;
        return copy;
    }
}

/// <summary>A generated part and what a pack of it costs about, in euro.</summary>
internal sealed record SamplePart(Row Row, double Euro)
{
    public string Id => Row.Cells["id"];

    public bool Replaced => Row.Cells.ContainsKey("supersededBy");
}
