namespace PartPicker.Api.Wire;

/// <summary>A rule of fit and how often it could not be checked.</summary>
internal sealed record UnknownRuleWire
{
    /// <summary>Stable name of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>How often a value was missing.</summary>
    public required long Count { get; init; }
}
