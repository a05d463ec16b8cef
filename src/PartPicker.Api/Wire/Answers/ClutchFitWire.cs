namespace PartPicker.Api.Wire;

/// <summary>A clutch that a part is listed for.</summary>
internal sealed record ClutchFitWire
{
    /// <summary>The clutch's id; it need not be in the catalog.</summary>
    public required string Clutch { get; init; }

    /// <summary>First model-year; null: open.</summary>
    public required int? FromYear { get; init; }

    /// <summary>Last model-year; null: open.</summary>
    public required int? ToYear { get; init; }
}
