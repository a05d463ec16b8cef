using System.Security.Cryptography;
using PartPicker.Storage;

namespace PartPicker.Api.Keys;

/// <summary>The keys of the store, read again where they are older than a moment: another process may have changed them.</summary>
internal sealed class KeyRing(IKeyStore store, TimeProvider clock)
{
    /// <summary>How old the keys may be that a request is judged by; a revoked key is refused after it.</summary>
    public static readonly TimeSpan Freshness = TimeSpan.FromMilliseconds(500);

    private readonly Lock reading = new();
    private Reading? newest;

    /// <summary>Every key, usable or not.</summary>
    public IReadOnlyList<StoredKey> Keys
    {
        get
        {
            lock (reading)
            {
                if (newest is null || clock.GetElapsedTime(newest.At) >= Freshness)
                    newest = new Reading(clock.GetTimestamp(), store.ReadKeys());
                return newest.Keys;
            }
        }
    }

    public bool HasUsable => Keys.Any(key => key.IsUsable(clock.GetUtcNow()));

    /// <summary>The key as it is kept, usable or not; null where none reads so.</summary>
    public StoredKey? Find(string sent) => Find(Keys, KeyText.Hash(sent));

    /// <summary>False once a key that counted was revoked or has expired.</summary>
    public bool StillCounts(StoredKey known) =>
        Keys.Any(key => key.Id == known.Id && key.IsUsable(clock.GetUtcNow()));

    /// <summary>True where a usable key is bound to the origin.</summary>
    public bool Knows(string origin) =>
        Keys.Any(key => key.Origins.Contains(origin) && key.IsUsable(clock.GetUtcNow()));

    /// <summary>The key of that hash.</summary>
    /// <remarks>
    /// Every key is compared, and the whole of its hash, wherever the right one stands: how long it takes tells nothing of
    /// how near a guess came.
    /// </remarks>
    public static StoredKey? Find(IReadOnlyList<StoredKey> keys, byte[] hash)
    {
        StoredKey? found = null;
        for (int i = 0; i < keys.Count; i++)
        {
            StoredKey key = keys[i];
            found = CryptographicOperations.FixedTimeEquals(key.Hash, hash) ? key : found;
        }

        return found;
    }

    private sealed record Reading(long At, IReadOnlyList<StoredKey> Keys);
}
