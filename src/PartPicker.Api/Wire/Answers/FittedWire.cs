namespace PartPicker.Api.Wire;

/// <summary>What is fitted now, against the same target.</summary>
internal sealed record FittedWire
{
    /// <summary>The parts.</summary>
    public required PartsWire Parts { get; init; }

    /// <summary>Engine speed at which the belt takes hold; null where another device starts the machine, or the answer is relative.</summary>
    public required double? EngagementRpm { get; init; }

    /// <summary>
    /// Half width of the band around it, from the tolerances of springs, masses, belt friction and torque: about 19 in
    /// 20 machines lie within. Null where there is none.
    /// </summary>
    public required double? EngagementBandRpm { get; init; }

    /// <summary>Engine speed at full shift; null where it does not shift there, or the answer is relative.</summary>
    public required double? ShiftOutRpm { get; init; }

    /// <summary>From low gear to full shift.</summary>
    public required IReadOnlyList<PickPointWire> Curve { get; init; }

    /// <summary>
    /// Weighted root mean square of the errors, in tolerances; null where it does not shift.
    /// </summary>
    public required double? Miss { get; init; }

    /// <summary>True when no single error exceeds its tolerance.</summary>
    public required bool WithinTolerance { get; init; }

    /// <summary>True when the model is tied to a measured run of this machine.</summary>
    public required bool Anchored { get; init; }
}
