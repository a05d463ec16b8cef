using System.Text;

namespace PartPicker.SampleCatalog;

/// <summary>One file of the catalog: rows made by hand, as they were written, then generated ones.</summary>
public sealed class CsvFile
{
    private static readonly char[] NeedQuotes = [',', '"', '\n'];
    private readonly StringBuilder text = new();
    private readonly string[] columns;
    private readonly List<string> ids = [];

    /// <param name="name">Path below the catalog folder; the rows made by hand have the same path.</param>
    public CsvFile(string name)
    {
        Name = name;
        using Stream stream = typeof(CsvFile).Assembly.GetManifestResourceStream(name)
            ?? throw new ArgumentException($"Nothing made by hand is named {name}; even no rows need a header.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        string handMade = reader.ReadToEnd().ReplaceLineEndings("\n");
        text.Append(handMade);
        string[] lines = handMade.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        columns = lines[0].Split(',');
        ids.AddRange(lines.Skip(1).Select(line => line.Split(',')[0]));
    }

    public string Name { get; }

    /// <summary>The first cell of every row: the id of a part, or of what an outlet sells.</summary>
    public IReadOnlyList<string> Ids => ids;

    public string Text => text.ToString();

    public void Add(Row row)
    {
        if (row.Cells.Keys.FirstOrDefault(c => !columns.Contains(c)) is { } unknown)
            throw new ArgumentException($"{Name} has no column {unknown}.");
        ids.Add(row.Cells[columns[0]]);
        text.AppendJoin(',', columns.Select(c => Quoted(row.Cells.GetValueOrDefault(c, "")))).Append('\n');
    }

    public void WriteBelow(string folder)
    {
        string path = Path.Combine(folder, Name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, Text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
    }

    private static string Quoted(string cell) =>
        cell.IndexOfAny(NeedQuotes) < 0 ? cell : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
