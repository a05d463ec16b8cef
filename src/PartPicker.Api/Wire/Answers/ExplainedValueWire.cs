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

    /// <summary>Name of the relation that makes it; null for an input.</summary>
    public required string? Relation { get; init; }

    /// <summary>The relation in plain characters; null for an input.</summary>
    public required string? Equation { get; init; }

    /// <summary>
    /// Key of its source, which stands on /docs/sources at the anchor of the key with - for each blank; null for an input
    /// and for what is derived.
    /// </summary>
    public required string? Source { get; init; }

    /// <summary>Where the service explains the relation; null for an input.</summary>
    public required string? Page { get; init; }

    /// <summary>
    /// What it is made of. A value with a relation and no parts is taken apart elsewhere: where its name first stands in
    /// the same tree, or in a tree of its own, where explain can ask for its name.
    /// </summary>
    public required IReadOnlyList<ExplainedValueWire> Parts { get; init; }
}
