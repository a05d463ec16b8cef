using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using PartPicker.Api.Capacity;
using PartPicker.Api.Errors;
using PartPicker.Api.Picks;
using PartPicker.Api.Wire;
using PartPicker.Service.Tests.Picks;
using PartPicker.Storage;
using Xunit;

namespace PartPicker.Service.Tests.Errors;

/// <summary>Whatever cannot be served is answered with a problem document with a listed code.</summary>
[Collection(ServiceTests.Name)]
public sealed class ProblemDocumentTests(Service service)
{
    private const string Question = """
        { "machine": "valley-two-seater", "targets": { "engagementRpm": 2200, "shiftRpm": 7900 }, "ratioPoints": 3 }
        """;

    [Theory]
    [InlineData("GET", "/nowhere", 404, "unknown-route")]
    [InlineData("GET", "/v1/nowhere", 404, "unknown-route")]
    [InlineData("POST", "/v1", 404, "unknown-route")]
    [InlineData("DELETE", "/v1/machines", 405, "method-not-allowed")]
    [InlineData("GET", "/v1/picks", 405, "method-not-allowed")]
    [InlineData("PUT", "/v1/picks/1", 405, "method-not-allowed")]
    [InlineData("GET", "/v1/machines/none-such", 404, "machine-not-found")]
    [InlineData("GET", "/v1/parts/none-such", 404, "part-not-found")]
    [InlineData("GET", "/v1/parts/valley-two-seater", 404, "part-not-found")]
    [InlineData("GET", "/v1/picks/none-such", 404, "pick-not-found")]
    [InlineData("GET", "/v1/machines?units=inch", 400, "unknown-parameter")]
    [InlineData("GET", "/v1/machines/valley-two-seater?unit=inch", 400, "unknown-parameter")]
    [InlineData("GET", "/v1/machines/valley-two-seater?units=Inch", 400, "unknown-word")]
    [InlineData("GET", "/v1/parts/ds-96-201?units=inch&units=metric", 400, "duplicate-parameter")]
    [InlineData("GET", "/v1/parts/ds-96-201?precision=", 400, "unknown-word")]
    [InlineData("GET", "/v1/parts/ds-96-201?precision=3&by=2", 400, "invalid-request")]
    public async Task A_wrong_address_is_told(string method, string path, int status, string code) =>
        AssertProblem(await service.SendAsync(new HttpMethod(method), path), status, code);

    [Fact]
    public async Task A_wrong_method_names_the_right_ones()
    {
        Answer answer = await service.SendAsync(HttpMethod.Delete, "/v1/machines");

        Assert.Equal("GET, HEAD", answer.Header("Allow"));
    }

    [Theory]
    [InlineData("", "The body is empty. Send one JSON object")]
    [InlineData(" \n\t", "The body is empty. Send one JSON object")]
    [InlineData("{", "line 1, byte 2")]
    [InlineData("{ \"machine\": \"x\",\n  \"targets\": }", "line 2, byte 14")]
    [InlineData("{} {}", "line 1, byte 4")]
    [InlineData("{ \"a\": 1, }", "line 1")]
    [InlineData("// comment\n{}", "line 1")]
    [InlineData("{ \"a\": NaN }", "line 1, byte 8")]
    [InlineData("{\n \"machine\": \"\\ud800\" }", "line 2, byte 13")]
    public async Task A_body_that_is_no_JSON_is_told_with_its_place(string body, string place)
    {
        foreach (string path in new[] { "/v1/picks", "/v1/predictions" })
        {
            Answer answer = await service.PostAsync(path, body);

            AssertProblem(answer, 400, "malformed-json");
            Assert.Contains(place, (string?)answer.Json["detail"]);
        }
    }

    [Fact]
    public async Task A_body_that_is_no_UTF8_is_malformed()
    {
        byte[] latin = [.. Encoding.ASCII.GetBytes("{ \"machine\": \""), 0xE9, .. Encoding.ASCII.GetBytes("\" }")];

        AssertProblem(await Post(latin, "application/json"), 400, "malformed-json");
    }

