using Microsoft.Extensions.Primitives;

namespace PartPicker.Api.Keys;

/// <summary>Reads which key a request brings.</summary>
internal static class SentKey
{
    /// <summary>
    /// The header of publishable keys. It makes a browser ask first, so that no page sends it unless its origin may.
    /// </summary>
    public const string Header = "Part-Picker-Key";

    private const string Bearer = "Bearer ";

    /// <summary>The key; or what is wrong with how it was sent, in words that do not repeat it; neither where none was sent.</summary>
    public static (string? Key, string? Fault) Read(IHeaderDictionary headers)
    {
        (StringValues secret, StringValues publishable) = (headers.Authorization, headers[Header]);
        return (secret.Count, publishable.Count) switch
        {
            (0, 0) => (null, null),
            (1, 0) => ReadSecret(secret.ToString()),
            (0, 1) => ReadPublishable(publishable.ToString()),
            _ => (null, $"More than one key was sent. Send either Authorization or {Header}, once."),
        };
    }

    private static (string? Key, string? Fault) ReadSecret(string sent)
    {
        if (!sent.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase))
            return (null, "The header Authorization is not of the form: Bearer KEY.");
        string key = sent[Bearer.Length..].Trim();
        return key.StartsWith(KeyText.PublishablePrefix, StringComparison.Ordinal)
            ? (null, $"A publishable key is sent as {Header}: KEY.")
            : (key, null);
    }

    private static (string? Key, string? Fault) ReadPublishable(string sent) =>
        sent.StartsWith(KeyText.SecretPrefix, StringComparison.Ordinal)
            ? (null, "A secret key is sent as Authorization: Bearer KEY, and never from a web page: revoke it if one held it.")
            : (sent, null);
}
