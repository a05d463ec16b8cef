using Microsoft.Extensions.Caching.Memory;
using PartPicker.Storage;

namespace PartPicker.Api.Picks;

/// <summary>Has the picks that were read last at hand, in front of the store that keeps all of them.</summary>
/// <remarks>
/// The bytes of a kept answer never change, and its expiry only by a read that moves it: until then the store need not be
/// asked, and says the same.
/// </remarks>
internal sealed class RecentPicks(IPickStore store, long maxBytes = RecentPicks.StandardBytes) : IPickStore, IDisposable
{
    private const long StandardBytes = 32 * 1024 * 1024;

    private readonly MemoryCache picks = new(new MemoryCacheOptions { SizeLimit = maxBytes });

    public StoredPick? Find(string id, DateTimeOffset now) =>
        picks.TryGetValue(id, out StoredPick? pick) && StoreLimits.ExpiryAfterRead(pick!.ExpiresAt, now) == pick.ExpiresAt
            ? pick
            : AtHand(store.Find(id, now));

    public DateTimeOffset? ExpiryOf(string id) => store.ExpiryOf(id);

    public StoredPick Keep(
        string id, string catalogRevision, string modelVersion, ReadOnlyMemory<byte> body, DateTimeOffset now) =>
        AtHand(store.Keep(id, catalogRevision, modelVersion, body, now))!;

    public void Dispose() => picks.Dispose();

    private StoredPick? AtHand(StoredPick? pick)
    {
        if (pick is not null)
            picks.Set(pick.Id, pick, new MemoryCacheEntryOptions { Size = pick.Body.Length });
        return pick;
    }
}
