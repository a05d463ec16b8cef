namespace PartPicker.Catalog;

/// <summary>What is wrong with a row, and where.</summary>
/// <param name="File">Path below the catalog folder, with forward slashes.</param>
/// <param name="Row">
/// Line in the file as a person sees it, from 1. Null where the place is a JSON pointer, or the whole file.
/// </param>
/// <param name="Column">The CSV column, or the JSON pointer; null where the whole row or file is meant.</param>
/// <param name="Value">As it is written there; null where nothing is.</param>
/// <param name="Code">One of <see cref="FindingCodes"/>.</param>
/// <param name="Reason">What is wrong and what to do, for a person.</param>
public sealed record ImportFinding(
    string File, int? Row, string? Column, string? Value, string Code, string Reason);