    [Fact]
    public async Task A_byte_order_mark_is_passed_over()
    {
        Answer answer = await Post([0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes("[]")], "application/json");

        AssertProblem(answer, 400, "wrong-type");
    }

    [Theory]
    [InlineData(null, "No Content-Type was sent.")]
    [InlineData("text/plain", "Content-Type was sent as text/plain.")]
    [InlineData("application/xml", "Content-Type was sent as application/xml.")]
    [InlineData("application/json; charset=utf-16", "Content-Type was sent as application/json; charset=utf-16.")]
    public async Task A_body_that_is_not_said_to_be_JSON_is_refused(string? mediaType, string told)
    {
        Answer answer = await Post("{}"u8.ToArray(), mediaType);

        AssertProblem(answer, 415, "json-needed");
        Assert.StartsWith($"{told} Send Content-Type: application/json", (string?)answer.Json["detail"]);
    }

    [Theory]
    [InlineData("1500", "1500")]
    [InlineData("\"1500\"", "\"1500\"")]
    public async Task A_number_without_its_unit_is_shown_as_sent_and_with_the_units_of_its_field(string json, string sent)
    {
        Answer answer = await service.PostAsync(
            "/v1/predictions", $$"""{ "machine": "valley-two-seater", "altitude": {{json}} }""");

        AssertProblem(answer, 400, "unit-needed");
        Assert.Equal(sent, (string?)answer.Json["errors"]![0]!["sent"]);
        Assert.Contains("\"1500 m\" or \"1500 ft\"", (string?)answer.Json["errors"]![0]!["expected"]);
    }

    [Theory]
    [InlineData("altitude", "40000 m", "from -500 m to 6000 m")]
    [InlineData("temperature", "-300 °C", "from -60 °C to 60 °C")]
    [InlineData("relativeHumidity", "150 %", "from 0 % to 100 %")]
    public async Task Air_that_cannot_be_is_refused_with_its_place_its_value_and_what_may_be_sent(
        string member, string sent, string limits)
    {
        Answer answer = await service.PostAsync(
            "/v1/predictions", $$"""{ "machine": "valley-two-seater", "{{member}}": "{{sent}}" }""");

        AssertProblem(answer, 400, "out-of-range");
        JsonNode error = Assert.Single(answer.Json["errors"]!.AsArray())!;
        Assert.Equal($"/{member}", (string?)error["pointer"]);
        Assert.Equal($"\"{sent}\"", (string?)error["sent"]);
        Assert.Contains(limits, (string?)error["expected"]);
        Assert.Contains(", as in \"", (string?)error["expected"]);
    }

    [Theory]
    [InlineData("/v1/parts?kind=driveSpringg", "\"driveSpring\"")]
    [InlineData("/v1/parts?knid=belt", "\"kind\"")]
    [InlineData("/v1/parts?fitsMachine=valley-twoseater", "\"valley-two-seater\"")]
    [InlineData("/v1/parts?outlet=quay-store", "\"quay-stores\"")]
    [InlineData("/v1/parts?sort=-freeLenght", "\"freeLength\"")]
    [InlineData("/v1/parts?rat.min=3", "\"rate\"")]
    [InlineData("/v1/parts?material=music-wire-228", "\"music-wire-a228\"")]
    [InlineData("/v1/parts/ds-96-210", "\"ds-96-201\"")]
    [InlineData("/v1/machines/canyon-racr", "\"canyon-racer\"")]
    [InlineData("{ \"machin\": \"valley-two-seater\" }", "\"machine\"")]
    [InlineData("{ \"machine\": \"valey-two-seater\" }", "\"valley-two-seater\"")]
    [InlineData("{ \"machine\": \"valley-two-seater\", \"airLaw\": \"SaeJ1349\" }", "\"saeJ1349\"")]
    [InlineData("{ \"machine\": \"valley-two-seater\", \"parts\": { \"helix\": \"hx-4o\" } }", "\"hx-4")]
    public async Task What_is_misspelt_is_asked_about(string question, string meant)
    {
        Answer answer = question[0] == '{'
            ? await service.PostAsync("/v1/predictions", question)
            : await service.GetAsync(question);

        Assert.InRange(answer.Status, 400, 404);
        Assert.Contains(
            $"Did you mean {meant}",
            string.Join('\n', [(string)answer.Json["detail"]!, .. answer.Json["errors"]!.AsArray().Select(e => (string)e!["expected"]!)]));
    }

