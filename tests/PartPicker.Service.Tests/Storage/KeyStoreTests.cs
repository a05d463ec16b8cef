using PartPicker.Storage;
using Xunit;

namespace PartPicker.Service.Tests.Storage;

/// <summary>What every key store must do, whatever database stands behind it.</summary>
public abstract class KeyStoreTests
{
    private static readonly DateTimeOffset Now = new(2031, 5, 6, 7, 8, 9, TimeSpan.Zero);

    /// <summary>A store over the same kept data each time that it is asked.</summary>
    private protected abstract IKeyStore Open();

    [Fact]
    public void A_key_comes_back_as_it_was_kept()
    {
        StoredKey secret = Key(1) with { Scope = KeyScope.Catalog, ExpiresAt = Now.AddDays(9) };
        StoredKey page = Key(2) with { Origins = ["https://a.example", "http://b.example:8080"], CreatedAt = Now.AddDays(1) };
        Open().AddKey(page);
        Open().AddKey(secret);

        IReadOnlyList<StoredKey> read = Open().ReadKeys();

        Assert.Equal(["1", "2"], read.Select(key => key.Id));
        Assert.Equal(secret.Hash, read[0].Hash);
        Assert.Equal((KeyScope.Catalog, "key 1", Now, Now.AddDays(9)), (read[0].Scope, read[0].Name, read[0].CreatedAt, read[0].ExpiresAt));
        Assert.Empty(read[0].Origins);
        Assert.Equal(page.Origins, read[1].Origins);
        Assert.Null(read[1].ExpiresAt);
    }

    [Fact]
    public void A_key_is_revoked_once_and_stays_listed()
    {
        Open().AddKey(Key(1));

        Assert.True(Open().RevokeKey("1", Now.AddHours(1)));
        Assert.False(Open().RevokeKey("1", Now.AddHours(2)));
        Assert.False(Open().RevokeKey("nobody", Now));
        Assert.Equal(Now.AddHours(1), Assert.Single(Open().ReadKeys()).RevokedAt);
    }

    [Fact]
    public void A_key_ends_at_its_expiry_or_when_it_is_revoked()
    {
        Assert.True(Key(1).IsUsable(Now.AddYears(100)));
        Assert.False((Key(1) with { RevokedAt = Now }).IsUsable(Now));
        StoredKey limited = Key(1) with { ExpiresAt = Now.AddDays(1) };
        Assert.True(limited.IsUsable(Now.AddDays(1).AddMilliseconds(-1)));
        Assert.False(limited.IsUsable(Now.AddDays(1)));
    }

    [Fact]
    public void There_is_a_greatest_number_of_keys_and_those_long_out_of_use_make_room()
    {
        IKeyStore store = Open();
        for (int i = 0; i < StoreLimits.MaxKeys; i++)
            store.AddKey(Key(i));

        Assert.Contains("1000 keys are kept", Assert.Throws<StoreException>(() => store.AddKey(Key(-1))).Message);

        store.RevokeKey("7", Now);
        DateTimeOffset soon = Now + StoreLimits.UselessKeyLifetime - TimeSpan.FromMilliseconds(1);
        Assert.Throws<StoreException>(() => store.AddKey(Key(-1) with { CreatedAt = soon }));
        store.AddKey(Key(-1) with { CreatedAt = soon.AddMilliseconds(1) });
        Assert.DoesNotContain(store.ReadKeys(), key => key.Id == "7");
        Assert.Equal(StoreLimits.MaxKeys, store.ReadKeys().Count);
    }

    private static StoredKey Key(int number)
    {
        byte[] hash = new byte[32];
        BitConverter.TryWriteBytes(hash, number);
        return new StoredKey($"{number}", hash, KeyScope.Read, [], $"key {number}", Now);
    }
}
