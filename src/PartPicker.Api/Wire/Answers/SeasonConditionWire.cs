namespace PartPicker.Api.Wire;

/// <summary>One air of a season.</summary>
internal sealed record SeasonConditionWire
{
    /// <summary>The air as understood.</summary>
    public required AirWire Air { get; init; }

    /// <summary>What this air makes of the torque in the standard air of the law.</summary>
    public required double TorqueFactor { get; init; }

    /// <summary>The set that misses least in this air; null where none shifts. It has no bands and no likelihood.</summary>
    public required PickWire? Best { get; init; }

    /// <summary>The single set for all airs as it does in this one; null where there is none.</summary>
    public required PickWire? ForAll { get; init; }

    /// <summary>True when no other set misses by less in this air; false when the work limit or the clock ended its search.</summary>
    public required bool Proven { get; init; }
}
