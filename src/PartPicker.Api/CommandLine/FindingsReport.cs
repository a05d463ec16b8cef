using PartPicker.Catalog;

namespace PartPicker.Api.CommandLine;

/// <summary>Prints why a catalog was not imported.</summary>
internal static class FindingsReport
{
    /// <summary>Most findings that are printed; the rest is counted.</summary>
    public const int MaxPrinted = 100;

    public static void Print(string folder, ImportResult import, TextWriter to)
    {
        IReadOnlyList<ImportFinding> findings = import.Findings;
        to.WriteLine($"The catalog in {folder} was not imported; nothing was stored.");
        to.WriteLine($"Findings: {findings.Count}");
        foreach (ImportFinding finding in findings.Take(MaxPrinted))
            to.WriteLine("  " + Line(finding));
        if (findings.Count > MaxPrinted)
            to.WriteLine($"  and {findings.Count - MaxPrinted} more.");
        if (import.MoreMayFollow)
            to.WriteLine("What could not be read was not judged with the rest: more findings may follow.");
    }

    private static string Line(ImportFinding finding)
    {
        string row = finding.Row is { } number ? $", row {number}" : "";
        string column = finding.Column is { } name ? $", column {name}" : "";
        string value = finding.Value is { } sent ? $", value \"{sent}\"" : "";
        // What concerns the folder as a whole stands in no file.
        string place = finding.File.Length > 0 ? finding.File : "the folder";
        return $"{place}{row}{column}{value}: {finding.Reason}";
    }
}