    [Theory]
    [InlineData("/v1/parts?kind=xyzzy")]
    [InlineData("/v1/machines/moon-buggy")]
    public async Task What_is_like_nothing_gets_no_guess(string address) =>
        Assert.DoesNotContain("Did you mean", (await service.GetAsync(address)).Text);

    [Fact]
    public async Task A_material_that_is_none_gets_the_list_of_those_that_are()
    {
        Answer answer = await service.GetAsync("/v1/parts?material=steel");

        AssertProblem(answer, 400, "unknown-word");
        Assert.Contains("music-wire-a228, ", (string?)answer.Json["errors"]![0]!["expected"]);
    }

    [Fact]
    public async Task The_detail_says_what_was_sent_and_what_is_allowed() =>
        Assert.Equal(
            "Query parameter limit, sent as abc: a whole number from 1 to 200",
            (string?)(await service.GetAsync("/v1/parts?limit=abc")).Json["detail"]);

    [Fact]
    public async Task A_compressed_body_is_refused()
    {
        ByteArrayContent content = new([0x1F, 0x8B]);
        content.Headers.ContentType = MediaTypeHeaderValue.Parse("application/json");
        content.Headers.ContentEncoding.Add("gzip");

        AssertProblem(await service.SendAsync(HttpMethod.Post, "/v1/picks", content), 415, "json-needed");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_body_larger_than_the_limit_is_refused(bool saysItsLength)
    {
        byte[] body = new byte[RequestLimits.MaxBodyBytes + 1];
        Array.Fill(body, (byte)' ');
        HttpContent content = saysItsLength ? new ByteArrayContent(body) : new StreamContent(new UnknownLength(body));
        content.Headers.ContentType = MediaTypeHeaderValue.Parse("application/json");

        Answer answer = await service.SendAsync(HttpMethod.Post, "/v1/picks", content);

        AssertProblem(answer, 413, "body-too-large");
        Assert.Contains("262144", (string?)answer.Json["detail"]);
    }

    [Fact]
    public async Task A_body_as_large_as_the_limit_is_read()
    {
        byte[] body = new byte[RequestLimits.MaxBodyBytes];
        Array.Fill(body, (byte)' ');
        "[]"u8.CopyTo(body);

        AssertProblem(await Post(body, "application/json"), 400, "wrong-type");
    }

    [Theory]
    [InlineData(100_000, "too-deep")]
    [InlineData(RequestLimits.MaxDepth + 1, "too-deep")]
    [InlineData(RequestLimits.MaxDepth, "unknown-member")]
    public async Task Nesting_has_a_limit(int levels, string code)
    {
        string nested = new string('[', levels - 1) + new string(']', levels - 1);
        string body = $$"""{ {{Question.Trim()[1..^1]}}, "x": {{nested}} }""";

        AssertProblem(await service.PostAsync("/v1/picks", body), 400, code);
    }

    [Fact]
    public async Task All_faults_of_a_request_come_at_once_with_place_code_sent_and_expected()
    {
        Answer answer = await service.PostAsync(
            "/v1/picks?units=imperial",
            """{ "machine": "valley-two-seater", "targets": { "engagementRpm": 2, "shiftRpm": 7900 } }""");

        AssertProblem(answer, 400, "invalid-request");
        Assert.Equal(
            JsonNode.Parse("""
                [
                  { "pointer": "units", "code": "unknown-word",
                    "sent": "imperial", "expected": "one of: metric, inch" },
                  { "pointer": "/targets/engagementRpm", "code": "out-of-range",
                    "sent": "2", "expected": "a bare number from 100 to 30000" }
                ]
                """)!.ToJsonString(),
            answer.Json["errors"]!.ToJsonString());
    }

    [Fact]
    public async Task What_the_selection_finds_wrong_is_a_problem_too()
    {
        Answer answer = await service.PostAsync(
            "/v1/predictions",
            """{ "machine": "valley-two-seater", "baseline": { "engagementRpm": 8900, "shiftRpm": 200 } }""");

        AssertProblem(answer, 400, "baseline-unusable");
        Assert.Equal("/baseline/shiftRpm", (string?)answer.Json["errors"]![0]!["pointer"]);
    }

    [Fact]
    public async Task A_fault_of_the_service_is_500_without_details()
    {
        using WebApplicationFactory<Program> broken = With(services => services.Replace(
            ServiceDescriptor.Singleton<IPickStore>(new BrokenStore())));
        using HttpResponseMessage response = await broken.CreateClient().PostAsync(
            new Uri("/v1/picks", UriKind.Relative), new StringContent(Question, Encoding.UTF8, "application/json"));
        Answer answer = await Answer.ReadAsync(response);

        AssertProblem(answer, 500, "internal-error");
        Assert.DoesNotContain(BrokenStore.Secret, answer.Text);
    }

    [Fact]
    public async Task A_search_past_its_time_is_stopped_and_told()
    {
        // Another search keeps the only place, so that this one is still waiting when its time is up.
        using SearchGate gate = new(TimeSpan.FromMilliseconds(50), new Places(1, 1, "searches"));
        using HeldSearch other = new(gate);
        using WebApplicationFactory<Program> busy = With(services => services.Replace(
            ServiceDescriptor.Singleton(gate)));
        using HttpResponseMessage response = await busy.CreateClient().PostAsync(
            new Uri("/v1/picks", UriKind.Relative), new StringContent(Question, Encoding.UTF8, "application/json"));

        AssertProblem(await Answer.ReadAsync(response), 503, "took-too-long");
        Assert.Equal("held", await other.Finish());
    }

    private WebApplicationFactory<Program> With(Action<IServiceCollection> change) =>
        service.WithWebHostBuilder(builder => builder.ConfigureTestServices(change));

    private Task<Answer> Post(byte[] body, string? mediaType)
    {
        ByteArrayContent content = new(body);
        content.Headers.ContentType = mediaType is null ? null : MediaTypeHeaderValue.Parse(mediaType);
        return service.SendAsync(HttpMethod.Post, "/v1/picks", content);
    }

    private static void AssertProblem(Answer answer, int status, string code)
    {
        Assert.Equal((status, code), (answer.Status, answer.Code));
        Assert.Equal("application/problem+json", answer.MediaType);
        Assert.Equal(status, (int?)answer.Json["status"]);
        Assert.Contains(ErrorCodes.All, listed => listed.Code == code);
        Assert.Equal($"/docs/errors#{code}", (string?)answer.Json["type"]);
        Assert.NotEmpty((string)answer.Json["title"]!);
        Assert.NotEmpty((string)answer.Json["detail"]!);
        Assert.NotNull(answer.Json["errors"]);
    }

    private sealed class UnknownLength(byte[] bytes) : MemoryStream(bytes)
    {
        public override bool CanSeek => false;
    }

    private sealed class BrokenStore : IPickStore
    {
        public const string Secret = "the store is on fire";

        public StoredPick? Find(string id, DateTimeOffset now) => throw new InvalidOperationException(Secret);

        public DateTimeOffset? ExpiryOf(string id) => throw new InvalidOperationException(Secret);

        public StoredPick Keep(
            string id, string catalogRevision, string modelVersion, ReadOnlyMemory<byte> body, DateTimeOffset now) =>
            throw new InvalidOperationException(Secret);
    }
}
