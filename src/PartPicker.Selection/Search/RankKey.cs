namespace PartPicker.Selection;

/// <summary>What the order of answers looks at; a missing price counts as the highest.</summary>
internal readonly record struct RankKey(
    long RoundedMiss, bool WithinTolerance, int Changes, long? PriceMinor, int DriveSpring, int Flyweight, int Driven)
{
    /// <summary>Places in the pools: what decides last.</summary>
    public (int DriveSpring, int Flyweight, int Driven) Places => (DriveSpring, Flyweight, Driven);
}

/// <summary>What no set of a box falls below.</summary>
/// <param name="Changes">Slots changed.</param>
/// <param name="Price">Price in minor units; the greatest number where none is known.</param>
/// <param name="Places">Places in the pools.</param>
internal readonly record struct RankFloor(int Changes, long Price, (int DriveSpring, int Flyweight, int Driven) Places);

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
    /// <param name="last">The other one.</param>
    /// <param name="floor">Of the sets in question: none changes fewer slots, costs less, or stands earlier in a pool.</param>
    public (long Inside, long Outside) Before(in RankKey last, in RankFloor floor)
    {
        bool earlier = floor.Places.CompareTo(last.Places) < 0;
        int others = (floor.Changes, floor.Price).CompareTo((last.Changes, Price(last)));
        if (by == RankBy.Miss)
        {
            long cut = others < 0 || (others == 0 && earlier) ? last.RoundedMiss : last.RoundedMiss - 1;
            return (cut, cut);
        }

        long same = others < 0 ? long.MaxValue
            : others > 0 ? Never
            : earlier ? last.RoundedMiss : last.RoundedMiss - 1;
        return last.WithinTolerance ? (same, Never) : (long.MaxValue, same);
    }

    private const long Never = -1;

    private static long Price(RankKey key) => key.PriceMinor ?? long.MaxValue;
}

/// <summary>A set that was tried: where it ranks, and how it scored.</summary>
internal sealed record RankedSet(RankKey Key, SetUp Set, double Miss);
