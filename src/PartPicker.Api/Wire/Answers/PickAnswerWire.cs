using PartPicker.Quantities;

namespace PartPicker.Api.Wire;

/// <summary>The ranked choices, and why the rest is not among them.</summary>
internal sealed record PickAnswerWire
{
    /// <summary>
    /// Hash of request, units, precision, catalog revision and model version: equal questions have equal ids.
    /// </summary>
    public required string Id { get; init; }

    /// <summary>The catalog that was searched.</summary>
    public required string CatalogRevision { get; init; }

    /// <summary>Version of the model and of the order.</summary>
    public required string ModelVersion { get; init; }

    /// <summary>The system that quantities are written in: metric or inch.</summary>
    [WordsOf(typeof(UnitSystem))]
    public required string Units { get; init; }

    /// <summary>Whether numbers are rounded or written in full.</summary>
    public required string Precision { get; init; }

    /// <summary>
    /// The request as understood, in SI, with everything filled in. Sent again it has the same id.
    /// </summary>
    public required PickRequestWire Request { get; init; }

    /// <summary>
    /// True where the model is tied to no measured run. No absolute rpm can be trusted then: engine speeds, their bands,
    /// power, vehicle speed and likelihood are null, change says what changes against what is fitted, and the explanation
    /// counts from there. Slip margins and inTheWay are those of the bare model.
    /// </summary>
    public required bool Relative { get; init; }

    /// <summary>What is fitted now, against the same target.</summary>
    public required FittedWire Fitted { get; init; }

    /// <summary>The choices, best first.</summary>
    public required IReadOnlyList<PickWire> Picks { get; init; }

    /// <summary>The cheapest choice within tolerance; null when there is none of known price.</summary>
    public required ShortPickWire? Cheapest { get; init; }

    /// <summary>The choice within tolerance that changes the fewest slots; null when none is within tolerance.</summary>
    public required ShortPickWire? FewestChanges { get; init; }

    /// <summary>Choices within tolerance that no other beats in miss, price and changes at once; provisional where the search is not proven.</summary>
    public required IReadOnlyList<ShortPickWire> Undominated { get; init; }

    /// <summary>How many undominated choices there are; more than are listed when the list was cut.</summary>
    public required int UndominatedCount { get; init; }

    /// <summary>When nothing is found: for each rule in the way, the closest sets if it alone were waived.</summary>
    public required IReadOnlyList<WaiverWire> Waivers { get; init; }

    /// <summary>
    /// How many rules in the way were not tried: eight are, those of the request first, then those that refused most.
    /// </summary>
    public required int WaiversLeftOut { get; init; }

    /// <summary>
    /// How many choices were not tried as alternates: 2000 are for each place in a set, evenly spaced over all that are in
    /// stock.
    /// </summary>
    public required long AlternatesLeftOut { get; init; }

    /// <summary>Replaced part numbers, the parts that were computed for them, and those that are sold today.</summary>
    public required IReadOnlyList<SupersessionWire> Superseded { get; init; }

    /// <summary>Parts that do not fit, each with its rule.</summary>
    public required IReadOnlyList<RefusalWire> Refusals { get; init; }

    /// <summary>How many more refusals there are than are listed.</summary>
    public required long RefusalsLeftOut { get; init; }

    /// <summary>How many candidates each rule refused, those left out of the list included.</summary>
    public required IReadOnlyList<RuleCountWire> RefusedByRule { get; init; }

    /// <summary>Rules whose break may do harm and that could not be checked because a value is missing.</summary>
    public required IReadOnlyList<NotCheckedWire> NotChecked { get; init; }

    /// <summary>How many more unchecked rules there are than are listed.</summary>
    public required long NotCheckedLeftOut { get; init; }

    /// <summary>How often each rule could not be checked, in all.</summary>
    public required IReadOnlyList<RuleCountWire> UnknownByRule { get; init; }

    /// <summary>
    /// What stands between the request and a set within tolerance; empty when there is such a set.
    /// </summary>
    public required IReadOnlyList<ObstacleWire> InTheWay { get; init; }

    /// <summary>What fits in each of the airs of conditions, and in all; null where the request names none.</summary>
    public required SeasonWire? Season { get; init; }

    /// <summary>What the search did.</summary>
    public required WorkWire Work { get; init; }
}
