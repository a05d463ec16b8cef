namespace PartPicker.Api.Wire;

/// <summary>The last line of a bulk run; where it is missing, the answer was cut off.</summary>
internal sealed record BulkEndWire
{
    /// <summary>True: nothing follows.</summary>
    public required bool Done { get; init; }

    /// <summary>How many answers came before.</summary>
    public required int Count { get; init; }

    /// <summary>How many of them hold a problem.</summary>
    public required int Failed { get; init; }

    /// <summary>The last line of which every answer was given, to go on from with fromLine; null where there was none.</summary>
    public required long? LastLine { get; init; }

    /// <summary>Why lines were left unanswered; null where none were.</summary>
    public required ProblemWire? Problem { get; init; }
}
