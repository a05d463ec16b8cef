namespace PartPicker.Selection;

/// <summary>The closest set, and among those within tolerance the cheapest, the one with the fewest changes, and those that no other beats.</summary>
/// <remarks>Equals are decided by the order by miss.</remarks>
internal sealed class Highlights
{
    private readonly List<RankedSet> undominated = [];

    /// <summary>The set of the least miss, within tolerance or not.</summary>
    public RankedSet? Closest { get; private set; }

    public RankedSet? Cheapest { get; private set; }

    public RankedSet? FewestChanges { get; private set; }

    /// <summary>By the order by miss.</summary>
    public IReadOnlyList<RankedSet> Undominated => [.. undominated.OrderBy(s => s.Key, RankOrder.ByMiss)];

    public void Offer(RankedSet set)
    {
        if (Closest is null || RankOrder.ByMiss.Compare(set.Key, Closest.Key) < 0)
            Closest = set;
        if (!set.Key.WithinTolerance)
            return;
        if (set.Key.PriceMinor is { } price
            && (Cheapest is null || Before((price, set.Key), (Cheapest.Key.PriceMinor!.Value, Cheapest.Key))))
        {
            Cheapest = set;
        }

        if (FewestChanges is null || Before((set.Key.Changes, set.Key), (FewestChanges.Key.Changes, FewestChanges.Key)))
            FewestChanges = set;
        if (undominated.Exists(other => Beats(other.Key, set.Key)))
            return;
        undominated.RemoveAll(other => Beats(set.Key, other.Key));
        undominated.Add(set);
    }

    /// <summary>The greatest rounded miss with which a set within tolerance may still count; below 0: none may.</summary>
    /// <param name="floor">Of the sets in question: none changes fewer slots, costs less, or stands earlier in a pool.</param>
    /// <remarks>
    /// One that is no worse in all three, and better in one or earlier, beats a set. It then stands before it among the
    /// cheapest and the fewest changes too, since each of these is undominated itself.
    /// </remarks>
    public long Cut(in RankFloor floor)
    {
        long cut = long.MaxValue;
        foreach (RankedSet set in undominated)
        {
            RankKey key = set.Key;
            long price = key.PriceMinor ?? long.MaxValue;
            if (price > floor.Price || key.Changes > floor.Changes)
                continue;
            bool better = price < floor.Price || key.Changes < floor.Changes || key.Places.CompareTo(floor.Places) < 0;
            cut = Math.Min(cut, better ? key.RoundedMiss - 1 : key.RoundedMiss);
        }

        return cut;
    }

    /// <summary>The greatest rounded miss with which a set may be the closest; below 0: it is not asked for.</summary>
    /// <remarks>The closest is asked for only where no set is within tolerance.</remarks>
    public long ClosestCut(in RankFloor floor) =>
        FewestChanges is not null ? -1
        : Closest is null ? long.MaxValue
        : RankOrder.ByMiss.Before(Closest.Key, floor).Outside;

    private static bool Before((long First, RankKey Key) x, (long First, RankKey Key) y) =>
        x.First != y.First ? x.First < y.First : RankOrder.ByMiss.Compare(x.Key, y.Key) < 0;

    /// <summary>No worse in miss, price and changes, and better in one of them or earlier in the order.</summary>
    private static bool Beats(RankKey x, RankKey y)
    {
        long priceX = x.PriceMinor ?? long.MaxValue;
        long priceY = y.PriceMinor ?? long.MaxValue;
        if (x.RoundedMiss > y.RoundedMiss || priceX > priceY || x.Changes > y.Changes)
            return false;
        bool equal = x.RoundedMiss == y.RoundedMiss && priceX == priceY && x.Changes == y.Changes;
        return !equal || RankOrder.ByMiss.Compare(x, y) < 0;
    }
}
