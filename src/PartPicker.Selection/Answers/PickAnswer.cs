using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>The ranked choices, and why the rest is not among them.</summary>
public sealed record PickAnswer
{
    /// <summary>What is fitted now, and what it does measured against the same target.</summary>
    public required FittedNow Fitted { get; init; }

    public required IReadOnlyList<Pick> Picks { get; init; }

    /// <summary>The parts that were refused before the search, by slot, part and rule.</summary>
    public required IReadOnlyList<Refusal> Refusals { get; init; }

    /// <summary>Refusals beyond those listed.</summary>
    public long RefusalsLeftOut { get; init; }

    /// <summary>Checks that could not be made because a number is missing.</summary>
    public required IReadOnlyList<NotChecked> NotChecked { get; init; }

    /// <summary>Checks that could not be made, beyond those listed.</summary>
    public long NotCheckedLeftOut { get; init; }

    /// <summary>What stands between the request and a set within tolerance; empty when one is among the picks.</summary>
    public required IReadOnlyList<Obstacle> InTheWay { get; init; }

    public required Work Work { get; init; }
}

/// <summary>The fitted set scored against the target.</summary>
public sealed record FittedNow(PartSet Parts, Prediction Prediction, double? Miss, bool WithinTolerance);

/// <summary>One ranked choice.</summary>
public sealed record Pick
{
    public required int Rank { get; init; }
    public required PartSet Parts { get; init; }
    public required Prediction Prediction { get; init; }

    /// <summary>Weighted root mean square of the errors in tolerances, rounded to a thousandth.</summary>
    public required double Miss { get; init; }

    /// <summary>True when no single error exceeds its tolerance.</summary>
    public required bool WithinTolerance { get; init; }

    /// <summary>The slots that differ from what is fitted.</summary>
    public required IReadOnlyList<Slot> Changes { get; init; }

    /// <summary>Price of what is not already fitted, in minor units; null when a price is not known.</summary>
    public required long? PriceMinor { get; init; }

    /// <summary>How the miss comes about: target, prediction, error and weight at each point.</summary>
    public required Explanation Explanation { get; init; }

    /// <summary>By how much each checked rule is kept.</summary>
    public required IReadOnlyList<FitMargin> FitMargins { get; init; }

    public required IReadOnlyList<Caution> Cautions { get; init; }
}

/// <summary>A named value and the named values that make it.</summary>
/// <param name="Name">What it is, in the words of the glossary.</param>
/// <param name="Value">Its value.</param>
/// <param name="Unit">Its unit; empty for a bare number.</param>
/// <param name="Sentence">How it is made of its parts, for a person.</param>
/// <param name="Parts">What it is made of.</param>
public sealed record Explanation(
    string Name, double Value, string Unit, string Sentence, IReadOnlyList<Explanation> Parts);

/// <summary>A warning that belongs beside every answer that leads to a wrench.</summary>
/// <param name="Signal">Signal word after ANSI Z535.4: WARNING, CAUTION or NOTICE.</param>
/// <param name="Sentence">What may happen, and what to do.</param>
public sealed record Caution(string Signal, string Sentence);

/// <summary>A part that does not fit, with the rule that says so.</summary>
/// <param name="Slot">Where it would go.</param>
/// <param name="Part">Its id, with the station masses or hole where they matter.</param>
/// <param name="Rule">Stable name of the rule.</param>
/// <param name="Measured">What the part has.</param>
/// <param name="Limit">What the machine allows.</param>
/// <param name="Sentence">The same for a person.</param>
public sealed record Refusal(Slot Slot, string Part, string Rule, Measure Measured, Measure Limit, string Sentence);

/// <summary>By how much a rule is kept; never negative.</summary>
public sealed record FitMargin(Slot Slot, string Part, string Rule, Measure Measured, Measure Limit, Measure Margin);

/// <summary>A rule that could not be checked.</summary>
public sealed record NotChecked(Slot Slot, string Part, string Rule, string Missing);

/// <summary>A value of a fit rule: SI with its dimension, or a bare number.</summary>
/// <param name="Value">The value; in SI where there is a dimension.</param>
/// <param name="Dimension">Null for a bare number (degrees, turns, a count).</param>
public readonly record struct Measure(double Value, UnitsNet.QuantityInfo? Dimension);

/// <summary>A rule or a target that stands in the way.</summary>
/// <param name="Rule">
/// Stable name: a fit rule, or "empty-pool", "launch-rpm", "does-not-shift", "slip-margin", "rev-limit",
/// "engagement", "shift-curve".
/// </param>
/// <param name="Count">How many parts or sets it refused; 0 for a target.</param>
/// <param name="Sentence">What stands in the way and by how much, for a person.</param>
public sealed record Obstacle(string Rule, long Count, string Sentence);

/// <summary>What the search did.</summary>
/// <param name="Combinations">Sets that fit, all of them covered.</param>
/// <param name="Predictions">Sets whose shift curve was computed.</param>
public sealed record Work(long Combinations, long Predictions);
