namespace PartPicker.Selection;

/// <summary>The greatest rounded miss at which a set may still count: for sets within tolerance, and for the others.</summary>
internal readonly record struct Cuts(long Inside, long Outside)
{
    // A bound is loosened by this before it is rounded as a miss is.
    private const double Slack = 1e-9;

    /// <summary>Every set counts.</summary>
    public static readonly Cuts None = new(long.MaxValue, long.MaxValue);

    /// <summary>Cuts for sets within tolerance and for others; within tolerance no miss exceeds 1, whatever the first.</summary>
    public static Cuts Of(long inside, long outside) => new(Math.Min(inside, MostInside), outside);

    private const long MostInside = 1001;

    /// <summary>No set that counts misses by more; infinite where every set counts.</summary>
    public double Widest => Math.Max(Inside, Outside) is var cut && cut < long.MaxValue
        ? (cut + 1) / 1000.0
        : double.PositiveInfinity;

    /// <summary>The same for sets whose greatest error is no less; below 0: none counts.</summary>
    public double WidestFor(double leastError)
    {
        long cut = IsInside(leastError) ? Math.Max(Inside, Outside) : Outside;
        return cut == long.MaxValue ? double.PositiveInfinity : cut < 0 ? -1 : (cut + 1) / 1000.0;
    }

    /// <summary>True where a set whose greatest error is no less may be within tolerance.</summary>
    public static bool IsInside(double leastError) => leastError <= 1 + Slack;

    /// <summary>Above the miss of every set within tolerance.</summary>
    public const double WidestInside = (MostInside + 1) / 1000.0;

    /// <summary>True when no set with this miss and this greatest error, or with more, counts.</summary>
    public bool Exceeded(double leastMiss, double leastError)
    {
        long cut = IsInside(leastError) ? Math.Max(Inside, Outside) : Outside;
        return cut < long.MaxValue && Score.Rounded(Math.Max(0, leastMiss * (1 - Slack) - Slack)) > cut;
    }
}
