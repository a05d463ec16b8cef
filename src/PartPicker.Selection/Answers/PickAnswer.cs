using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>The ranked choices, and why the rest is not among them.</summary>
public sealed record PickAnswer
{
    /// <summary>True without a measured run: only the changes against the fitted set count, no absolute rpm does.</summary>
    public required bool Relative { get; init; }

    /// <summary>What is fitted now, and what it does measured against the same target.</summary>
    public required FittedNow Fitted { get; init; }

    public required IReadOnlyList<Pick> Picks { get; init; }

    /// <summary>The cheapest set within tolerance; null when there is none with a known price.</summary>
    public required Pick? Cheapest { get; init; }

    /// <summary>The set within tolerance that changes the fewest slots; null when none is within tolerance.</summary>
    public required Pick? FewestChanges { get; init; }

    /// <summary>
    /// The sets within tolerance that no other beats in miss, price and changes at once; the first of equals by the
    /// order of answers; at most <see cref="MaxUndominated"/>.
    /// </summary>
    public required IReadOnlyList<Pick> Undominated { get; init; }

    /// <summary>How many undominated sets there are; more than listed when the list was cut.</summary>
    public required int UndominatedCount { get; init; }

    /// <summary>When nothing fits: for each rule that emptied a pool, the closest sets if it alone were waived.</summary>
    public required IReadOnlyList<Waiver> Waivers { get; init; }

    /// <summary>Rules in the way that were not tried, beyond the limit of <see cref="WaiverFinder.MaxWaivers"/>.</summary>
    public int WaiversLeftOut { get; init; }

    /// <summary>Choices that were not tried as alternates, beyond the limit of <see cref="AlternateFinder.MaxTried"/>.</summary>
    public long AlternatesLeftOut { get; init; }

    /// <summary>Replaced part numbers of the request and what they led to.</summary>
    public required IReadOnlyList<Supersession> Superseded { get; init; }

    /// <summary>The same hardware in several airs; null where none were named.</summary>
    public Season? Season { get; init; }

    public const int MaxUndominated = 20;

    /// <summary>The parts that were refused before the search, by slot, part and rule.</summary>
    public required IReadOnlyList<Refusal> Refusals { get; init; }

    /// <summary>Refusals beyond those listed.</summary>
    public long RefusalsLeftOut { get; init; }

    /// <summary>How many candidates each rule refused, those left out of the list included.</summary>
    public required IReadOnlyDictionary<string, long> RefusedByRule { get; init; }

    /// <summary>Checks that could not be made although a break would matter: solid length and twist limit, part by part.</summary>
    public required IReadOnlyList<NotChecked> NotChecked { get; init; }

    /// <summary>Checks that could not be made, beyond those listed.</summary>
    public long NotCheckedLeftOut { get; init; }

    /// <summary>How often each rule of fit could not be checked, the named ones included.</summary>
    public required IReadOnlyDictionary<string, long> UnknownByRule { get; init; }

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

    /// <summary>What changes against the fitted set; null where the model is tied to a measured run.</summary>
    public required SetChange? Change { get; init; }

    /// <summary>Weighted root mean square of the errors in tolerances, rounded to a thousandth.</summary>
    public required double Miss { get; init; }

    /// <summary>True when no single error exceeds its tolerance.</summary>
    public required bool WithinTolerance { get; init; }

    /// <summary>Share of the inputs' limits for which every error stays within its tolerance; null without a measured run, and beside the list, where no pick has bands.</summary>
    public double? Likelihood { get; init; }

    /// <summary>The slots that differ from what is fitted.</summary>
    public required IReadOnlyList<Slot> Changes { get; init; }

    /// <summary>Price of what is not already fitted, in minor units; null when a price is not known.</summary>
    public required long? PriceMinor { get; init; }

    /// <summary>What to buy for it, kits before single parts; empty without an outlet.</summary>
    public required IReadOnlyList<Purchase> ToBuy { get; init; }

    /// <summary>
    /// The station masses that differ from what is fitted, another body starting with empty stations. They are no parts
    /// of the catalog: neither price nor stock counts them.
    /// </summary>
    public required IReadOnlyList<MassToFit> MassesToFit { get; init; }

    /// <summary>Minutes of work at this outlet; null when a changed slot has none stated.</summary>
    public required int? LabourMinutes { get; init; }

    /// <summary>How the miss comes about: target, prediction, error and weight at each point.</summary>
    public required Explanation Explanation { get; init; }

    /// <summary>By how much each checked rule is kept.</summary>
    public required IReadOnlyList<FitMargin> FitMargins { get; init; }

