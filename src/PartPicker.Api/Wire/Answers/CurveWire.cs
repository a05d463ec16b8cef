namespace PartPicker.Api.Wire;

/// <summary>A curve, as points by rising x.</summary>
internal sealed record CurveWire
{
    /// <summary>Unit of x; empty where x is a bare number.</summary>
    public required string XUnit { get; init; }

    /// <summary>Unit of y; empty where y is a bare number.</summary>
    public required string YUnit { get; init; }

    /// <summary>Pairs of x and y.</summary>
    public required IReadOnlyList<IReadOnlyList<double>> Points { get; init; }
}
