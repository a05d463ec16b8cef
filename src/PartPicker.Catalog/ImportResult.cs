using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>The contents, or null and the findings that forbid them.</summary>
public sealed record ImportResult(CatalogContents? Contents, IReadOnlyList<ImportFinding> Findings);