    /// <summary>Rules that stand on the supplier's list, or on nothing: never counted as checked.</summary>
    public required IReadOnlyList<FitGap> FitGaps { get; init; }

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

/// <summary>By how much a rule is kept; never negative, and null where the two must be the same, which leaves no room.</summary>
public sealed record FitMargin(Slot Slot, string Part, string Rule, Measure Measured, Measure Limit, Measure? Margin);

/// <summary>A rule that could not be checked.</summary>
public sealed record NotChecked(Slot Slot, string Part, string Rule, string Missing);

/// <summary>A value of a fit rule: SI with its dimension, or a bare number.</summary>
/// <param name="Value">The value; in SI where there is a dimension.</param>
/// <param name="Dimension">Null for a bare number (degrees, turns, a count).</param>
public readonly record struct Measure(double Value, UnitsNet.QuantityInfo? Dimension);

/// <summary>A rule or a target that stands in the way.</summary>
/// <param name="Rule">Stable name: one of <see cref="RuleNames.Obstacles"/>.</param>
/// <param name="Count">How many parts or sets it refused; 0 for a target.</param>
/// <param name="Sentence">What stands in the way and by how much, for a person.</param>
public sealed record Obstacle(string Rule, long Count, string Sentence);

/// <summary>What the search did.</summary>
/// <param name="Combinations">Sets that fit.</param>
/// <param name="Predictions">Sets whose shift curve was computed; all others were told by bounds.</param>
/// <param name="Proven">True when the list is exact; false when the work limit or the clock ended the search.</param>
/// <param name="LeastMissLeft">
/// Where not proven: no set that was left misses by less, so what is listed below it is final. Null where proven.
/// </param>
/// <param name="TimeWasUp">True when the clock ended the search: asked again, it may come further.</param>
public sealed record Work(long Combinations, long Predictions, bool Proven, double? LeastMissLeft, bool TimeWasUp);

/// <summary>A rule that a part was not measured by.</summary>
/// <param name="Ground">Listed by the supplier for this clutch, or unknown.</param>
/// <param name="Missing">The number that is missing.</param>
public sealed record FitGap(Slot Slot, string Part, string Rule, FitGround Ground, string Missing);

/// <summary>What a judgement of fit stands on.</summary>
public enum FitGround
{
    /// <summary>Compared by dimension.</summary>
    Checked,

    /// <summary>The supplier lists the part for this clutch in every year of the machine.</summary>
    Listed,

    /// <summary>Nothing is known.</summary>
    Unknown,
}

/// <summary>One line of a shopping list.</summary>
/// <param name="Id">A part or a kit.</param>
/// <param name="Packs">Packs of it.</param>
/// <param name="PriceMinor">Price of all these packs; null when not known.</param>
/// <param name="Stock">Packs in stock; null when not known.</param>
/// <param name="Covers">The changed slots that it serves.</param>
/// <param name="Alternate">When it is out of stock: what the stock has in its place; null otherwise.</param>
public sealed record Purchase(
    string Id, int Packs, long? PriceMinor, int? Stock, IReadOnlyList<Slot> Covers, Alternate? Alternate);

/// <summary>
/// The same set bought another way, or the set that comes closest with another choice in the one slot of the line; with
/// another driven spring, in any hole.
/// </summary>
/// <param name="ToBuy">What to buy from stock for the slots of the line.</param>
public sealed record Alternate(PartSet Parts, double Miss, bool WithinTolerance, IReadOnlyList<Purchase> ToBuy);

/// <summary>A mass to put into a station of every arm.</summary>
/// <param name="MassKg">Mass in one arm; 0 where what is fitted comes out.</param>
/// <param name="Pieces">One for each arm.</param>
public sealed record MassToFit(StationName Station, double MassKg, int Pieces);

/// <summary>A rule that empties a pool, and what would be found without it.</summary>
/// <param name="Rule">Stable name of the rule.</param>
/// <param name="Refused">How many candidates it refused.</param>
/// <param name="Sets">The closest sets if this rule alone were waived, with the refusals that were waived for them.</param>
public sealed record Waiver(string Rule, long Refused, IReadOnlyList<WaivedSet> Sets);

/// <summary>A set that breaks one waived rule, and by how much.</summary>
public sealed record WaivedSet(PartSet Parts, double Miss, bool WithinTolerance, IReadOnlyList<Refusal> Broken);

/// <summary>A replaced part number of a request.</summary>
/// <param name="Place">Where it was named.</param>
/// <param name="Sent">The replaced number.</param>
/// <param name="Used">The part that was computed: itself, or where too little is known of it what replaced it.</param>
/// <param name="Successor">What is sold in its place today.</param>
public sealed record Supersession(string Place, string Sent, string Used, string Successor);
