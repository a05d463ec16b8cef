namespace PartPicker.Api.Wire;

/// <summary>A number of a prediction with the relation and the numbers that make it.</summary>
internal sealed record ExplainedValueWire
{
    /// <summary>What it is; of an input, the piece and its field.</summary>
    public required string Name { get; init; }

    /// <summary>Its value.</summary>
    public required double Value { get; init; }

    /// <summary>Its unit; empty for a bare number.</summary>
    public required string Unit { get; init; }

    /// <summary>Name of the relation, as on a page of docs/model; null for an input.</summary>
    public required string? Relation { get; init; }

    /// <summary>The relation in plain characters; null for an input.</summary>
    public required string? Equation { get; init; }

    /// <summary>Key of the source in docs/sources.md; null for an input and for what is derived.</summary>
    public required string? Source { get; init; }

    /// <summary>What it is made of.</summary>
    public required IReadOnlyList<ExplainedValueWire> Parts { get; init; }
}
