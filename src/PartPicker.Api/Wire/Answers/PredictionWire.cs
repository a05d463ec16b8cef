using PartPicker.Quantities;

namespace PartPicker.Api.Wire;

/// <summary>What one set does on one machine at full throttle.</summary>
internal sealed record PredictionWire
{
    /// <summary>The catalog that the values came from.</summary>
    public required string CatalogRevision { get; init; }

    /// <summary>Version of the model.</summary>
    public required string ModelVersion { get; init; }

    /// <summary>The system that quantities are written in: metric or inch.</summary>
    [WordsOf(typeof(UnitSystem))]
    public required string Units { get; init; }

    /// <summary>Whether numbers are rounded or written in full.</summary>
    public required string Precision { get; init; }

    /// <summary>The machine.</summary>
    public required NamedIdWire Machine { get; init; }

    /// <summary>The set.</summary>
    public required PartsWire Parts { get; init; }

    /// <summary>Where and how warm it runs.</summary>
    public required AirWire Air { get; init; }

    /// <summary>
    /// True when the model is tied to a measured run; without one the curve is qualitative in low gear.
    /// </summary>
    public required bool Anchored { get; init; }

    /// <summary>How it is tied; null when it is not.</summary>
    public required AnchoringWire? Anchoring { get; init; }

    /// <summary>Engine speed at which the belt takes hold; null where another device starts the machine.</summary>
    public required double? EngagementRpm { get; init; }

    /// <summary>
    /// Half width of the band around it, from the tolerances of springs, masses, belt friction and torque: about 19 in
    /// 20 machines lie within. Null where there is none.
    /// </summary>
    public required double? EngagementBandRpm { get; init; }

    /// <summary>The sheave travel that decides engagement.</summary>
    public required QuantityWire EngagementTravel { get; init; }

    /// <summary>
    /// Engine speed at which the drive clutch stops slipping in low gear; up to there the launch slips by design. Null
    /// where lockUpReason says why.
    /// </summary>
    public required double? LockUpRpm { get; init; }

    /// <summary>Why there is no lock-up; null where there is.</summary>
    public required string? LockUpReason { get; init; }

    /// <summary>Engine speed at full shift; null where it does not shift there.</summary>
    public required double? ShiftOutRpm { get; init; }

    /// <summary>Engine speed of the greatest power in this air.</summary>
    public required double PeakPowerRpm { get; init; }

    /// <summary>The greatest power in this air.</summary>
    public required QuantityWire PeakPower { get; init; }

    /// <summary>Torque in this air over torque at sea level.</summary>
    public required double TorqueFactor { get; init; }

    /// <summary>Replaced part numbers, the parts that were computed for them, and those that are sold today.</summary>
    public required IReadOnlyList<SupersessionWire> Superseded { get; init; }

    /// <summary>From low gear to full shift.</summary>
    public required IReadOnlyList<ShiftPointWire> Curve { get; init; }

    /// <summary>
    /// What changes against the set that the machine was delivered with; null where the model is tied to a measured run, or
    /// where the catalog has no such set that can be computed.
    /// </summary>
    public required ChangeWire? Change { get; init; }

    /// <summary>What the helix does under reverse power; null where its reverse angle is not known.</summary>
    public required ReverseClampWire? Reverse { get; init; }

    /// <summary>What one step of each input changes, all else held: a tuner's numbers.</summary>
    public required IReadOnlyList<SensitivityWire> Sensitivities { get; init; }

    /// <summary>The numbers that explain asked for, in that order; one that the prediction lacks is left out.</summary>
    public required IReadOnlyList<ExplainedValueWire> Explanations { get; init; }

    /// <summary>Warnings that belong beside the answer.</summary>
    public required IReadOnlyList<CautionWire> Cautions { get; init; }

    /// <summary>What the model does not know.</summary>
    public required IReadOnlyList<string> Limits { get; init; }
}
