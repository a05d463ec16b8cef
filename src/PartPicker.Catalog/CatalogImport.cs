using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>Reads a catalog folder: everything, or nothing and every reason.</summary>
public static class CatalogImport
{
    public static ImportResult ReadFolder(string folder) => throw new NotSupportedException(folder);
}

/// <summary>The contents, or null and the findings that forbid them.</summary>
public sealed record ImportResult(CatalogContents? Contents, IReadOnlyList<ImportFinding> Findings);

/// <summary>What is wrong with a row, and where.</summary>
public sealed record ImportFinding(string File, int? Row, string? Column, string? Value, string Code, string Reason);
