namespace PartPicker.Api.Wire;

/// <summary>A spring hole, as stamped.</summary>
internal sealed record HoleWire
{
    /// <summary>The name that is stamped beside it.</summary>
    public required string Name { get; init; }

    /// <summary>Preload twist in low gear, in degrees.</summary>
    public required double TwistDeg { get; init; }
}
