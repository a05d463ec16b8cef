namespace PartPicker.Storage;

/// <summary>Keeps who may ask: hashes of keys, never a key.</summary>
public interface IKeyStore
{
    /// <summary>Every key that is kept, the oldest first.</summary>
    IReadOnlyList<StoredKey> ReadKeys();

    /// <summary>Keeps a new key. Those that nobody could use for a while make room.</summary>
    /// <exception cref="StoreException">There are as many keys as are kept.</exception>
    void AddKey(StoredKey key);

    /// <summary>Takes a key out of use; false when none of that id is in use.</summary>
    bool RevokeKey(string id, DateTimeOffset now);
}

/// <summary>What a key allows; each scope allows what those before it do.</summary>
public enum KeyScope
{
    /// <summary>To read, and to ask: picks, predictions and bulk runs.</summary>
    Read,

    /// <summary>To change the catalog and the stock.</summary>
    Catalog,

    /// <summary>Everything.</summary>
    Admin,
}

/// <summary>A key as it is kept.</summary>
/// <param name="Id">Names the key in lists and logs; tells nothing of it.</param>
/// <param name="Hash">SHA-256 of the key.</param>
/// <param name="Scope">What it allows.</param>
/// <param name="Origins">Of which web pages it may be sent; empty for a secret key, which no page may hold.</param>
/// <param name="Name">What the operator calls it; may be empty.</param>
/// <param name="CreatedAt">When it was made.</param>
/// <param name="ExpiresAt">From when it is refused; never when null.</param>
/// <param name="RevokedAt">When it was taken out of use.</param>
public sealed record StoredKey(
    string Id, byte[] Hash, KeyScope Scope, IReadOnlyList<string> Origins, string Name, DateTimeOffset CreatedAt,
    DateTimeOffset? ExpiresAt = null, DateTimeOffset? RevokedAt = null)
{
    /// <summary>True for a key that stands in web pages.</summary>
    public bool IsPublishable => Origins.Count > 0;

    public bool IsUsable(DateTimeOffset now) => RevokedAt is null && !IsExpired(now);

    public bool IsExpired(DateTimeOffset now) => ExpiresAt <= now;
}
