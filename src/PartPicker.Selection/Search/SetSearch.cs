using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>Ranks every set of the pools: the same list, in the same order, as trying them all.</summary>
/// <remarks>
/// 1. Each drive spring with flyweights is computed once, and so is each driven choice: they meet only in the
///    balance. 2. Pairs are visited by rising |e₀|; the list holds the best sets so far. 3. A pair, and with it all
///    that follow, are skipped when none of its sets can be listed or be within tolerance: |e₀| exceeds 1, and either
///    √(w_e e₀²) alone, rounded, exceeds the rounded miss of the last one listed, or, by least work, the last one
///    listed is within tolerance. Safe, since the miss is never below that, a tie of rounded misses is not skipped,
///    and |e₀| only rises. 4. Every other set is scored at all K points.
/// </remarks>
internal sealed class SetSearch(
    Predictor predictor, PickRequest request, Score score, SetUp fitted, PurchasePlanner planner)
{
    /// <summary>Sets whose shift curve was computed.</summary>
    public long Predictions { get; private set; }

    /// <summary>Sets that were refused, by the rule of the request or of the model.</summary>
    public IReadOnlyDictionary<string, long> Refused => refused;

    /// <summary>Engagement that came nearest to the target; null when there is no drive pair.</summary>
    public double? NearestEngagementRpm { get; private set; }

    public Highlights Highlights { get; } = new();

    private readonly SortedDictionary<string, long> refused = new(StringComparer.Ordinal);
    private readonly RequestRules rules = new(predictor, request, score, planner);
    private readonly RankedList best = new(request.Count, new RankOrder(request.RankBy), request.Group);

    /// <summary>The best sets in their order, at most as many as asked for.</summary>
    public IReadOnlyList<RankedSet> Run(CandidatePools pools, CancellationToken cancellation)
    {
        DrivePair[] pairs = DrivePairs(pools, cancellation);
        DrivenSide[] driven = [.. pools.Driven.Select(predictor.Driven)];
        foreach (DrivePair pair in pairs)
        {
            if (CannotMatter(pair))
                break;
            for (int d = 0; d < driven.Length; d++)
            {
                cancellation.ThrowIfCancellationRequested();
                Try(pools, pair, driven[d], d);
            }
        }

        return best.Sets;
    }

    private bool CannotMatter(DrivePair pair) =>
        Math.Abs(pair.Error) > 1
        && best.Last is { } last
        && (request.RankBy == RankBy.Miss
            ? Score.Rounded(score.LeastMiss(pair.Error)) > last.RoundedMiss
            : last.WithinTolerance);

    private DrivePair[] DrivePairs(CandidatePools pools, CancellationToken cancellation)
    {
        var pairs = new List<DrivePair>();
        for (int s = 0; s < pools.DriveSprings.Count; s++)
        {
            for (int f = 0; f < pools.Flyweights.Count; f++)
            {
                cancellation.ThrowIfCancellationRequested();
                DriveSide side = predictor.Drive(pools.DriveSprings[s], pools.Flyweights[f]);
                if (!rules.Launches(side))
                {
                    Refuse(PoolRules.LaunchRpm, pools.Driven.Count);
                    continue;
                }

                double rpm = side.Engagement.Rpm;
                double error = score.EngagementError(rpm);
                if (NearestEngagementRpm is not { } nearest || Math.Abs(error) < Math.Abs(score.EngagementError(nearest)))
                    NearestEngagementRpm = rpm;
                pairs.Add(new DrivePair(s, f, side, error));
            }
        }

        return [.. pairs.OrderBy(p => Math.Abs(p.Error)).ThenBy(p => p.Spring).ThenBy(p => p.Flyweight)];
    }

    private void Try(CandidatePools pools, DrivePair pair, DrivenSide driven, int d)
    {
        Predictions++;
        Span<double> errors = stackalloc double[predictor.Model.Positions.Count];
        if (rules.TryErrors(pair.Side, driven, errors) is { } broken)
        {
            Refuse(broken);
            return;
        }

        double miss = score.Miss(pair.Error, errors);
        bool within = Score.WithinTolerance(pair.Error, errors);

        // The price decides only between sets that may be listed at all.
        if (!within && request.PriceCeilingMinor is null && !request.InStockOnly && request.RankBy == RankBy.Miss
            && Score.Rounded(miss) > best.Last?.RoundedMiss)
        {
            return;
        }

        var set = new SetUp(pools.DriveSprings[pair.Spring], pools.Flyweights[pair.Flyweight], pools.Driven[d]);
        if (rules.TryPrice(set, out long? price) is { } unaffordable)
        {
            Refuse(unaffordable);
            return;
        }

        var key = new RankKey(
            Score.Rounded(miss), within, set.ChangesFrom(fitted).Count, price, pair.Spring, pair.Flyweight, d);
        var ranked = new RankedSet(key, set, miss);
        best.Offer(ranked);
        Highlights.Offer(ranked);
    }

    private void Refuse(string rule, long count = 1) => refused[rule] = refused.GetValueOrDefault(rule) + count;

    private sealed record DrivePair(int Spring, int Flyweight, DriveSide Side, double Error);
}
