namespace PartPicker.Api.Wire;

/// <summary>A curve and the step of an adjuster that it belongs to.</summary>
internal sealed record NamedCurveWire
{
    /// <summary>The step, as stamped.</summary>
    public required string Name { get; init; }

    /// <summary>The curve.</summary>
    public required CurveWire Curve { get; init; }
}
