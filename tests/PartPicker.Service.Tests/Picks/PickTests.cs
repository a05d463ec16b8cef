using System.Globalization;
using System.Text.Json.Nodes;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Service.Tests.Picks;

[Collection(ServiceTests.Name)]
public sealed class PickTests(Service service)
{
    private const string Question = """
        {
          "machine": "valley-two-seater",
          "targets": { "engagementRpm": 2200, "shiftRpm": 7650 },
          "keep": ["drivenSpring", "hole", "helix"], "outlet": "valley-counter", "ratioPoints": 5, "count": 4
        }
        """;

    [Fact]
    public async Task Picks_come_ranked_and_whole()
    {
        JsonNode answer = (await service.PostAsync("/v1/picks", Question)).Json;

        JsonArray picks = answer["picks"]!.AsArray();
        Assert.Equal([1, 2, 3, 4], picks.Select(pick => (int)pick!["rank"]!));
        double[] misses = [.. picks.Select(pick => (double)pick!["miss"]!)];
        Assert.Equal(misses.Order(), misses);
        foreach (JsonNode? pick in picks)
        {
            Assert.Equal(5, pick!["curve"]!.AsArray().Count);
            Assert.Equal((double?)pick["shiftOutRpm"], (double?)pick["curve"]![4]!["upshiftRpm"]);
            Assert.Equal("dv-9.0-9.0", (string?)pick["parts"]!["drivenSpring"]!["id"]);
            Assert.NotEmpty(pick["cautions"]!.AsArray());
            Assert.Equal((double?)pick["miss"], (double?)pick["explanation"]!["value"]);
        }

        Assert.Equal("ds-96-201", (string?)answer["fitted"]!["parts"]!["driveSpring"]!["id"]);
        Assert.True((bool?)answer["fitted"]!["anchored"]);
        Assert.True((long)answer["work"]!["combinations"]! > 4);
        Assert.Equal(PartSelection.ModelVersion, (string?)answer["modelVersion"]);
    }

    [Fact]
    public async Task A_price_is_in_minor_units_of_the_outlet_and_null_without_one()
    {
        JsonNode priced = (await service.PostAsync("/v1/picks", Question)).Json;
        JsonNode unpriced = (await service.PostAsync(
            "/v1/picks", Question.Replace("\"outlet\": \"valley-counter\", ", "", StringComparison.Ordinal))).Json;

        Assert.Contains(priced["picks"]!.AsArray(), pick => (string?)pick!["price"]?["currency"] == "EUR");
        Assert.All(unpriced["picks"]!.AsArray(), pick => Assert.Null(pick!["price"]));
    }

    [Fact]
    public async Task The_same_question_gets_the_same_bytes_by_post_and_by_get()
    {
        Answer first = await service.PostAsync("/v1/picks", Question);
        Answer second = await service.PostAsync("/v1/picks", Question);
        Answer fetched = await service.GetAsync(first.Header("Location")!);

        Assert.Equal((201, 201, 200), (first.Status, second.Status, fetched.Status));
        Assert.Equal(first.Body, second.Body);
        Assert.Equal(first.Body, fetched.Body);
        Assert.Equal($"/v1/picks/{first.Json["id"]}", second.Header("Location"));
        Assert.Equal(first.Header("ETag"), fetched.Header("ETag"));
    }

    [Fact]
    public async Task The_request_as_understood_can_be_sent_again_and_gets_the_same_answer()
    {
        Answer first = await service.PostAsync("/v1/picks", Question);
        Answer again = await service.PostAsync("/v1/picks", first.Json["request"]!.ToJsonString());

        Assert.Equal(first.Body, again.Body);
    }

    [Fact]
    public async Task A_tag_that_is_known_gets_304_by_get_and_never_by_post()
    {
        Answer first = await service.PostAsync("/v1/picks", Question);
        string location = first.Header("Location")!;
        string tag = first.Header("ETag")!;

        Answer known = await service.GetAsync(location, tag);
        Assert.Equal(304, known.Status);
        Assert.Empty(known.Body);
        Assert.Equal(tag, known.Header("ETag"));
        Assert.Equal(304, (await service.GetAsync(location, "W/" + tag)).Status);
        Assert.Equal(304, (await service.GetAsync(location, "*")).Status);
        Assert.Equal(200, (await service.GetAsync(location, "\"other\"")).Status);
        Assert.Equal(201, (await service.SendAsync(
            HttpMethod.Post, "/v1/picks", new StringContent(Question, null, "application/json"), tag)).Status);
    }

    [Fact]
    public async Task The_sunset_header_tells_when_the_answer_may_go()
    {
        Answer answer = await service.PostAsync("/v1/picks", Question);

        DateTimeOffset sunset = DateTimeOffset.ParseExact(answer.Header("Sunset")!, "r", CultureInfo.InvariantCulture);
        Assert.InRange(sunset, DateTimeOffset.UtcNow.AddDays(28), DateTimeOffset.UtcNow.AddDays(31));
        Assert.Equal(answer.Header("Sunset"), (await service.GetAsync(answer.Header("Location")!)).Header("Sunset"));
    }

    [Fact]
    public async Task Time_is_told_in_a_header_and_never_in_the_body()
    {
        string question = Question.Replace("7650", "7651", StringComparison.Ordinal);

        Answer searched = await service.PostAsync("/v1/picks", question);
        Answer stored = await service.PostAsync("/v1/picks", question);

        Assert.StartsWith("search;dur=", searched.Header("Server-Timing"));
        Assert.Null(stored.Header("Server-Timing"));
    }

    [Fact]
    public async Task Units_and_precision_change_the_numbers_and_the_id()
    {
        JsonNode metric = (await service.PostAsync("/v1/picks", Question)).Json;
        JsonNode inch = (await service.PostAsync("/v1/picks?units=inch", Question)).Json;
        JsonNode full = (await service.PostAsync("/v1/picks?precision=full", Question)).Json;

        Assert.Equal(3, new[] { metric, inch, full }.Select(answer => (string?)answer["id"]).Distinct().Count());
        Assert.Equal("km/h", (string?)metric["fitted"]!["curve"]![0]!["vehicleSpeed"]!["unit"]);
        Assert.Equal("mph", (string?)inch["fitted"]!["curve"]![0]!["vehicleSpeed"]!["unit"]);
        double rounded = (double)metric["fitted"]!["engagementRpm"]!;
        double whole = (double)full["fitted"]!["engagementRpm"]!;
        Assert.Equal(rounded, Math.Round(whole, 1));
        Assert.Equal(rounded, (double)inch["fitted"]!["engagementRpm"]!);
        Assert.NotEqual(
            (double)metric["picks"]![0]!["engagementRpm"]!, (double)full["picks"]![0]!["engagementRpm"]!);
    }

    [Fact]
    public async Task A_target_out_of_reach_says_what_stands_in_the_way()
    {
        JsonNode answer = (await service.PostAsync(
            "/v1/picks", Question.Replace("2200", "4900", StringComparison.Ordinal))).Json;

        Assert.All(answer["picks"]!.AsArray(), pick => Assert.False((bool)pick!["withinTolerance"]!));
        Assert.NotEmpty(answer["inTheWay"]!.AsArray());
    }
}
