using PartPicker.Catalog;
using static PartPicker.Catalog.FindingCodes;
using static PartPicker.Tests.Catalog.BadRow;
using static PartPicker.Tests.Catalog.TestCatalog;

namespace PartPicker.Tests.Catalog;

/// <summary>What can be wrong with the files themselves, and the limits of the import.</summary>
internal static class BadFileRows
{
    private static readonly string LongName = new('n', ImportLimits.MaxCellLength + 1);
    private static readonly string LongLine = new(',', ImportLimits.MaxLineLength + 1);

    public static readonly Dictionary<string, BadRow> Cases = new()
    {
        ["a folder of nothing"] = new(c => c.Clear(), "", null, null, null, EmptyCatalog, "drive-springs.csv"),
        ["a file of an unknown name"] = new(c => c.Set("helixes.csv", "id\n"), "helixes.csv", null, null, null, UnknownFile, "helices.csv"),
        ["a folder of an unknown name"] = new(c => c.Set("machine/a.json", "{}"), "machine", null, null, null, UnknownFile, "machines"),
        ["a CSV file among the machines"] = new(c => c.Set("machines/belts.csv", "id\n"), "machines/belts.csv", null, null, null, UnknownFile, "*.json"),
        ["a spreadsheet among the outlets"] = new(c => c.Set("outlets/south.xlsx", "PK"), "outlets/south.xlsx", null, null, null, UnknownFile, "*.csv"),
        ["a folder below the machines"] = new(c => c.Set("machines/old/a.json", "{}"), "machines/old", null, null, null, UnknownFile, "*.json"),
        ["a file in UTF-16"] = new(c => c.Set(Helices, [0xFF, 0xFE, (byte)'i', 0]), Helices, null, null, null, NotUtf8, "Save it as UTF-8"),
        ["a file in UTF-16 without its mark"] = new(c => c.Set(Helices, [(byte)'i', 0, (byte)'d', 0]), Helices, null, null, null, NotUtf8, "Save it as UTF-8"),
        ["a file in a western code page"] = new(c => c.Set(Helices, [.. "id,name,helixDeg\nhx-two,Schr"u8, 0xE4, .. "g,45\n"u8]), Helices, 2, null, null, NotUtf8, "Save it as UTF-8"),
        ["a machine file in a western code page"] = new(c => c.Set("machines/b.json", [.. "{\n\"a"u8, 0xE4]), "machines/b.json", 2, null, null, NotUtf8, "Save it as UTF-8"),
        ["a file too large"] = new(
            c => c.Set(Helices, new string('\n', ImportLimits.MaxFileBytes + 1)),
            Helices, null, null, null, FileTooLarge, $"{ImportLimits.MaxFileBytes}"),
        ["a file of too many lines"] = new(
            c => c.Append(Helices, new string('\n', ImportLimits.MaxLines)),
            Helices, null, null, null, TooManyLines, $"{ImportLimits.MaxLines}"),
        ["a line too long"] = Helix(LongLine, null, new string(',', 120) + "…", LineTooLong, $"{ImportLimits.MaxLineLength}"),
        ["a cell too long"] = Helix($"hx-9,{LongName},40,,,,", null, $"hx-9,{LongName}"[..120] + "…", CellTooLong, $"{ImportLimits.MaxCellLength}"),
        ["a quoted cell too long"] = Helix($"hx-9,\"{LongName}\",40,,,,", null, $"hx-9,\"{LongName}"[..120] + "…", CellTooLong, $"{ImportLimits.MaxCellLength}"),
        ["more files than are read"] = new(
            c => Enumerable.Range(0, ImportLimits.MaxFiles).ToList().ForEach(i => c.Set($"machines/m{i}.json", "{}")),
            "", null, null, null, TooManyFiles, $"{ImportLimits.MaxFiles}"),
    };
}
