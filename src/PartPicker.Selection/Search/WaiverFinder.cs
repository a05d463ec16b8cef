using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>When nothing is found: what would be, if one rule alone were waived.</summary>
/// <remarks>A rule that the model cannot do without is never waived; neither is a replaced part number.</remarks>
internal sealed class WaiverFinder(
    CatalogSnapshot catalog, PickRequest request, Predictor predictor, Score score, SetUp fitted)
{
    /// <summary>Most rules that are tried: those of the request first, then those that refused most.</summary>
    public const int MaxWaivers = 8;

    /// <summary>Sets shown for each waived rule.</summary>
    public const int SetsPerWaiver = 3;

    private static readonly HashSet<string> NeverWaived =
    [
        PoolRules.Superseded, PoolRules.DoesNotShift,
        .. DriveSpringRules.All.Where(r => r.NeededToCompute).Select(r => r.Name),
        .. FlyweightRules.All.Where(r => r.NeededToCompute).Select(r => r.Name),
        .. DrivenSpringRules.All.Where(r => r.NeededToCompute).Select(r => r.Name),
        .. DrivenSideRules.All.Where(r => r.NeededToCompute).Select(r => r.Name),
        .. HelixRules.All.Where(r => r.NeededToCompute).Select(r => r.Name),
    ];

    /// <summary>What would be found, and how many rules in the way were not tried.</summary>
    public (IReadOnlyList<Waiver> Waivers, int LeftOut) Find(
        CandidatePools pools, FitReport report, SetSearch search, CancellationToken cancellation, CancellationToken timeUp)
    {
        (string Rule, long Count)[] inTheWay =
        [
            .. report.ByRule(pools.InTheWay).Select(r => (r.Rule, r.Count))
                .Concat(search.Refused.Select(r => (Rule: r.Key, Count: r.Value)))
                .Where(r => !NeverWaived.Contains(r.Rule))
                .GroupBy(r => r.Rule, (rule, counts) => (Rule: rule, Count: counts.Sum(c => c.Count)))
                .OrderBy(r => RuleNames.IsOfRequest(r.Rule) ? 0 : 1)
                .ThenByDescending(r => r.Count).ThenBy(r => r.Rule, StringComparer.Ordinal),
        ];
        return (
            [
                .. inTheWay.Take(MaxWaivers)
                    .Select(r => new Waiver(r.Rule, r.Count, Sets(r.Rule, report, cancellation, timeUp)))
                    .Where(w => w.Sets.Count > 0),
            ],
            Math.Max(0, inTheWay.Length - MaxWaivers));
    }

    private WaivedSet[] Sets(string rule, FitReport said, CancellationToken cancellation, CancellationToken timeUp)
    {
        PickRequest relaxed = Relaxed(rule) with { Count = SetsPerWaiver };
        CandidatePools? pools = new PoolBuilder(
            catalog, predictor.Machine, fitted, relaxed, new FitReport(relaxed.DemandChecked), rule).Build([], cancellation);
        if (pools is null || pools.Empty)
            return [];
        SearchIndex index = SearchIndex.Build(pools, fitted, predictor.Machine, relaxed.PointCount, cancellation);
        var planner = new PurchasePlanner(catalog, relaxed, fitted);
        PriceFloors? floors = PriceFloors.Of(index, catalog, relaxed, planner, fitted);
        var search = new SetSearch(
            [new Condition(predictor, score)], relaxed, planner, index, floors, listOnly: true);
        return
        [
            .. search.Run(cancellation, timeUp).Select(set => new WaivedSet(
                set.Set.Ids, Score.Rounded(set.Miss) / 1000.0, set.Key.WithinTolerance, Broken(rule, set, said))),
        ];
    }

    private PickRequest Relaxed(string rule) => rule switch
    {
        PoolRules.LaunchRpm => request with { LaunchRpm = null },
        PoolRules.SlipMargin => request with { SlipMargin = null },
        PoolRules.PriceCeiling => request with { PriceCeilingMinor = null },
        PoolRules.InStock => request with { InStockOnly = false },
        FitReport.CheckedDemand => request with { DemandChecked = false },
        _ => request,
    };

    // A rule of fit speaks for each part that breaks it; a rule of the request for the whole set.
    private Refusal[] Broken(string rule, RankedSet set, FitReport said)
    {
        PartSet ids = set.Set.Ids;
        string[] names =
        [
            ids.DriveSpring, set.Set.Spring.Label, ids.Shims?.ShimId ?? "", ids.Flyweight, ids.DrivenSpring,
            set.Set.Driven.Label(predictor.Machine), ids.Helix,
        ];
        Refusal[] parts = [.. said.Refusals.Where(r => r.Rule == rule && names.Contains(r.Part))];
        return parts.Length > 0 ? parts : Whole(rule, set) is { } whole ? [whole] : [];
    }

    private Refusal? Whole(string rule, RankedSet set)
    {
        switch (rule)
        {
            case PoolRules.LaunchRpm when request.LaunchRpm is { } launch:
                double engagement = predictor.Drive(set.Set.Spring, set.Set.Flyweight).Engagement.Rpm;
                double least = launch + request.LaunchMarginRpm;
                return Of(Slot.DriveSpring, engagement, least, $"it engages at {Words.Rpm(engagement)}; at least {Words.Rpm(least)} is asked");
            case PoolRules.SlipMargin when request.SlipMargin is { } wanted:
                double margin = predictor.Predict(set.Set).Curve.Min(p => p.Upshift?.SlipMargin) ?? 0;
                return Of(Slot.DrivenSpring, margin, wanted, $"its least slip margin is {margin:0.00}; {wanted:0.00} is asked");
            case PoolRules.PriceCeiling when request.PriceCeilingMinor is { } ceiling && set.Key.PriceMinor is { } price:
                return Of(Slot.DriveSpring, price, ceiling, $"it costs {price} minor units; {ceiling} is the ceiling");
            default:
                return null;
        }

        Refusal Of(Slot slot, double measured, double limit, string sentence) =>
            new(slot, "set", rule, new Measure(measured, null), new Measure(limit, null), sentence);
    }
}
