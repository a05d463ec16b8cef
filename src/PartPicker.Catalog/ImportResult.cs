using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>The contents, or null and the findings that forbid them.</summary>
/// <param name="Contents">Null where there is a finding.</param>
/// <param name="Findings">Whatever can be told at once.</param>
/// <param name="MoreMayFollow">
/// True where something could not be read: only once it can will it be judged together with the rest.
/// </param>
public sealed record ImportResult(
    CatalogContents? Contents, IReadOnlyList<ImportFinding> Findings, bool MoreMayFollow);
