using PartPicker.Catalog;

namespace PartPicker.Api.CommandLine;

/// <summary>Prints why a catalog was not imported.</summary>
internal static class FindingsReport
{
    /// <summary>Most findings that are printed; the rest is counted.</summary>
    public const int MaxPrinted = 100;

    public static void Print(string folder, IReadOnlyList<ImportFinding> findings, TextWriter to)
    {
        to.WriteLine($"The catalog in {folder} was not imported; nothing was stored.");
        to.WriteLine($"Findings: {findings.Count}");
        foreach (ImportFinding finding in findings.Take(MaxPrinted))
            to.WriteLine("  " + Line(finding));
        if (findings.Count > MaxPrinted)
            to.WriteLine($"  and {findings.Count - MaxPrinted} more.");
    }

    private static string Line(ImportFinding finding)
    {
        string row = finding.Row is { } number ? $", row {number}" : "";
        string column = finding.Column is { } name ? $", column {name}" : "";
        string value = finding.Value is { } sent ? $", value \"{sent}\"" : "";
        return $"{finding.File}{row}{column}{value}: {finding.Reason}";
    }
}
