namespace PartPicker.Selection;

/// <summary>
/// The total order of answers: rounded miss, slots changed from the fitted set, price of what is not already
/// fitted (unknown last), then part ids by the candidates' places in their pools.
/// </summary>
internal readonly record struct RankKey(
    long RoundedMiss, int Changes, long? PriceMinor, int DriveSpring, int Flyweight, int Driven)
    : IComparable<RankKey>
{
    public int CompareTo(RankKey other) =>
        (RoundedMiss, Changes, PriceMinor ?? long.MaxValue, DriveSpring, Flyweight, Driven).CompareTo(
            (other.RoundedMiss, other.Changes, other.PriceMinor ?? long.MaxValue,
                other.DriveSpring, other.Flyweight, other.Driven));
}

/// <summary>A set that was tried: where it ranks, and how it scored.</summary>
internal sealed record RankedSet(RankKey Key, SetUp Set, double Miss, bool WithinTolerance);
