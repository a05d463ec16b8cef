using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using PartPicker.Api.Deprecations;
using PartPicker.Api.Wire;
using Xunit;

namespace PartPicker.Service.Tests.Deprecations;

/// <summary>What is deprecated is told wherever it is used or sent, here by a table of samples.</summary>
public sealed class DeprecationTests : IDisposable
{
    private const string Page = "</docs/versioning#deprecations>; rel=\"deprecation\"; type=\"text/html\"";
    private const string Prediction = "/v1/predictions";

    private static readonly DateTimeOffset Since = new(2026, 5, 6, 0, 0, 0, TimeSpan.Zero);
    private static readonly DateTimeOffset Sunset = new(2098, 7, 8, 0, 0, 0, TimeSpan.Zero);

    private static readonly DeprecationTable Samples = new(
        new Deprecation("altitude", Since, Sunset, "use airPressure") { Record = typeof(PredictionRequestWire) },
        new Deprecation("stationMasses", Since.AddDays(1), Sunset.AddDays(-1), "use masses") { Record = typeof(SetWire) },
        new Deprecation("group", Since, Sunset, "use groupBy") { Record = typeof(PickRequestWire) },
        new Deprecation("computed", Since, Sunset, "use derived") { Record = typeof(PartItemWire) },
        new Deprecation("likelihood", Since, Sunset, "use chance") { Record = typeof(PickWire), Successor = "/v1/choices" },
        new Deprecation("outlet", Since, Sunset, "ask for offers") { Operation = "getPart", Successor = "/v1/offers" });

    private readonly Service service = new();
    private readonly WebApplicationFactory<Program> aged;

    public DeprecationTests() => aged = service.WithWebHostBuilder(builder => builder.ConfigureTestServices(
        services => services.Replace(ServiceDescriptor.Singleton(Samples))));

    public void Dispose()
    {
        aged.Dispose();
        service.Dispose();
    }

    [Fact]
    public async Task A_deprecated_member_of_a_request_is_told_where_it_is_used()
    {
        Answer used = await Post(Prediction, """{ "machine": "valley-two-seater", "altitude": "900 m", "ratioPoints": 3 }""");
        Answer both = await Post(
            Prediction,
            """{ "machine": "valley-two-seater", "altitude": "900 m", "ratioPoints": 3, "parts": { "stationMasses": { "tip": "8 g" } } }""");
        Answer without = await Post(Prediction, """{ "machine": "valley-two-seater", "ratioPoints": 3 }""");
        Answer refused = await Post(Prediction, """{ "machine": "moon-buggy", "altitude": "900 m" }""");

        Assert.Equal(200, used.Status);
        AssertTold(used, Since, Sunset, Page);
        // Of several the earliest dates count.
        AssertTold(both, Since, Sunset.AddDays(-1), Page);
        AssertNothingTold(without);
        Assert.Equal(400, refused.Status);
        AssertTold(refused, Since, Sunset, Page);
    }

    [Fact]
    public async Task A_deprecated_parameter_is_told_at_its_operation_and_leads_to_what_follows_it()
    {
        Answer asked = await Get("/v1/machines/valley-two-seater");
        Answer used = await Get("/v1/parts/ds-96-201?outlet=valley-counter");

        AssertNothingTold(asked);
        AssertTold(used, Since, Sunset, Page + ", </v1/offers>; rel=\"successor-version\"");
    }

    [Fact]
    public async Task A_deprecated_member_of_an_answer_is_told_however_deep_and_without_a_body_too()
    {
        Answer part = await Get("/v1/parts/ds-96-201");
        AssertTold(part, Since, Sunset, Page);

        Answer known = await Get("/v1/parts/ds-96-201", part.Header("ETag"));
        Assert.Equal(304, known.Status);
        AssertTold(known, Since, Sunset, Page);

        // Beside the link to the next page.
        Answer list = await Get("/v1/parts?kind=helix&limit=2");
        Assert.Matches("^</v1/parts\\?[^>]*>; rel=\"next\", " + System.Text.RegularExpressions.Regex.Escape(Page) + "$", list.Header("Link"));
    }

    [Fact]
    public async Task A_stored_answer_tells_the_earlier_of_its_own_sunset_and_that_of_a_member()
    {
        const string question = """
            {
              "machine": "valley-two-seater", "targets": { "engagementRpm": 2200, "shiftRpm": 7650 }, "ratioPoints": 3, "count": 1,
              "keep": ["drivenSpring", "hole", "helix", "driveSpring"]
            }
            """;
        Answer plain = await service.PostAsync("/v1/picks", question);
        foreach (Answer told in new[] { await Post("/v1/picks", question), await Get(plain.Header("Location")!) })
        {
            Assert.Equal(plain.Body, told.Body);
            Assert.Equal(plain.Header("Sunset"), told.Header("Sunset"));
            Assert.Equal($"@{Since.ToUnixTimeSeconds()}", told.Header("Deprecation"));
            // Its request is repeated with group filled in, which nobody has sent: the dates are those of likelihood.
            Assert.Equal(Page + ", </v1/choices>; rel=\"successor-version\"", told.Header("Link"));
        }
    }

