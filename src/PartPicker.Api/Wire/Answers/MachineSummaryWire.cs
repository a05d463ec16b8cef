namespace PartPicker.Api.Wire;

/// <summary>A machine in a list.</summary>
internal sealed record MachineSummaryWire
{
    /// <summary>Unique in the catalog.</summary>
    public required string Id { get; init; }

    /// <summary>What a person calls it; may be empty.</summary>
    public required string Name { get; init; }

    /// <summary>
    /// True when the catalog knows what it was delivered with; otherwise a request brings the fitted set.
    /// </summary>
    public required bool FittedKnown { get; init; }

    /// <summary>How many measured runs the catalog holds; with none a request brings its own.</summary>
    public required int BaselineCount { get; init; }

    /// <summary>Names of the spring holes.</summary>
    public required IReadOnlyList<string> Holes { get; init; }
}
