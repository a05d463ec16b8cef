using PartPicker.Storage;
using Xunit;

namespace PartPicker.Service.Tests.Storage;

/// <summary>What every pick store must do, whatever database stands behind it.</summary>
public abstract class PickStoreTests
{
    private static readonly DateTimeOffset Now = new(2031, 5, 6, 7, 8, 9, TimeSpan.Zero);
    private static readonly byte[] Body = [0, 1, 0xFF, (byte)'{', 0];

    /// <summary>A store over the same kept data each time that it is asked.</summary>
    private protected abstract IPickStore Open();

    [Fact]
    public void An_unknown_id_finds_nothing() => Assert.Null(Open().Find("nobody", Now));

    [Fact]
    public void A_pick_keeps_its_bytes_and_its_identity()
    {
        StoredPick kept = Open().Keep("p1", "0123456789ab", "model-1", Body, Now);

        StoredPick found = Open().Find("p1", Now)!;

        Assert.Equal(Body, found.Body);
        Assert.Equal(("p1", "0123456789ab", "model-1"), (found.Id, found.CatalogRevision, found.ModelVersion));
        Assert.Equal(kept.ExpiresAt, found.ExpiresAt);
        Assert.Equal(Now + StoreLimits.PickLifetime, found.ExpiresAt);
    }

    [Fact]
    public void An_id_that_is_there_keeps_its_first_bytes()
    {
        Open().Keep("p1", "0123456789ab", "model-1", Body, Now);

        StoredPick again = Open().Keep("p1", "ffffffffffff", "model-2", new byte[] { 9 }, Now);

        Assert.Equal(Body, again.Body);
        Assert.Equal("model-1", again.ModelVersion);
        Assert.Equal(Body, Open().Find("p1", Now)!.Body);
    }

    [Fact]
    public void A_pick_that_nobody_reads_is_gone_at_its_expiry()
    {
        Open().Keep("read-late", "0123456789ab", "model-1", Body, Now);
        Open().Keep("read-too-late", "0123456789ab", "model-1", Body, Now);

        Assert.NotNull(Open().Find("read-late", Now + StoreLimits.PickLifetime - TimeSpan.FromMilliseconds(1)));
        Assert.Null(Open().Find("read-too-late", Now + StoreLimits.PickLifetime));
    }

    [Fact]
    public void Reading_moves_the_expiry()
    {
        Open().Keep("p1", "0123456789ab", "model-1", Body, Now);
        DateTimeOffset later = Now.AddDays(29);

        Assert.Equal(later + StoreLimits.PickLifetime, Open().Find("p1", later)!.ExpiresAt);

        Assert.NotNull(Open().Find("p1", later.AddDays(29)));
    }

    [Fact]
    public void Asking_to_keep_what_is_kept_counts_as_reading()
    {
        Open().Keep("p1", "0123456789ab", "model-1", Body, Now);
        DateTimeOffset later = Now.AddDays(10);

        Assert.Equal(
            later + StoreLimits.PickLifetime, Open().Keep("p1", "0123456789ab", "model-1", Body, later).ExpiresAt);
    }

    [Fact]
    public void A_read_that_would_gain_less_than_a_day_leaves_the_expiry()
    {
        Open().Keep("p1", "0123456789ab", "model-1", Body, Now);

        StoredPick soon = Open().Find("p1", Now + StoreLimits.LeastExpiryGain - TimeSpan.FromMilliseconds(1))!;
        Assert.Equal(Now + StoreLimits.PickLifetime, soon.ExpiresAt);

        DateTimeOffset nextDay = Now + StoreLimits.LeastExpiryGain;
        Assert.Equal(nextDay + StoreLimits.PickLifetime, Open().Find("p1", nextDay)!.ExpiresAt);
    }

    [Fact]
    public void An_expired_pick_makes_way_for_a_new_one_of_the_same_id()
    {
        Open().Keep("p1", "0123456789ab", "model-1", Body, Now);

        StoredPick renewed = Open().Keep("p1", "0123456789ab", "model-2", new byte[] { 9 }, Now.AddDays(31));

        Assert.Equal([9], renewed.Body);
        Assert.Equal("model-2", renewed.ModelVersion);
    }

    [Fact]
    public void An_id_past_its_expiry_is_told_from_one_that_was_never_given_out_for_a_week()
    {
        Open().Keep("p1", "0123456789ab", "model-1", Body, Now);
        DateTimeOffset expiry = Now + StoreLimits.PickLifetime;
        DateTimeOffset forgotten = expiry + StoreLimits.ExpiredPickMemory;

        Assert.Null(Open().ExpiryOf("nobody"));
        Assert.Equal(expiry, Open().ExpiryOf("p1"));
        Open().Keep("p2", "0123456789ab", "model-1", Body, forgotten - TimeSpan.FromMilliseconds(1));
        Assert.Null(Open().Find("p1", expiry));
        Assert.Equal(expiry, Open().ExpiryOf("p1"));
        Open().Keep("p3", "0123456789ab", "model-1", Body, forgotten);
        Assert.Null(Open().ExpiryOf("p1"));
    }

    [Fact]
    public void A_body_may_be_as_large_as_the_limit_and_not_larger()
    {
        byte[] largest = new byte[StoreLimits.MaxPickBytes];
        Assert.Equal(largest, Open().Keep("p1", "0123456789ab", "model-1", largest, Now).Body);

        ArgumentException e = Assert.Throws<ArgumentException>(
            () => Open().Keep("p2", "0123456789ab", "model-1", new byte[StoreLimits.MaxPickBytes + 1], Now));
        Assert.Contains($"{StoreLimits.MaxPickBytes}", e.Message);
        Assert.Null(Open().Find("p2", Now));
    }

    [Fact]
    public async Task Many_keepers_of_one_id_at_once_all_get_the_same_bytes()
    {
        IPickStore one = Open();
        IPickStore other = Open();

        StoredPick[] kept = await Task.WhenAll(Enumerable.Range(0, 16).Select(i => Task.Run(
            () => (i % 2 == 0 ? one : other).Keep("p1", "0123456789ab", "model-1", new byte[] { (byte)i }, Now))));

        Assert.Single(kept.Select(p => p.Body[0]).Distinct());
    }
}
