using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>The same machine in several airs: the best set for each, and the best single one for all.</summary>
/// <param name="Conditions">In the order of the request.</param>
/// <param name="ForAll">The set whose greatest miss is the least; null where none shifts in every air.</param>
/// <param name="TimeWasUp">True when the clock ended one of the searches.</param>
public sealed record Season(IReadOnlyList<SeasonCondition> Conditions, SeasonSet? ForAll, bool TimeWasUp);

/// <summary>One air of a season.</summary>
/// <param name="Air">As it was named.</param>
/// <param name="TorqueFactor">What it makes of the torque in the standard air of the law.</param>
/// <param name="Best">The set that misses least here; null where none shifts.</param>
/// <param name="ForAll">The single set for all, as it does here.</param>
/// <param name="Proven">True when no other set does better here.</param>
public sealed record SeasonCondition(AirState Air, double TorqueFactor, Pick? Best, Pick? ForAll, bool Proven);

/// <summary>The best single set for all airs.</summary>
/// <param name="Miss">The greatest of its misses.</param>
/// <param name="WithinTolerance">True when no error exceeds its tolerance in any of them.</param>
/// <param name="Proven">True when no other set does better.</param>
public sealed record SeasonSet(PartSet Parts, double Miss, bool WithinTolerance, bool Proven);
