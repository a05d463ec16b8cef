using Xunit;
using static PartPicker.Service.Tests.Keys.KeyedServices;

namespace PartPicker.Service.Tests.Keys;

/// <summary>What browsers are told on behalf of web pages.</summary>
public sealed class CrossOriginTests : IDisposable
{
    private const string Shop = "https://shop.example";
    private const string Club = "https://club.example:8443";
    private const string Stranger = "https://stranger.example";

    private readonly Service service = Public();
    private readonly string ofShop;
    private readonly string ofClub;

    public CrossOriginTests()
    {
        ofShop = service.AddKey("--scope", "read", "--origin", Shop, "--origin", "http://localhost:3000");
        ofClub = service.AddKey("--scope", "read", "--origin", Club);
    }

    public void Dispose() => service.Dispose();

    [Fact]
    public async Task A_page_may_use_its_key_and_read_the_answer()
    {
        foreach (string origin in new[] { Shop, "http://localhost:3000" })
        {
            Answer answer = await service.AskAsync("GET /v1/machines", From(origin), OfPage(ofShop));

            Assert.Equal(200, answer.Status);
            Assert.Equal(origin, answer.Header("Access-Control-Allow-Origin"));
            Assert.Equal("Origin", answer.Header("Vary"));
            Assert.Null(answer.Header("Access-Control-Allow-Credentials"));
            string[] exposed = answer.Header("Access-Control-Expose-Headers")!.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries);
            Assert.Superset(
                new HashSet<string> { "ETag", "Location", "RateLimit", "RateLimit-Policy", "Retry-After", "Server-Timing", "Deprecation", "Sunset" },
                exposed.ToHashSet());
        }
    }

    [Fact]
    public async Task A_page_that_the_key_is_not_bound_to_is_refused()
    {
        Answer unknown = await service.AskAsync("GET /v1/machines", From(Stranger), OfPage(ofShop));
        Assert.Equal((403, "origin-not-allowed"), (unknown.Status, unknown.Code));
        Assert.Null(unknown.Header("Access-Control-Allow-Origin"));
        Assert.Equal("Origin", unknown.Header("Vary"));

        // A page with a key of its own may read why it is refused.
        Answer known = await service.AskAsync("GET /v1/machines", From(Club), OfPage(ofShop));
        Assert.Equal((403, "origin-not-allowed"), (known.Status, known.Code));
        Assert.Equal(Club, known.Header("Access-Control-Allow-Origin"));

        foreach (string near in new[] { "https://shop.example:444", "http://shop.example", "https://shop.example.evil.example", "https://SHOP.example", "null" })
            Assert.Equal(403, (await service.AskAsync("GET /v1/machines", From(near), OfPage(ofShop))).Status);
    }

    [Fact]
    public async Task A_program_without_a_page_is_refused()
    {
        Answer answer = await service.AskAsync("GET /v1/machines", OfPage(ofShop));

        Assert.Equal((403, "origin-not-allowed"), (answer.Status, answer.Code));
        Assert.Contains("no header Origin", (string?)answer.Json["detail"]);
    }

    [Theory]
    [InlineData("GET", "Part-Picker-Key")]
    [InlineData("POST", "content-type,part-picker-key")]
    [InlineData("HEAD", "if-none-match,part-picker-key")]
    public async Task A_browser_that_asks_first_is_told_what_a_page_may(string method, string headers)
    {
        Answer answer = await Preflight(Shop, method, headers);

        Assert.Equal(204, answer.Status);
        Assert.Equal(Shop, answer.Header("Access-Control-Allow-Origin"));
        Assert.Contains(method, answer.Header("Access-Control-Allow-Methods"));
        Assert.Contains("Part-Picker-Key", answer.Header("Access-Control-Allow-Headers"));
        Assert.Contains("If-None-Match", answer.Header("Access-Control-Allow-Headers"));
        Assert.DoesNotContain("Authorization", answer.Header("Access-Control-Allow-Headers"));
        Assert.DoesNotContain("*", string.Concat(answer.Headers.Values));
        Assert.Equal("600", answer.Header("Access-Control-Max-Age"));
        Assert.Null(answer.Header("Access-Control-Allow-Credentials"));
        Assert.Equal("Origin", answer.Header("Vary"));
    }

    [Fact]
    public async Task A_page_without_a_key_of_its_own_is_told_nothing()
    {
        foreach (string origin in new[] { Stranger, "null", "https://shop.example.evil.example" })
        {
            Answer answer = await Preflight(origin, "GET", "Part-Picker-Key");
            Assert.Null(answer.Header("Access-Control-Allow-Origin"));
            Assert.Equal("Origin", answer.Header("Vary"));
        }

        // Nor is one on the service's own machine, where a person's browser may show any page.
        using Service local = new();
        Assert.Null((await local.AskAsync("GET /v1/machines", From(Stranger))).Header("Access-Control-Allow-Origin"));
    }

    [Fact]
    public async Task A_page_loses_what_it_may_with_its_key()
    {
        Assert.Equal(Club, (await Preflight(Club, "GET", "Part-Picker-Key")).Header("Access-Control-Allow-Origin"));

        service.Revoke(ofClub);
        await Task.Delay(TimeSpan.FromSeconds(1));

        Assert.Null((await Preflight(Club, "GET", "Part-Picker-Key")).Header("Access-Control-Allow-Origin"));
        Assert.Equal("key-invalid", (await service.AskAsync("GET /v1/machines", From(Club), OfPage(ofClub))).Code);
    }

    [Theory]
    [InlineData("GET /v1/machines/none-such", 404)]
    [InlineData("GET /nowhere", 404)]
    [InlineData("GET /v1/machines?x=1", 400)]
    [InlineData("POST /v1/picks", 415)]
    [InlineData("GET /health/ready", 200)]
    public async Task A_page_may_read_what_is_wrong(string request, int status)
    {
        Answer answer = await service.AskAsync(request, From(Shop), OfPage(ofShop));

        Assert.Equal(status, answer.Status);
        Assert.Equal(Shop, answer.Header("Access-Control-Allow-Origin"));
    }

    [Fact]
    public async Task A_page_may_read_that_it_asks_too_much_or_that_its_key_is_missing()
    {
        using Service strict = Public("requests-per-page-key=1");
        string key = strict.AddKey("--scope", "read", "--origin", Shop);

        Assert.Equal(200, (await strict.AskAsync("GET /v1/machines", From(Shop), OfPage(key))).Status);
        Answer many = await strict.AskAsync("GET /v1/machines", From(Shop), OfPage(key));
        Answer none = await strict.AskAsync("GET /v1/machines", From(Shop));

        Assert.Equal((429, Shop), (many.Status, many.Header("Access-Control-Allow-Origin")));
        Assert.Equal((401, Shop), (none.Status, none.Header("Access-Control-Allow-Origin")));
    }

    [Fact]
    public async Task Every_answer_says_that_it_depends_on_the_origin()
    {
        foreach (string path in new[] { "/v1/machines", "/health/live", "/", "/docs/errors", "/openapi/v1.json" })
            Assert.Equal("Origin", (await service.AskAsync($"GET {path}")).Header("Vary"));
    }

    private Task<Answer> Preflight(string origin, string method, string headers) => service.AskAsync(
        "OPTIONS /v1/picks", From(origin), ("Access-Control-Request-Method", method),
        ("Access-Control-Request-Headers", headers));
}
