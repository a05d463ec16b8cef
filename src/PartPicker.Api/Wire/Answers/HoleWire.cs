namespace PartPicker.Api.Wire;

/// <summary>One choice of preload twist: a spring hole, a pair of holes, or a setting of an adjuster.</summary>
internal sealed record HoleWire
{
    /// <summary>How a set names it: as stamped, "sheave-helix" for a pair, the degrees of a setting.</summary>
    public required string Name { get; init; }

    /// <summary>The hole of the sheave; null unless it is a pair.</summary>
    public required string? SheaveHole { get; init; }

    /// <summary>The hole of the helix; null unless it is a pair.</summary>
    public required string? HelixHole { get; init; }

    /// <summary>Preload twist in low gear, in degrees.</summary>
    public required double TwistDeg { get; init; }
}
