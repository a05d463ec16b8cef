namespace PartPicker.Selection;

/// <summary>What the order of answers looks at; a missing price counts as the highest.</summary>
internal readonly record struct RankKey(
    long RoundedMiss, bool WithinTolerance, int Changes, long? PriceMinor, int DriveSpring, int Flyweight, int Driven);

/// <summary>
/// The total order of answers. By miss: rounded miss, slots changed from the fitted set, price of what is not already
/// fitted (unknown last). By least work: within tolerance first, then changes, price, rounded miss. Either way part ids
/// decide last, by the candidates' places in their pools.
/// </summary>
internal sealed class RankOrder(RankBy by) : IComparer<RankKey>
{
    public static readonly RankOrder ByMiss = new(RankBy.Miss);

    public int Compare(RankKey x, RankKey y)
    {
        int byWish = by == RankBy.Miss
            ? (x.RoundedMiss, x.Changes, Price(x)).CompareTo((y.RoundedMiss, y.Changes, Price(y)))
            : (!x.WithinTolerance, x.Changes, Price(x), x.RoundedMiss).CompareTo(
                (!y.WithinTolerance, y.Changes, Price(y), y.RoundedMiss));
        return byWish != 0
            ? byWish
            : (x.DriveSpring, x.Flyweight, x.Driven).CompareTo((y.DriveSpring, y.Flyweight, y.Driven));
    }

    private static long Price(RankKey key) => key.PriceMinor ?? long.MaxValue;
}

/// <summary>A set that was tried: where it ranks, and how it scored.</summary>
internal sealed record RankedSet(RankKey Key, SetUp Set, double Miss);
