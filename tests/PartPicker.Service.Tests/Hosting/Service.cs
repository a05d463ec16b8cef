using System.Text;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using PartPicker.Api.Wire;

namespace PartPicker.Service.Tests;

/// <summary>
/// The service as it is, on the sample catalog, with a store of its own and without a socket.
/// </summary>
public class Service : WebApplicationFactory<Program>
{
    private readonly TemporaryFolder data = new();
    private HttpClient? client;

    /// <summary>Options of the command line beside that of the store.</summary>
    public IReadOnlyDictionary<string, string> Options { get; init; } = new Dictionary<string, string>();

    /// <summary>Where it keeps its store.</summary>
    public string DataFolder => data.Path;

    public HttpClient Client => client ??= CreateClient(new() { AllowAutoRedirect = false });

    public Task<Answer> GetAsync(string path, string? ifNoneMatch = null) =>
        SendAsync(HttpMethod.Get, path, null, ifNoneMatch);

    public Task<Answer> PostAsync(string path, string json) =>
        SendAsync(HttpMethod.Post, path, new StringContent(json, Encoding.UTF8, "application/json"));

    /// <summary>A bulk run of these lines.</summary>
    public Task<Answer> PostLinesAsync(string path, params IReadOnlyList<string> lines) => SendAsync(
        HttpMethod.Post, path,
        new StringContent(string.Concat(lines.Select(line => line + "\n")), Encoding.UTF8, WireJson.LinesMediaType));

    public async Task<Answer> SendAsync(
        HttpMethod method, string path, HttpContent? content = null, string? ifNoneMatch = null)
    {
        using HttpRequestMessage request = new(method, path) { Content = content };
        if (ifNoneMatch is not null)
            request.Headers.TryAddWithoutValidation("If-None-Match", ifNoneMatch);
        using HttpResponseMessage response = await Client.SendAsync(request);
        return await Answer.ReadAsync(response);
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("data", data.Path);
        foreach ((string name, string value) in Options)
            builder.UseSetting(name, value);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        data.Dispose();
    }
}

/// <summary>What came back.</summary>
public sealed record Answer(
    int Status, string? MediaType, byte[] Body, IReadOnlyDictionary<string, string> Headers)
{
    public string Text => Encoding.UTF8.GetString(Body);

    public JsonNode Json => JsonNode.Parse(Body)!;

    /// <summary>The lines of a bulk run.</summary>
    public JsonArray Lines => [.. Text.TrimEnd('\n').Split('\n').Select(line => JsonNode.Parse(line))];

    public string? Code => (string?)Json["code"];

    public string? Header(string name) => Headers.GetValueOrDefault(name);

    public static async Task<Answer> ReadAsync(HttpResponseMessage response) => new(
        (int)response.StatusCode,
        response.Content.Headers.ContentType?.MediaType,
        await response.Content.ReadAsByteArrayAsync(),
        response.Headers.Concat(response.Content.Headers)
            .ToDictionary(h => h.Key, h => string.Join(", ", h.Value), StringComparer.OrdinalIgnoreCase));
}
