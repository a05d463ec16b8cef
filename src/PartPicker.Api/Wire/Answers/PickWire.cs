using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>One ranked choice.</summary>
internal sealed record PickWire
{
    /// <summary>1 is the best.</summary>
    public required int Rank { get; init; }

    /// <summary>The parts.</summary>
    public required PartsWire Parts { get; init; }

    /// <summary>The slots that differ from what is fitted.</summary>
    [WordsOf(typeof(Slot))]
    public required IReadOnlyList<string> Changes { get; init; }

    /// <summary>Engine speed at which the belt takes hold; null where another device starts the machine, or the answer is relative.</summary>
    public required double? EngagementRpm { get; init; }

    /// <summary>
    /// Half width of the band around it, from the tolerances of springs, masses, belt friction and torque: about 19 in
    /// 20 machines lie within. Null where there is none; a caution says why.
    /// </summary>
    public required double? EngagementBandRpm { get; init; }

    /// <summary>Engine speed at full shift; null where it does not shift there, or the answer is relative.</summary>
    public required double? ShiftOutRpm { get; init; }

    /// <summary>From low gear to full shift.</summary>
    public required IReadOnlyList<PickPointWire> Curve { get; init; }

    /// <summary>What changes against what is fitted, where the answer is relative; null else.</summary>
    public required ChangeWire? Change { get; init; }

    /// <summary>Weighted root mean square of the errors, in tolerances.</summary>
    public required double Miss { get; init; }

    /// <summary>True when no single error exceeds its tolerance.</summary>
    public required bool WithinTolerance { get; init; }

    /// <summary>
    /// Share of the machines, parts within their tolerances, for which no single error exceeds its tolerance; null
    /// where a number has no band, as a caution says, or the answer is relative.
    /// </summary>
    public required double? Likelihood { get; init; }

    /// <summary>True when the model is tied to a measured run of this machine.</summary>
    public required bool Anchored { get; init; }

    /// <summary>Price of what is not already fitted; null when a price is not known.</summary>
    public required PriceWire? Price { get; init; }

    /// <summary>What to buy for it, for the least money; empty without an outlet.</summary>
    public required IReadOnlyList<PurchaseWire> ToBuy { get; init; }

    /// <summary>
    /// Station masses that differ from what is fitted; another body starts with empty stations. They are no parts of the
    /// catalog: neither price, stock nor toBuy counts them.
    /// </summary>
    public required IReadOnlyList<MassToFitWire> MassesToFit { get; init; }

    /// <summary>Minutes of work at the outlet; null when a changed slot has none stated.</summary>
    public required int? LabourMinutes { get; init; }

    /// <summary>How the miss comes about.</summary>
    public required ExplanationWire Explanation { get; init; }

    /// <summary>By how much each checked rule is kept.</summary>
    public required IReadOnlyList<FitMarginWire> FitMargins { get; init; }

    /// <summary>Rules that its parts were not measured by, and whether the supplier's list stands in.</summary>
    public required IReadOnlyList<FitGapWire> FitGaps { get; init; }

    /// <summary>Warnings that belong beside the answer.</summary>
    public required IReadOnlyList<CautionWire> Cautions { get; init; }
}
