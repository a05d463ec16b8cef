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

    /// <summary>The greatest rounded miss with which a set may stand before another: within tolerance, and not.</summary>
    /// <param name="changes">No set in question changes fewer slots.</param>
    /// <param name="priceMinor">No set in question costs less; null: none has a known price.</param>
    public (long Inside, long Outside) Before(in RankKey last, int changes, long? priceMinor)
    {
        int others = (changes, priceMinor ?? long.MaxValue).CompareTo((last.Changes, Price(last)));
        if (by == RankBy.Miss)
        {
            long cut = others <= 0 ? last.RoundedMiss : last.RoundedMiss - 1;
            return (cut, cut);
        }

        long same = others < 0 ? long.MaxValue : others == 0 ? last.RoundedMiss : Never;
        return last.WithinTolerance ? (same, Never) : (long.MaxValue, same);
    }

    private const long Never = -1;

    private static long Price(RankKey key) => key.PriceMinor ?? long.MaxValue;
}

/// <summary>A set that was tried: where it ranks, and how it scored.</summary>
internal sealed record RankedSet(RankKey Key, SetUp Set, double Miss);