    [Fact]
    public async Task A_bulk_run_tells_beforehand_what_its_lines_may_use_or_carry()
    {
        Answer run = await Send(HttpMethod.Post, "/v1/bulk-predictions", new StringContent(
            """{"request":{"machine":"valley-two-seater","ratioPoints":3}}""" + "\n", null, WireJson.LinesMediaType));

        Assert.Equal(200, run.Status);
        AssertTold(run, Since, Sunset.AddDays(-1), Page);
    }

    [Fact]
    public async Task Nothing_is_told_while_nothing_is_deprecated()
    {
        Assert.True(DeprecationTable.Standard.IsEmpty);
        AssertNothingTold(await service.GetAsync("/v1/parts/ds-96-201?outlet=valley-counter"));
        AssertNothingTold(await service.PostAsync(Prediction, """{ "machine": "valley-two-seater", "altitude": "900 m" }"""));
        Assert.DoesNotContain("deprecated", (await service.GetAsync("/openapi/v1.json")).Text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task The_API_document_marks_what_is_deprecated_and_nothing_else()
    {
        JsonNode document = (await Get("/openapi/v1.json")).Json;
        string[] marked = [.. Marked(document, "")];

        Assert.Equal(
            [
                "/components/schemas/Part/properties/computed", "/components/schemas/PartItem/properties/computed",
                "/components/schemas/Pick/properties/likelihood", "/components/schemas/PickRequest/properties/group",
                "/components/schemas/PredictionRequest/properties/altitude", "/components/schemas/Set/properties/stationMasses",
                "/paths/~v1~parts~{id}/get/parameters/1",
            ],
            marked.Order(StringComparer.Ordinal));
        string altitude = (string)document["components"]!["schemas"]!["PredictionRequest"]!["properties"]!["altitude"]!["description"]!;
        Assert.EndsWith("Deprecated since 2026-05-06, gone on 2098-07-08: use airPressure.", altitude);
    }

    [Fact]
    public void A_row_that_is_wrong_is_refused()
    {
        Deprecation right = new("altitude", Since, Since.AddDays(365), "use airPressure") { Record = typeof(PredictionRequestWire) };

        Assert.False(new DeprecationTable(right).IsEmpty);
        foreach (Deprecation wrong in new[]
        {
            right with { Sunset = Since.AddDays(364) }, right with { Name = "hight" }, right with { Record = null },
            right with { Operation = "predict" },
        })
        {
            Assert.Contains(wrong.Name, Assert.Throws<ArgumentException>(() => new DeprecationTable(right, wrong)).Message);
        }
    }

    private static IEnumerable<string> Marked(JsonNode? node, string place) => node switch
    {
        JsonObject members => members.SelectMany(member => Marked(member.Value, $"{place}/{member.Key.Replace('/', '~')}"))
            .Concat(members["deprecated"] is JsonValue value && value.GetValueKind() == System.Text.Json.JsonValueKind.True ? [place] : []),
        JsonArray items => items.SelectMany((item, i) => Marked(item, $"{place}/{i}")),
        _ => [],
    };

    private static void AssertTold(Answer answer, DateTimeOffset since, DateTimeOffset sunset, string link) => Assert.Equal(
        ($"@{since.ToUnixTimeSeconds()}", sunset.ToString("r", CultureInfo.InvariantCulture), link),
        (answer.Header("Deprecation"), answer.Header("Sunset"), answer.Header("Link")));

    private static void AssertNothingTold(Answer answer) =>
        Assert.Equal((null, null, null), (answer.Header("Deprecation"), answer.Header("Sunset"), answer.Header("Link")));

    private Task<Answer> Get(string path, string? tag = null) => Send(HttpMethod.Get, path, null, tag);

    private Task<Answer> Post(string path, string json) =>
        Send(HttpMethod.Post, path, new StringContent(json, null, "application/json"));

    private async Task<Answer> Send(HttpMethod method, string path, HttpContent? content, string? tag = null)
    {
        using HttpClient client = aged.CreateClient();
        using HttpRequestMessage request = new(method, path) { Content = content };
        if (tag is not null)
            request.Headers.TryAddWithoutValidation("If-None-Match", tag);
        using HttpResponseMessage response = await client.SendAsync(request);
        return await Answer.ReadAsync(response);
    }
}
