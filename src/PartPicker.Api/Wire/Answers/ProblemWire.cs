namespace PartPicker.Api.Wire;

/// <summary>Why a request was not served (RFC 9457), with every fault at once.</summary>
internal sealed record ProblemWire
{
    /// <summary>Where the code is explained, on this service.</summary>
    public required string Type { get; init; }

    /// <summary>What is wrong, without the details of the case.</summary>
    public required string Title { get; init; }

    /// <summary>The HTTP status.</summary>
    public required int Status { get; init; }

    /// <summary>The details of this case, for a person.</summary>
    public required string Detail { get; init; }

    /// <summary>Stable word for machines. Several kinds of fault together are invalid-request.</summary>
    public required string Code { get; init; }

    /// <summary>Each fault of the request; empty when the fault is not in a member or parameter.</summary>
    public required IReadOnlyList<ProblemErrorWire> Errors { get; init; }
}
