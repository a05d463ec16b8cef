namespace PartPicker.Storage;

/// <summary>How long and how much the stores keep.</summary>
public static class StoreLimits
{
    /// <summary>How long a pick stays after it was last read.</summary>
    public static readonly TimeSpan PickLifetime = TimeSpan.FromDays(30);

    /// <summary>How long an id past its expiry is still told from one that was never given out.</summary>
    public static readonly TimeSpan ExpiredPickMemory = TimeSpan.FromDays(7);

    /// <summary>A read moves the expiry only when it gains at least this: most reads write nothing.</summary>
    public static readonly TimeSpan LeastExpiryGain = TimeSpan.FromDays(1);

    /// <summary>When a pick expires that is read now, and would have expired otherwise at that time.</summary>
    public static DateTimeOffset ExpiryAfterRead(DateTimeOffset expiry, DateTimeOffset now) =>
        now + PickLifetime - expiry < LeastExpiryGain ? expiry : now + PickLifetime;

    /// <summary>Largest body of a pick.</summary>
    public const int MaxPickBytes = 4 * 1024 * 1024;
}
