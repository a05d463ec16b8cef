using System.Collections;
using System.Reflection;
using System.Security.Cryptography;
using PartPicker.Api.Keys;
using PartPicker.Storage;
using Xunit;

namespace PartPicker.Service.Tests.Keys;

public sealed class KeyRingTests
{
    private static readonly StoredKey[] Keys =
        [.. Enumerable.Range(0, 5).Select(i => new StoredKey($"{i}", KeyText.Hash($"{i}"), KeyScope.Read, [], "", default))];

    [Theory]
    [InlineData("0", "0")]
    [InlineData("2", "2")]
    [InlineData("4", "4")]
    [InlineData("wrong", null)]
    public void Every_key_is_looked_at_wherever_the_right_one_stands(string sent, string? found)
    {
        CountedList counted = new(Keys);

        Assert.Equal(found, KeyRing.Find(counted, KeyText.Hash(sent))?.Id);
        Assert.Equal([1, 1, 1, 1, 1], counted.Visits);
    }

    [Fact]
    public void Hashes_are_compared_in_a_time_that_does_not_depend_on_them()
    {
        MethodInfo find = typeof(KeyRing).GetMethod(nameof(KeyRing.Find), [typeof(IReadOnlyList<StoredKey>), typeof(byte[])])!;

        Assert.Equal([nameof(CryptographicOperations.FixedTimeEquals)], Calls(find).Where(name => name.Contains("Equal")));
    }

    [Fact]
    public void A_key_is_256_random_bits_behind_a_prefix_that_tells_its_kind()
    {
        string[] keys = [.. Enumerable.Range(0, 100).Select(i => KeyText.Make(publishable: i % 2 == 1))];

        Assert.Equal(100, keys.Distinct().Count());
        Assert.All(keys.Where((_, i) => i % 2 == 0), key => Assert.Matches("^pps_[A-Za-z0-9_-]{43}$", key));
        Assert.All(keys.Where((_, i) => i % 2 == 1), key => Assert.Matches("^ppp_[A-Za-z0-9_-]{43}$", key));
        Assert.Equal(SHA256.HashData("abc"u8), KeyText.Hash("abc"));
    }

    [Fact]
    public void A_store_is_read_again_only_when_what_is_known_is_old()
    {
        Clock clock = new();
        CountedStore store = new();
        KeyRing ring = new(store, clock);

        Assert.True(ring.HasUsable);
        Assert.NotNull(ring.Find("3"));
        clock.Now += KeyRing.Freshness - TimeSpan.FromMilliseconds(1);
        Assert.Null(ring.Find("x"));
        Assert.Equal(1, store.Reads);

        clock.Now += TimeSpan.FromMilliseconds(1);
        Assert.NotNull(ring.Find("3"));
        Assert.Equal(2, store.Reads);
        Assert.True(KeyRing.Freshness < TimeSpan.FromSeconds(1));
    }

    [Theory]
    [InlineData("https://Shop.Example", "https://shop.example")]
    [InlineData("https://shop.example:443/", "https://shop.example")]
    [InlineData("http://shop.example:8080", "http://shop.example:8080")]
    [InlineData("https://bücher.example", "https://xn--bcher-kva.example")]
    [InlineData("http://[::1]:3000", "http://[::1]:3000")]
    [InlineData("https://shop.example/page", null)]
    [InlineData("https://shop.example?x", null)]
    [InlineData("https://me@shop.example", null)]
    [InlineData("ftp://shop.example", null)]
    [InlineData("shop.example", null)]
    [InlineData("null", null)]
    [InlineData("*", null)]
    public void An_origin_is_written_as_browsers_write_it(string text, string? origin) =>
        Assert.Equal(origin, WebOrigin.Read(text));

    // A call is the opcode 0x28 or 0x6F and the number of what is called.
    private static IEnumerable<string> Calls(MethodInfo method)
    {
        byte[] code = method.GetMethodBody()!.GetILAsByteArray()!;
        for (int i = 0; i + 4 < code.Length; i++)
        {
            if (code[i] is not (0x28 or 0x6F))
                continue;
            string? name = null;
            try
            {
                name = method.Module.ResolveMethod(BitConverter.ToInt32(code, i + 1))?.Name;
            }
            catch (Exception fault) when (fault is ArgumentException or BadImageFormatException)
            {
                // The byte was no opcode.
            }

            if (name is not null)
                yield return name;
        }
    }

    private sealed class CountedList(IReadOnlyList<StoredKey> keys) : IReadOnlyList<StoredKey>
    {
        public int[] Visits { get; } = new int[keys.Count];

        public int Count => keys.Count;

        public StoredKey this[int index]
        {
            get
            {
                Visits[index]++;
                return keys[index];
            }
        }

        public IEnumerator<StoredKey> GetEnumerator() => Enumerable.Range(0, Count).Select(i => this[i]).GetEnumerator();

        IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
    }

    private sealed class CountedStore : IKeyStore
    {
        public int Reads { get; private set; }

        public IReadOnlyList<StoredKey> ReadKeys()
        {
            Reads++;
            return Keys;
        }

        public void AddKey(StoredKey key) => throw new NotSupportedException();

        public bool RevokeKey(string id, DateTimeOffset now) => throw new NotSupportedException();
    }

    private sealed class Clock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = DateTimeOffset.UnixEpoch;

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override DateTimeOffset GetUtcNow() => Now;

        public override long GetTimestamp() => Now.Ticks;
    }
}
