using System.IO.Pipelines;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using PartPicker.Api.Keys;
using Xunit;
using static PartPicker.Service.Tests.Keys.KeyedServices;

namespace PartPicker.Service.Tests.Keys;

/// <summary>Who is answered where others than the service's own machine may ask.</summary>
public sealed class KeyRequestTests : IDisposable
{
    private readonly Service service = Public();
    private readonly string key;

    public KeyRequestTests() => key = service.AddKey();

    public void Dispose() => service.Dispose();

    [Fact]
    public async Task Every_operation_but_health_needs_a_key_and_so_does_what_is_none()
    {
        IEnumerable<string> operations =
        [
            .. (await service.AskAsync("GET /openapi/v1.json")).Json["paths"]!.AsObject().SelectMany(path =>
                path.Value!.AsObject().Select(operation => $"{operation.Key.ToUpperInvariant()} {path.Key.Replace("{id}", "x")}"))
                .Where(operation => !operation.Contains("/health/")),
            "GET /nowhere", "DELETE /v1/machines", "HEAD /v1/machines",
        ];

        Assert.True(operations.Count() > 10);
        foreach (string operation in operations)
        {
            Answer answer = await service.AskAsync(operation);
            Assert.True(answer.Status == 401, $"{operation} was answered with {answer.Status}.");
            Assert.Equal("Bearer realm=\"part-picker\"", answer.Header("WWW-Authenticate"));
            Assert.Equal("application/problem+json", answer.MediaType);
            if (!operation.StartsWith("HEAD"))
                Assert.Equal("key-needed", answer.Code);
        }
    }

    [Theory]
    [InlineData("/health/live")]
    [InlineData("/health/ready")]
    [InlineData("/docs/errors")]
    [InlineData("/docs/keys")]
    [InlineData("/docs/api/index.html")]
    [InlineData("/docs/limits")]
    [InlineData("/openapi/v1.json")]
    public async Task What_tells_nothing_of_a_catalog_needs_none(string path) =>
        Assert.Equal(200, (await service.AskAsync($"GET {path}")).Status);

    [Fact]
    public async Task The_start_page_needs_none_and_tells_nothing_of_the_catalog()
    {
        Answer page = await service.AskAsync("GET /");

        Assert.Equal(200, page.Status);
        Assert.DoesNotContain(SampleCatalog.Machine, page.Text);
        Assert.Contains("href=\"/docs/keys\"", page.Text);
        using Service local = new();
        Assert.Contains(SampleCatalog.Machine, (await local.GetAsync("/")).Text);
    }

    [Fact]
    public async Task A_key_lets_its_holder_read_and_ask()
    {
        service.Client.DefaultRequestHeaders.Add("Authorization", $"bearer {key}");

        Assert.Equal(200, (await service.GetAsync("/v1/machines")).Status);
        Assert.Equal(404, (await service.GetAsync("/nowhere")).Status);
        Assert.Equal(200, (await service.PostAsync("/v1/predictions", """{ "machine": "valley-two-seater" }""")).Status);
        Assert.Equal(200, (await service.PostLinesAsync("/v1/bulk-predictions", "{}")).Status);
    }

    [Fact]
    public async Task What_a_key_opened_is_kept_by_no_cache_that_others_use()
    {
        Answer keyed = await service.AskAsync("GET /v1/machines", Bearer(key));
        Answer again = await service.AskAsync("GET /v1/machines", Bearer(key), ("If-None-Match", keyed.Header("ETag")!));

        Assert.Contains("private", keyed.Header("Cache-Control"));
        Assert.DoesNotContain("public", keyed.Header("Cache-Control"));
        Assert.Equal((304, keyed.Header("Cache-Control")), (again.Status, again.Header("Cache-Control")));
        Assert.DoesNotContain("private", (await service.AskAsync("GET /docs/errors")).Header("Cache-Control"));
        Assert.Equal("no-store", (await service.AskAsync("GET /v1/machines/none-such", Bearer(key))).Header("Cache-Control"));
    }

    [Fact]
    public async Task A_key_that_does_not_count_is_told_why_and_not_repeated()
    {
        string expired = service.AddKey(kept => kept with { ExpiresAt = DateTimeOffset.UtcNow.AddSeconds(-1) });
        string revoked = service.AddKey(kept => kept with { RevokedAt = DateTimeOffset.UtcNow });
        string page = service.AddKey("--scope", "read", "--origin", "https://shop.example");
        string unknown = KeyText.Make(publishable: false);
        ((string, string)[] Sent, string Why)[] cases =
        [
            ([Bearer(expired)], "expired at 20"),
            ([Bearer(revoked)], "was revoked."),
            ([Bearer(unknown)], "knows no such key."),
            ([Bearer(key[..^1])], "knows no such key."),
            ([Bearer("")], "not of the form"),
            ([("Authorization", $"Basic {key}")], "not of the form"),
            ([("Authorization", key)], "not of the form"),
            ([Bearer(page), From("https://shop.example")], "is sent as Part-Picker-Key"),
            ([OfPage(key)], "never from a web page"),
            ([OfPage(page), Bearer(key)], "More than one key"),
        ];

        foreach (((string, string)[] sent, string why) in cases)
        {
            Answer answer = await service.AskAsync("GET /v1/machines", sent);
            Assert.Equal((401, "key-invalid"), (answer.Status, answer.Code));
            Assert.Contains(why, (string?)answer.Json["detail"]);
            Assert.Equal("Bearer realm=\"part-picker\", error=\"invalid_token\"", answer.Header("WWW-Authenticate"));
            foreach (string text in new[] { key, expired, revoked, unknown, page })
                Assert.DoesNotContain(text[4..], answer.Text);
        }

        // What needs no key does not look at one.
        Assert.Equal(200, (await service.AskAsync("GET /health/live", Bearer(revoked))).Status);
    }

