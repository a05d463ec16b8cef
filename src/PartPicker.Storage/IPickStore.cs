using System.Security.Cryptography;

namespace PartPicker.Storage;

/// <summary>Keeps the bytes of answers, so that an id brings back the same answer.</summary>
public interface IPickStore
{
    /// <summary>The stored answer; null when unknown or past its expiry. Asking counts as reading and moves the expiry.</summary>
    StoredPick? Find(string id, DateTimeOffset now);

    /// <summary>When the answer of an id expires, or did; null when the id is unknown, or expired too long ago to tell.</summary>
    DateTimeOffset? ExpiryOf(string id);

    /// <summary>Keeps an answer; an id that is already there keeps its bytes until its expiry.</summary>
    StoredPick Keep(string id, string catalogRevision, string modelVersion, ReadOnlyMemory<byte> body, DateTimeOffset now);
}

/// <summary>An answer as it was first sent.</summary>
public sealed record StoredPick(
    string Id, string CatalogRevision, string ModelVersion, byte[] Body, DateTimeOffset ExpiresAt)
{
    /// <summary>Names the bytes, by a hash that is made when it is first asked for.</summary>
    public string BodyHash => field ??= Convert.ToHexStringLower(SHA256.HashData(Body));
}
