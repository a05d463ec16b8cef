using System.Text.Json;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.Net.Http.Headers;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Deprecations;

/// <summary>
/// What one request uses of what is deprecated, or its answer carries: told in the headers Deprecation (RFC 9745), Sunset
/// (RFC 8594) and Link.
/// </summary>
internal sealed class DeprecationNotes(DeprecationTable table, EndpointMetadataCollection metadata)
{
    /// <summary>The page that says what to do.</summary>
    public const string Page = "/docs/versioning#deprecations";

    private readonly HashSet<Deprecation> noted = [];

    private Type? RequestType => metadata.GetMetadata<IAcceptsMetadata>()?.RequestType;

    private Type? AnswerType => metadata.OfType<IProducesResponseTypeMetadata>()
        .FirstOrDefault(answer => answer.StatusCode is >= 200 and < 300 && answer.Type is not null)?.Type;

    /// <summary>Those of a request; null while nothing is deprecated.</summary>
    public static DeprecationNotes? Of(HttpContext http) => http.Features.Get<DeprecationNotes>();

    public void NoteParameters(IQueryCollection query)
    {
        string? operation = metadata.GetMetadata<IEndpointNameMetadata>()?.EndpointName;
        noted.UnionWith(query.Keys.Select(name => table.Parameter(operation, name)).OfType<Deprecation>());
    }

    public void NoteRequest(JsonElement body)
    {
        if (RequestType is { } type)
            noted.UnionWith(DeprecatedMembers.In(body, type, table));
    }

    public void NoteAnswer(ReadOnlyMemory<byte> body)
    {
        if (AnswerType is not { } type)
            return;
        using JsonDocument json = JsonDocument.Parse(body);
        // An answer repeats its request with everything filled in: that is nothing that the caller has used.
        noted.UnionWith(DeprecatedMembers.In(json.RootElement, type, table)
            .Where(row => !typeof(IRequestWire).IsAssignableFrom(row.Record)));
    }

    /// <summary>Whatever lines may use or carry: headers are sent before the first of them is read.</summary>
    public void NoteLines()
    {
        foreach (Type type in new[] { RequestType, AnswerType }.OfType<Type>())
            noted.UnionWith(DeprecatedMembers.Of(type, table));
    }

    public void Tell(IHeaderDictionary headers)
    {
        if (noted.Count == 0)
            return;
        headers["Deprecation"] = $"@{noted.Min(row => row.Since).ToUnixTimeSeconds()}";
        DateTimeOffset sunset = noted.Min(row => row.Sunset);
        // A stored answer has a sunset of its own: the first of the two is when the caller must have done something.
        if (!HeaderUtilities.TryParseDate(headers["Sunset"].ToString(), out DateTimeOffset own) || sunset < own)
            headers["Sunset"] = HeaderUtilities.FormatDate(sunset);
        headers.Append("Link", $"<{Page}>; rel=\"deprecation\"; type=\"text/html\"");
        foreach (string successor in noted.Select(row => row.Successor).OfType<string>().Distinct().Order(StringComparer.Ordinal))
            headers.Append("Link", $"<{successor}>; rel=\"successor-version\"");
    }
}

/// <summary>Notes what is deprecated, request by request.</summary>
internal static class DeprecationHeaders
{
    /// <summary>To be called once the endpoint of a request is known.</summary>
    public static void UseDeprecations(this WebApplication app)
    {
        DeprecationTable table = app.Services.GetRequiredService<DeprecationTable>();
        if (table.IsEmpty)
            return;
        app.Use((http, next) =>
        {
            if (http.GetEndpoint() is { } endpoint)
            {
                DeprecationNotes notes = new(table, endpoint.Metadata);
                notes.NoteParameters(http.Request.Query);
                http.Features.Set(notes);
                http.Response.OnStarting(() =>
                {
                    notes.Tell(http.Response.Headers);
                    return Task.CompletedTask;
                });
            }

            return next(http);
        });
    }
}
