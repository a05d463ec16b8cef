namespace PartPicker.Selection;

/// <summary>A name that an answer may say a rule or a target by, with one sentence for a person.</summary>
public sealed record RuleName(string Name, string Meaning);

/// <summary>Every name of a rule or a target that an answer may say, each with its sentence.</summary>
public static class RuleNames
{
    /// <summary>What a part or a set must keep to fit.</summary>
    public static readonly IReadOnlyList<RuleName> OfFit =
    [
        .. Of(DriveSpringRules.All), .. Of(ShimRules.All), .. Of(FlyweightRules.All), .. Of(StationRules.All),
        .. Of(DrivenSpringRules.All), .. Of(DrivenSideRules.All), .. Of(HelixRules.All),
    ];

    /// <summary>How a request narrows what fits.</summary>
    public static readonly IReadOnlyList<RuleName> OfRequest =
    [
        new(PoolRules.Superseded, "A replaced part number is not proposed, unless it is what is fitted. A fitted number of which enough is known is computed as it is; else its successor is, and the answer says so."),
        new(PoolRules.Excluded, "The part is not one that the request excludes."),
        new(PoolRules.InStock, "The outlet has enough of it, alone or in a kit, where only stock is wanted."),
        new(PoolRules.PriceCeiling, "The price of the change is known and no higher than the ceiling."),
        new(FitReport.CheckedDemand, "Every rule can be checked by dimension, where that is demanded."),
        new(PoolRules.LaunchRpm, "The belt takes hold above the launch rpm by the margin that is asked."),
        new(PoolRules.DoesNotShift, "The set shifts at every ratio below the rev limit."),
        new(PoolRules.SlipMargin, "The slip margin on the upshift curve is at least the one that is asked."),
    ];

    /// <summary>What keeps a target from being met though sets fit, or leaves no set at all.</summary>
    public static readonly IReadOnlyList<RuleName> OfTarget =
    [
        new(TargetRules.WorkLimit, "The search was ended before it had covered every set."),
        new(TargetRules.EmptyPool, "For one slot no part is left; the rules that refused its parts follow."),
        new(TargetRules.RevLimit, "The target asks for more rpm than the engine is limited to."),
        new(TargetRules.Engagement, "No drive spring with flyweights that may be fitted, what is kept among them, engages within tolerance; or none does that also holds the shift curve."),
        new(TargetRules.ShiftCurve, "The closest set still misses the shift curve; the sentence names the ratio where it misses most."),
    ];

    /// <summary>The closed list of what may stand in the way of a request.</summary>
    public static readonly IReadOnlyList<RuleName> Obstacles = [.. OfTarget, .. OfRequest, .. OfFit];

    internal static bool IsOfRequest(string rule) => OfRequest.Any(r => r.Name == rule);

    private static IEnumerable<RuleName> Of<T>(IReadOnlyList<FitRule<T>> rules) =>
        rules.Select(r => new RuleName(r.Name, r.Meaning));
}

/// <summary>What stands in the way beside rules.</summary>
internal static class TargetRules
{
    public const string WorkLimit = "work-limit";
    public const string EmptyPool = "empty-pool";
    public const string RevLimit = "rev-limit";
    public const string Engagement = "engagement";
    public const string ShiftCurve = "shift-curve";
}
