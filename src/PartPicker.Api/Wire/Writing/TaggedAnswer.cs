using System.Security.Cryptography;
using Microsoft.Net.Http.Headers;

namespace PartPicker.Api.Wire;

/// <summary>Sends bytes with their entity tag; a GET that brings the same tag is answered with 304.</summary>
internal sealed class TaggedAnswer(ReadOnlyMemory<byte> body, string mediaType = WireJson.MediaType) : IResult
{
    // Half of a SHA-256 is far more than two answers ever need to differ.
    private const int TagBytes = 16;

    public int Status { get; init; } = StatusCodes.Status200OK;

    /// <summary>Where the answer can be fetched again.</summary>
    public string? Location { get; init; }

    /// <summary>When the stored answer may go (RFC 8594).</summary>
    public DateTimeOffset? Sunset { get; init; }

    public static TaggedAnswer Of<T>(T wire) => new(WireJson.Bytes(wire));

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        HttpRequest request = httpContext.Request;
        HttpResponse response = httpContext.Response;
        var tag = new EntityTagHeaderValue(Tag(body.Span));
        response.Headers.ETag = tag.ToString();
        // The answer may change with the catalog, so a cache asks before it repeats one.
        response.Headers.CacheControl = "no-cache";
        if (Location is not null)
            response.Headers.Location = Location;
        if (Sunset is { } sunset)
            response.Headers["Sunset"] = HeaderUtilities.FormatDate(sunset);

        if (HttpMethods.IsGet(request.Method) && IsKnown(request, tag))
        {
            response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        response.StatusCode = Status;
        response.ContentType = mediaType;
        response.ContentLength = body.Length;
        await response.Body.WriteAsync(body, httpContext.RequestAborted);
    }

    private static bool IsKnown(HttpRequest request, EntityTagHeaderValue tag) =>
        request.GetTypedHeaders().IfNoneMatch.Any(known =>
            known.Compare(tag, useStrongComparison: false) || known.Equals(EntityTagHeaderValue.Any));

    private static string Tag(ReadOnlySpan<byte> body) =>
        $"\"{Convert.ToHexStringLower(SHA256.HashData(body).AsSpan(0, TagBytes))}\"";
}
