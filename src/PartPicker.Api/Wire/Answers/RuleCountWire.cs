namespace PartPicker.Api.Wire;

/// <summary>A rule of fit and how often it spoke.</summary>
internal sealed record RuleCountWire
{
    /// <summary>Stable name of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>How often.</summary>
    public required long Count { get; init; }
}
