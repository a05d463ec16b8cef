namespace PartPicker.Catalog;

/// <summary>Why something is not taken: a code of <see cref="FindingCodes"/>, and a sentence with the remedy.</summary>
internal sealed record Refusal(string Code, string Reason);
