namespace PartPicker.Api.Wire;

/// <summary>A named value and the named values that make it.</summary>
internal sealed record ExplanationWire
{
    /// <summary>What it is.</summary>
    public required string Name { get; init; }

    /// <summary>Its value.</summary>
    public required double Value { get; init; }

    /// <summary>Its unit; empty for a bare number.</summary>
    public required string Unit { get; init; }

    /// <summary>How it is made of its parts.</summary>
    public required string Sentence { get; init; }

    /// <summary>What it is made of.</summary>
    public required IReadOnlyList<ExplanationWire> Parts { get; init; }
}
