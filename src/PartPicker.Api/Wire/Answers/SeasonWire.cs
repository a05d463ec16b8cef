namespace PartPicker.Api.Wire;

/// <summary>The same machine in several airs: the best set of each, and the best single one for all.</summary>
internal sealed record SeasonWire
{
    /// <summary>The airs, in the order of the request.</summary>
    public required IReadOnlyList<SeasonConditionWire> Conditions { get; init; }

    /// <summary>The set whose greatest miss in any of the airs is the least; null where none shifts in all of them.</summary>
    public required SeasonSetWire? ForAll { get; init; }
}
