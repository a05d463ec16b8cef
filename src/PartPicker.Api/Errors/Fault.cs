namespace PartPicker.Api.Errors;

/// <summary>One fault of a request: where, which, what was sent and what was expected.</summary>
/// <param name="Code">Which.</param>
/// <param name="Pointer">JSON pointer (RFC 6901) into the body; null when it is not in the body.</param>
/// <param name="Parameter">Name of the query parameter; null when it is in the body.</param>
/// <param name="Sent">What was sent, cut to a readable length; null when nothing was.</param>
/// <param name="Expected">What was expected, for a person.</param>
internal sealed record Fault(ErrorCode Code, string? Pointer, string? Parameter, string? Sent, string Expected);
