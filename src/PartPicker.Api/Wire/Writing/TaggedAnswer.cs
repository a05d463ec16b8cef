using System.Security.Cryptography;
using Microsoft.Net.Http.Headers;
using PartPicker.Api.Deprecations;

namespace PartPicker.Api.Wire;

/// <summary>
/// Sends bytes with their entity tag; a GET that brings the same tag is answered with 304. Equal questions of the same
/// catalog and model have equal bytes, and so equal tags.
/// </summary>
/// <param name="Body">The bytes.</param>
/// <param name="MediaType">What they are.</param>
internal sealed record TaggedAnswer(ReadOnlyMemory<byte> Body, string MediaType = WireJson.MediaType) : IResult
{
    /// <summary>How long a cache may repeat what changes with the program alone, as pages do.</summary>
    public static readonly TimeSpan FreshOfProgram = TimeSpan.FromMinutes(5);

    // Half of a SHA-256 is far more than two answers ever need to differ.
    private const int TagDigits = 32;

    public int Status { get; init; } = StatusCodes.Status200OK;

    /// <summary>A hash of the bytes (SHA-256 in hex digits), where it is known already.</summary>
    public string Hash
    {
        get => field ??= Convert.ToHexStringLower(SHA256.HashData(Body.Span));
        init;
    }

    /// <summary>Where the answer can be fetched again.</summary>
    public string? Location { get; init; }

    /// <summary>How long a cache may repeat the answer without asking; zero: it keeps it, and asks each time.</summary>
    public TimeSpan Fresh { get; init; }

    /// <summary>When the stored answer may go (RFC 8594).</summary>
    public DateTimeOffset? Sunset { get; init; }

    public static TaggedAnswer Of<T>(T wire) => new(WireJson.Bytes(wire));

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        HttpRequest request = httpContext.Request;
        HttpResponse response = httpContext.Response;
        if (MediaType == WireJson.MediaType)
            DeprecationNotes.Of(httpContext)?.NoteAnswer(Body);
        var tag = new EntityTagHeaderValue($"\"{Hash[..TagDigits]}\"");
        response.Headers.ETag = tag.ToString();
        // Everybody gets the same answer, so that any cache may keep it.
        response.Headers.CacheControl = Fresh > TimeSpan.Zero ? $"public, max-age={(long)Fresh.TotalSeconds}" : "public, no-cache";
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
        response.ContentType = MediaType;
        response.ContentLength = Body.Length;
        await response.Body.WriteAsync(Body, httpContext.RequestAborted);
    }

    private static bool IsKnown(HttpRequest request, EntityTagHeaderValue tag) =>
        request.GetTypedHeaders().IfNoneMatch.Any(known =>
            known.Compare(tag, useStrongComparison: false) || known.Equals(EntityTagHeaderValue.Any));
}
