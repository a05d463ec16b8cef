namespace PartPicker.Api.Wire;

/// <summary>The shift curve at one ratio, at full throttle.</summary>
internal sealed record PickPointWire
{
    /// <summary>Driven pitch radius over drive pitch radius.</summary>
    public required double Ratio { get; init; }

    /// <summary>Engine speed at which it shifts up here; null where it does not, or the answer is relative.</summary>
    public required double? UpshiftRpm { get; init; }

    /// <summary>
    /// Half width of the band around it, from the tolerances of springs, masses, belt friction and torque and
    /// from what the model misses of its measured run: about 19 in 20 machines lie within. Null where there is
    /// none; a caution says why.
    /// </summary>
    public required double? UpshiftBandRpm { get; init; }

    /// <summary>Engine speed at which it shifts back here; null where it does not, or the answer is relative.</summary>
    public required double? BackshiftRpm { get; init; }

    /// <summary>Wrap over active arc on the upshift; below 1 the belt slips.</summary>
    public required double? SlipMargin { get; init; }

    /// <summary>True when the belt slips on the upshift; null where it does not shift.</summary>
    public required bool? Slips { get; init; }

    /// <summary>Engine power on the upshift; null where it does not shift, or the answer is relative.</summary>
    public required QuantityWire? Power { get; init; }

    /// <summary>Speed of the vehicle on the upshift; null where it does not shift, or the answer is relative.</summary>
    public required QuantityWire? VehicleSpeed { get; init; }
}
