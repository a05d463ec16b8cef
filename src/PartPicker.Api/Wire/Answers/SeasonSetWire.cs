namespace PartPicker.Api.Wire;

/// <summary>The best single set for all airs of a season.</summary>
internal sealed record SeasonSetWire
{
    /// <summary>The set.</summary>
    public required PartsWire Parts { get; init; }

    /// <summary>The greatest of its misses.</summary>
    public required double Miss { get; init; }

    /// <summary>True when no single error exceeds its tolerance in any of the airs.</summary>
    public required bool WithinTolerance { get; init; }

    /// <summary>True when no other set does better; false when the work limit or the clock ended its search.</summary>
    public required bool Proven { get; init; }
}
