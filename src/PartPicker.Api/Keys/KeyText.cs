using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace PartPicker.Api.Keys;

/// <summary>What a key looks like, and what is kept of it.</summary>
internal static class KeyText
{
    /// <summary>What a key begins with that only programs of its owner may hold.</summary>
    public const string SecretPrefix = "pps_";

    /// <summary>What a key begins with that stands in web pages for everybody to read.</summary>
    public const string PublishablePrefix = "ppp_";

    // As many as SHA-256 has: more would not be harder to guess.
    private const int RandomBytes = 32;
    private const int IdBytes = 6;

    public static string Make(bool publishable) =>
        (publishable ? PublishablePrefix : SecretPrefix)
        + Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(RandomBytes));

    /// <summary>What is kept of a key.</summary>
    /// <remarks>
    /// A slow or salted hash protects what people choose, since that can be guessed. Of 256 random bits there is nothing to
    /// guess: SHA-256 by itself cannot be undone, and costs a request nothing.
    /// </remarks>
    public static byte[] Hash(string key) => SHA256.HashData(Encoding.UTF8.GetBytes(key));

    /// <summary>A name for the key that may stand in a list or a log.</summary>
    public static string Id(byte[] hash) => Convert.ToHexStringLower(hash.AsSpan(0, IdBytes));
}
