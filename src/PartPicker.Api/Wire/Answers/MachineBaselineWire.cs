namespace PartPicker.Api.Wire;

/// <summary>A measured run: with these parts, in this air, it engaged and held these rpm.</summary>
internal sealed record MachineBaselineWire
{
    /// <summary>What was fitted.</summary>
    public required PartsWire Parts { get; init; }

    /// <summary>Engine speed at which the belt took hold.</summary>
    public required double? EngagementRpm { get; init; }

    /// <summary>Engine speed held through the whole shift; null where it was noted by ratio.</summary>
    public required double? ShiftRpm { get; init; }

    /// <summary>Engine speed held, by ratio; empty where one speed was noted.</summary>
    public required IReadOnlyList<RatioRpmWire> ShiftCurve { get; init; }

    /// <summary>Altitude of the run.</summary>
    public required QuantityWire Altitude { get; init; }

    /// <summary>Temperature of the air; null stands for the standard one of that altitude.</summary>
    public required QuantityWire? Temperature { get; init; }

    /// <summary>Relative humidity; null stands for dry air.</summary>
    public required QuantityWire? RelativeHumidity { get; init; }
}
