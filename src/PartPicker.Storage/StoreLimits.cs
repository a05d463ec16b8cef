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

    /// <summary>Most keys, those included that are revoked or expired. A service holds all of them in memory.</summary>
    public const int MaxKeys = 1_000;

    /// <summary>How long a key is kept that is revoked or expired, so that a list still tells what became of it.</summary>
    public static readonly TimeSpan UselessKeyLifetime = TimeSpan.FromDays(90);
}
