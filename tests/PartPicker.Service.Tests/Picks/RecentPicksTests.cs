using PartPicker.Api.Picks;
using PartPicker.Storage;
using Xunit;

namespace PartPicker.Service.Tests.Picks;

/// <summary>What is at hand says what the store would say, and asks it no more often than need be.</summary>
public sealed class RecentPicksTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2031, 5, 6, 7, 8, 9, TimeSpan.Zero);

    private readonly CountingStore store = new();
    private readonly RecentPicks recent;

    public RecentPicksTests() => recent = new RecentPicks(store, maxBytes: 100);

    public void Dispose() => recent.Dispose();

    [Fact]
    public void What_was_kept_or_read_is_found_without_the_store()
    {
        recent.Keep("kept", "r1", "1.0", new byte[10], Now);
        store.Keep("read", "r1", "1.0", new byte[10], Now);

        Assert.NotNull(recent.Find("kept", Now));
        Assert.Equal(0, store.Reads);
        Assert.Equal(recent.Find("read", Now), recent.Find("read", Now));
        Assert.Equal(1, store.Reads);
        Assert.Null(recent.Find("nobody", Now));
    }

    [Fact]
    public void A_read_that_moves_the_expiry_goes_to_the_store()
    {
        recent.Keep("p1", "r1", "1.0", new byte[10], Now);
        DateTimeOffset nextDay = Now + StoreLimits.LeastExpiryGain;

        Assert.Equal(Now + StoreLimits.PickLifetime, recent.Find("p1", nextDay - TimeSpan.FromMilliseconds(1))!.ExpiresAt);
        Assert.Equal(0, store.Reads);
        Assert.Equal(nextDay + StoreLimits.PickLifetime, recent.Find("p1", nextDay)!.ExpiresAt);
        Assert.Equal(1, store.Reads);
        recent.Find("p1", nextDay);
        Assert.Equal(1, store.Reads);
    }

    [Fact]
    public void What_is_past_its_expiry_is_not_found()
    {
        recent.Keep("p1", "r1", "1.0", new byte[10], Now);

        Assert.Null(recent.Find("p1", Now + StoreLimits.PickLifetime));
        Assert.Equal(Now + StoreLimits.PickLifetime, recent.ExpiryOf("p1"));
    }

    [Fact]
    public void No_more_bytes_are_at_hand_than_the_limit()
    {
        recent.Keep("first", "r1", "1.0", new byte[60], Now);
        recent.Keep("second", "r1", "1.0", new byte[60], Now);

        Assert.NotNull(recent.Find("first", Now));
        Assert.NotNull(recent.Find("second", Now));
        Assert.True(store.Reads > 0);
    }

    private sealed class CountingStore : IPickStore
    {
        private readonly Dictionary<string, StoredPick> picks = [];

        public int Reads { get; private set; }

        public StoredPick? Find(string id, DateTimeOffset now)
        {
            Reads++;
            if (!picks.TryGetValue(id, out StoredPick? pick) || pick.ExpiresAt <= now)
                return null;
            return picks[id] = pick with { ExpiresAt = StoreLimits.ExpiryAfterRead(pick.ExpiresAt, now) };
        }

        public DateTimeOffset? ExpiryOf(string id) => picks.GetValueOrDefault(id)?.ExpiresAt;

        public StoredPick Keep(
            string id, string catalogRevision, string modelVersion, ReadOnlyMemory<byte> body, DateTimeOffset now) =>
            picks[id] = new StoredPick(id, catalogRevision, modelVersion, body.ToArray(), now + StoreLimits.PickLifetime);
    }
}
