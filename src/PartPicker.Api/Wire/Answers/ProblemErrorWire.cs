namespace PartPicker.Api.Wire;

/// <summary>One fault of a request.</summary>
internal sealed record ProblemErrorWire
{
    /// <summary>
    /// JSON pointer (RFC 6901) into the body, empty for the whole body; or the name of a query parameter.
    /// </summary>
    public required string Pointer { get; init; }

    /// <summary>Stable word for machines.</summary>
    public required string Code { get; init; }

    /// <summary>What was sent: in a body its JSON, so that "7900" is a text and 7900 a number; cut where it is long, null when nothing was.</summary>
    public required string? Sent { get; init; }

    /// <summary>What was expected, for a person.</summary>
    public required string Expected { get; init; }
}
