using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>Ranks every set of the pools: the same list, in the same order, as trying them all.</summary>
/// <remarks>
/// 1. Each drive spring with flyweights is computed once, and so is each driven choice: they meet only in the
///    balance. 2. Pairs are visited by rising |e₀|; the list holds the best sets so far. 3. A pair, and with it
///    all that follow, is skipped when √(w_e e₀²) alone, rounded, exceeds the rounded miss of the last one listed.
///    Safe, since the miss is never below that and a tie of rounded misses is not skipped. 4. Every other set is
///    scored at all K points.
/// </remarks>
internal sealed class SetSearch(Predictor predictor, PickRequest request, Score score, SetUp fitted)
{
    private readonly PriceList prices = new(request.Outlet, fitted);

    /// <summary>Sets whose shift curve was computed.</summary>
    public long Predictions { get; private set; }

    /// <summary>Sets that were tried and refused, by rule.</summary>
    public long DoesNotShift { get; private set; }

    /// <inheritdoc cref="DoesNotShift"/>
    public long SlipsTooEasily { get; private set; }

    /// <summary>Sets that engage below the launch rpm and its margin.</summary>
    public long EngagesTooLow { get; private set; }

    /// <summary>Engagement that came nearest to the target; null when there is no drive pair.</summary>
    public double? NearestEngagementRpm { get; private set; }

    /// <summary>The best sets in their order, at most as many as asked for.</summary>
    public IReadOnlyList<RankedSet> Run(CandidatePools pools, CancellationToken cancellation)
    {
        DrivePair[] pairs = DrivePairs(pools, cancellation);
        DrivenSide[] driven = [.. pools.Driven.Select(predictor.Driven)];
        var best = new SortedList<RankKey, RankedSet>(request.Count + 1);
        foreach (DrivePair pair in pairs)
        {
            if (best.Count == request.Count && Score.Rounded(score.LeastMiss(pair.Error)) > best.Keys[^1].RoundedMiss)
                break;
            for (int d = 0; d < driven.Length; d++)
            {
                cancellation.ThrowIfCancellationRequested();
                if (Try(pools, pair, driven[d], d) is not { } found)
                    continue;
                if (best.Count == request.Count && found.Key.CompareTo(best.Keys[^1]) > 0)
                    continue;
                best.Add(found.Key, found);
                if (best.Count > request.Count)
                    best.RemoveAt(request.Count);
            }
        }

        return [.. best.Values];
    }

    private DrivePair[] DrivePairs(CandidatePools pools, CancellationToken cancellation)
    {
        double least = request.LaunchRpm is { } launch ? launch + request.LaunchMarginRpm : 0;
        var pairs = new List<DrivePair>();
        for (int s = 0; s < pools.DriveSprings.Count; s++)
        {
            for (int f = 0; f < pools.Flyweights.Count; f++)
            {
                cancellation.ThrowIfCancellationRequested();
                DriveSide side = predictor.Drive(pools.DriveSprings[s], pools.Flyweights[f]);
                double rpm = side.Engagement.Rpm;
                if (rpm < least)
                {
                    EngagesTooLow += pools.Driven.Count;
                    continue;
                }

                double error = score.EngagementError(rpm);
                if (NearestEngagementRpm is not { } nearest || Math.Abs(error) < Math.Abs(score.EngagementError(nearest)))
                    NearestEngagementRpm = rpm;
                pairs.Add(new DrivePair(s, f, side, error));
            }
        }

        return [.. pairs.OrderBy(p => Math.Abs(p.Error)).ThenBy(p => p.Spring).ThenBy(p => p.Flyweight)];
    }

    private RankedSet? Try(CandidatePools pools, DrivePair pair, DrivenSide driven, int d)
    {
        Predictions++;
        ShiftModel model = predictor.Model;
        Span<double> errors = stackalloc double[model.Positions.Count];
        for (int j = 0; j < errors.Length; j++)
        {
            if (model.BalanceRpm(pair.Side, driven, j, ShiftDirection.Upshift) is not { } rpm)
            {
                DoesNotShift++;
                return null;
            }

            if (request.SlipMargin is { } margin && model.UpshiftSlipMargin(rpm, driven, j) < margin)
            {
                SlipsTooEasily++;
                return null;
            }

            errors[j] = score.ShiftError(j, rpm);
        }

        var set = new SetUp(pools.DriveSprings[pair.Spring], pools.Flyweights[pair.Flyweight], pools.Driven[d]);
        double miss = score.Miss(pair.Error, errors);
        return new RankedSet(
            new RankKey(
                Score.Rounded(miss),
                set.ChangesFrom(fitted).Count,
                prices.Of(set.DriveSpring, set.Flyweight, set.Driven),
                pair.Spring, pair.Flyweight, d),
            set,
            miss,
            Score.WithinTolerance(pair.Error, errors));
    }

    private sealed record DrivePair(int Spring, int Flyweight, DriveSide Side, double Error);
}
