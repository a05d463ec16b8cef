namespace PartPicker.Catalog;

/// <summary>Why something is not taken: one of <see cref="FindingCodes"/>, and what to do.</summary>
internal sealed record Refusal(string Code, string Reason);