    [Fact]
    public async Task A_key_that_is_revoked_or_made_while_the_service_runs_counts_so_within_a_second()
    {
        Assert.Equal(200, (await service.AskAsync("GET /v1/machines", Bearer(key))).Status);

        service.Revoke(key);
        string another = service.AddKey();
        await Task.Delay(TimeSpan.FromSeconds(1));

        Assert.Equal(401, (await service.AskAsync("GET /v1/machines", Bearer(key))).Status);
        Assert.Equal(200, (await service.AskAsync("GET /v1/machines", Bearer(another))).Status);
    }

    [Fact]
    public async Task A_run_that_is_under_way_ends_with_its_key()
    {
        const string Line = "{\"request\":{\"machine\":\"valley-two-seater\"}}\n";
        Pipe body = new();
        StreamContent sent = new(body.Reader.AsStream());
        sent.Headers.ContentType = MediaTypeHeaderValue.Parse("application/x-ndjson");
        using HttpRequestMessage request = new(HttpMethod.Post, "/v1/bulk-predictions") { Content = sent };
        request.Headers.Add("Authorization", $"Bearer {key}");
        Task<HttpResponseMessage> running = service.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
        await body.Writer.WriteAsync(Encoding.ASCII.GetBytes(Line));
        using HttpResponseMessage response = await running;
        using StreamReader answers = new(await response.Content.ReadAsStreamAsync());
        Assert.Contains("\"status\":200", await answers.ReadLineAsync());

        service.Revoke(key);
        await Task.Delay(TimeSpan.FromSeconds(1));
        await body.Writer.WriteAsync(Encoding.ASCII.GetBytes(Line));

        string? refused = await answers.ReadLineAsync();
        Assert.Contains("\"status\":401", refused);
        Assert.Contains("\"code\":\"key-invalid\"", refused);
        await body.Writer.CompleteAsync();
        Assert.Contains("\"count\":2,\"failed\":1", await answers.ReadLineAsync());
    }

    [Fact]
    public async Task On_its_own_machine_reads_are_open_and_a_wrong_key_is_told_all_the_same()
    {
        using Service local = new();
        string own = local.AddKey();

        Assert.Equal(200, (await local.AskAsync("GET /v1/machines")).Status);
        Assert.Equal("key-invalid", (await local.AskAsync("GET /v1/machines", Bearer(key))).Code);
        Assert.Equal(200, (await local.AskAsync("GET /v1/machines", Bearer(own))).Status);
    }

    [Theory]
    [InlineData("127.0.0.1", 200)]
    [InlineData("127.8.9.10", 200)]
    [InlineData("::1", 200)]
    [InlineData("::ffff:127.0.0.1", 200)]
    [InlineData("192.168.1.20", 401)]
    [InlineData("::ffff:192.168.1.20", 401)]
    [InlineData("2001:db8::1", 401)]
    public async Task Whoever_comes_from_elsewhere_needs_a_key_however_the_service_is_reached(string address, int status)
    {
        using Service local = new();
        using HttpClient caller = local.From(IPAddress.Parse(address));

        Assert.Equal(status, (await caller.AskAsync("GET /v1/machines")).Status);
    }

    [Fact]
    public async Task Where_others_may_ask_the_own_machine_needs_a_key_too()
    {
        using HttpClient caller = service.From(IPAddress.Loopback);

        Assert.Equal(401, (await caller.AskAsync("GET /v1/machines")).Status);
    }

    [Fact]
    public void The_store_holds_no_key_that_could_be_read()
    {
        string page = service.AddKey("--scope", "read", "--origin", "https://shop.example", "--name", "shop window");
        string[] files = Directory.GetFiles(service.DataFolder);
        string kept = string.Concat(files.Select(file =>
        {
            using FileStream stream = new(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            using StreamReader reader = new(stream, System.Text.Encoding.Latin1);
            return reader.ReadToEnd();
        }));

        Assert.Contains("shop window", kept);
        foreach (string text in new[] { key, page })
        {
            Assert.DoesNotContain(text[4..], kept);
            byte[] random = System.Buffers.Text.Base64Url.DecodeFromChars(text.AsSpan(4));
            Assert.DoesNotContain(System.Text.Encoding.Latin1.GetString(random), kept);
        }
    }
}
