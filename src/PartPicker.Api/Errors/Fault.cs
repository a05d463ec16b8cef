namespace PartPicker.Api.Errors;

/// <summary>One fault of a request: where, which, what was sent and what was expected.</summary>
/// <param name="Code">Which.</param>
/// <param name="Pointer">
/// JSON pointer (RFC 6901) into the body, which is empty or begins with "/"; or the name of a query parameter.
/// </param>
/// <param name="Sent">What was sent, cut to a readable length; null when nothing was.</param>
/// <param name="Expected">What was expected, for a person.</param>
internal sealed record Fault(ErrorCode Code, string Pointer, string? Sent, string Expected)
{
    /// <summary>True for a fault in the query of the address.</summary>
    public bool InQuery => Pointer.Length > 0 && Pointer[0] != '/';
}
