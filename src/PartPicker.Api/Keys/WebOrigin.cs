namespace PartPicker.Api.Keys;

/// <summary>Where a web page comes from, as a browser writes it into the header Origin.</summary>
internal static class WebOrigin
{
    /// <summary>Most origins of a key.</summary>
    public const int MaxOrigins = 20;

    /// <summary>The origin in the form of browsers; null where the text is none.</summary>
    public static string? Read(string text)
    {
        bool isOrigin = Uri.TryCreate(text, UriKind.Absolute, out Uri? uri)
            && (uri.Scheme == Uri.UriSchemeHttps || uri.Scheme == Uri.UriSchemeHttp)
            && uri.PathAndQuery == "/" && uri.Fragment.Length == 0 && uri.UserInfo.Length == 0 && uri.IdnHost.Length > 0;
        if (!isOrigin)
            return null;
        // A browser leaves out the port that is usual for the scheme, and spells the host in ASCII.
        string host = uri!.HostNameType == UriHostNameType.IPv6 ? uri.Host : uri.IdnHost;
        return $"{uri.Scheme}://{host.ToLowerInvariant()}{(uri.IsDefaultPort ? "" : $":{uri.Port}")}";
    }
}
