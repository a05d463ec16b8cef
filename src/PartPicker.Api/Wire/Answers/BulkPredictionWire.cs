namespace PartPicker.Api.Wire;

/// <summary>An answer of a bulk run; either result or problem stands in it.</summary>
internal sealed record BulkPredictionWire
{
    /// <summary>The line of the body that is answered, from 1.</summary>
    public required long Line { get; init; }

    /// <summary>The id of that line; null where it has none.</summary>
    public required BulkIdWire? Id { get; init; }

    /// <summary>Which point of the grid, from 1; only where the line has axes.</summary>
    public int? Point { get; init; }

    /// <summary>How many points the grid has; only where the line has axes.</summary>
    public int? Points { get; init; }

    /// <summary>The values of this point by the pointer of their member; only where the line has axes.</summary>
    public IReadOnlyDictionary<string, AnyValueWire>? Axes { get; init; }

    /// <summary>200, or the status of the problem.</summary>
    public required int Status { get; init; }

    /// <summary>The answer, byte for byte that of the address for one.</summary>
    public PredictionWire? Result { get; init; }

    /// <summary>Why there is no answer. Pointers count from request, those to members of the line itself from the line.</summary>
    public ProblemWire? Problem { get; init; }
}
