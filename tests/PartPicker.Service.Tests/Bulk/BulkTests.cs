using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using PartPicker.Api.Bulk;
using PartPicker.Api.Wire;
using Xunit;

namespace PartPicker.Service.Tests.Bulk;

/// <summary>What a bulk run answers, line by line.</summary>
[Collection(ServiceTests.Name)]
public sealed class BulkTests(Service service)
{
    private const string Predictions = "/v1/bulk-predictions";
    private const string Picks = "/v1/bulk-picks";

    private const string Known = """{ "machine": "valley-two-seater", "ratioPoints": 3 }""";
    private const string Unknown = """{ "machine": "moon-buggy" }""";

    private const string Pick = """
        {
          "machine": "valley-two-seater", "targets": { "engagementRpm": 2210, "shiftRpm": 7640 },
          "keep": ["drivenSpring", "hole", "helix"], "ratioPoints": 3, "count": 2, "refusals": 3
        }
        """;

    [Fact]
    public async Task Every_line_has_its_answer_with_its_own_status_in_the_order_of_the_lines()
    {
        Answer answer = await service.PostLinesAsync(
            Predictions, Line(Known, "\"a\""), Line(Unknown, "17"), "", Line(Known), "   \r", "{", Line(Unknown, "-1.5e3"));

        Assert.Equal((200, WireJson.LinesMediaType), (answer.Status, answer.MediaType));
        Assert.Equal("no-store", answer.Header("Cache-Control"));
        Assert.Equal(
            ["1 \"a\" 200", "2 17 400", "4 null 200", "6 null 400", "7 -1.5e3 400"],
            answer.Lines.SkipLast(1).Select(line => $"{line!["line"]} {line["id"]?.ToJsonString() ?? "null"} {line["status"]}"));
        Assert.EndsWith("\n{\"done\":true,\"count\":5,\"failed\":3,\"lastLine\":7,\"problem\":null}\n", answer.Text);
    }

    public static TheoryData<string, string> Requests => new()
    {
        { Predictions, Known },
        { Predictions, Unknown },
        { Predictions, """{ "machine": "valley-two-seater", "altitude": 3, "zz": 1 }""" },
        { Predictions, """{ "machine": "valley-two-seater", "machine": "valley-two-seater" }""" },
        { Predictions, "[]" },
        { Predictions, "null" },
        { Picks, Pick },
        { Picks, """{ "machine": "valley-two-seater", "targets": { "engagementRpm": 8000, "shiftRpm": 8000 }, "keep": ["helix"], "inStockOnly": true }""" },
        { Picks, Unknown },
    };

    [Theory]
    [MemberData(nameof(Requests))]
    public async Task A_line_is_answered_by_the_bytes_that_the_question_gets_alone(string path, string request)
    {
        foreach (string query in new[] { "", "?units=inch&precision=full" })
        {
            string line = Line(request);
            byte[] many = (await service.PostLinesAsync(path + query, line, line)).Body;
            Answer alone = await service.PostAsync(path.Replace("bulk-", "", StringComparison.Ordinal) + query, request);

            string member = alone.Status < 300 ? "result" : "problem";
            int status = alone.Status == 201 ? 200 : alone.Status;
            byte[] expected =
            [
                .. One(1), .. One(2),
                .. Encoding.UTF8.GetBytes(
                    $$"""{"done":true,"count":2,"failed":{{(alone.Status < 300 ? 0 : 2)}},"lastLine":2,"problem":null}""" + "\n"),
            ];
            Assert.Equal(Encoding.UTF8.GetString(expected), Encoding.UTF8.GetString(many));

            byte[] One(int number) =>
            [
                .. Encoding.UTF8.GetBytes($$"""{"line":{{number}},"id":null,"status":{{status}},"{{member}}":"""),
                .. alone.Body, .. "}\n"u8,
            ];
        }
    }

    [Fact]
    public async Task The_sample_predictions_get_in_one_run_what_each_gets_alone()
    {
        string[] requests = [.. Repository.SampleRequests("-prediction.json").Select(Repository.ReadSampleRequest)];

        string[] lines = (await service.PostLinesAsync(Predictions, [.. requests.Select(request => Line(request))]))
            .Text.Split('\n', StringSplitOptions.RemoveEmptyEntries);

        Assert.Equal(requests.Length + 1, lines.Length);
        foreach ((string request, string line) in requests.Zip(lines))
            Assert.Contains($":{(await service.PostAsync("/v1/predictions", request)).Text}}}", line);
    }

    [Fact]
    public async Task A_pick_of_many_is_not_kept_but_one_that_is_kept_is_not_searched_again()
    {
        string unasked = Pick.Replace("7640", "7641", StringComparison.Ordinal);
        string id = (string)(await service.PostLinesAsync(Picks, Line(unasked))).Lines[0]!["result"]!["id"]!;
        Assert.Equal(404, (await service.GetAsync($"/v1/picks/{id}")).Status);

        Answer alone = await service.PostAsync("/v1/picks", Pick);
        JsonNode again = (await service.PostLinesAsync(Picks, Line(Pick))).Lines[0]!["result"]!;
        Assert.Equal((string?)alone.Json["id"], (string?)again["id"]);
        Assert.Equal(200, (await service.GetAsync($"/v1/picks/{alone.Json["id"]}")).Status);
    }

    public static TheoryData<string, string> BadLines => new()
    {
        { "{", "malformed-json" },
        { "{} {}", "malformed-json" },
        { "\"request\"", "wrong-type " },
        { "[]", "wrong-type " },
        { "{}", "missing-member /request" },
        { Known, "missing-member /request, unknown-member /machine, unknown-member /ratioPoints" },
        { Line(Known, "null"), "wrong-type /id" },
        { Line(Known, "true"), "wrong-type /id" },
        { Line(Known, "\"\""), "out-of-range /id" },
        { Line(Known, $"\"{new string('x', RequestLimits.MaxBulkIdLength + 1)}\""), "out-of-range /id" },
        { Line(Known, new string('1', RequestLimits.MaxBulkIdLength + 1)), "out-of-range /id" },
        { """{ "request": {}, "request": {}, "id": 1, "axis": [] }""", "duplicate-member /request, unknown-member /axis" },
        { Line($$"""{ "x": {{new string('[', 100)}}{{new string(']', 100)}} }"""), "too-deep" },
    };

    [Theory]
    [MemberData(nameof(BadLines))]
    public async Task A_line_that_is_none_is_told_and_stops_nothing(string bad, string faults)
    {
        JsonArray lines = (await service.PostLinesAsync(Predictions, bad, Line(Known, "\"good\""))).Lines;

        JsonNode problem = lines[0]!["problem"]!;
        Assert.Equal(400, (int)lines[0]!["status"]!);
        JsonArray errors = problem["errors"]!.AsArray();
        Assert.Equal(
            faults,
            errors.Count == 0
                ? (string?)problem["code"]
                : string.Join(", ", errors.Select(error => $"{error!["code"]} {error["pointer"]}")));
        Assert.Equal((2, 200, "good"), ((int)lines[1]!["line"]!, (int)lines[1]!["status"]!, (string)lines[1]!["id"]!));
        Assert.Equal((2, 1), ((int)lines[2]!["count"]!, (int)lines[2]!["failed"]!));
    }

    [Fact]
    public async Task A_line_that_is_no_JSON_is_told_by_its_number_and_byte()
    {
        JsonArray lines = (await service.PostLinesAsync(Predictions, "", Line(Known), "{ \"id\": }")).Lines;

        Assert.Contains("see line 3, byte 9", (string?)lines[1]!["problem"]!["detail"]);
    }

    [Fact]
    public async Task A_line_that_is_no_UTF8_is_malformed_and_stops_nothing()
    {
        byte[] latin = [.. "{\"id\":\""u8, 0xE9, .. "\"}\n"u8];
        Answer answer = await PostAsync([.. latin, .. Encoding.UTF8.GetBytes(Line(Known) + "\n")]);

        Assert.Equal(["malformed-json", null], answer.Lines.SkipLast(1).Select(line => (string?)line!["problem"]?["code"]));
    }

    [Theory]
    [InlineData(RequestLimits.MaxBodyBytes, 200)]
    [InlineData(RequestLimits.MaxBodyBytes + 1, 413)]
    public async Task A_line_as_long_as_the_limit_is_read_and_a_longer_one_stops_nothing(int length, int status)
    {
        JsonArray lines = (await service.PostLinesAsync(Predictions, Line(Known).PadRight(length), Line(Known))).Lines;

        Assert.Equal([status, 200], lines.SkipLast(1).Select(line => (int)line!["status"]!));
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n")]
    [InlineData(" \r\n\t\n")]
    public async Task A_run_of_nothing_is_done(string body)
    {
        Answer answer = await PostAsync(Encoding.UTF8.GetBytes(body));

        Assert.Equal(200, answer.Status);
        Assert.Equal("{\"done\":true,\"count\":0,\"failed\":0,\"lastLine\":null,\"problem\":null}\n", answer.Text);
    }

    [Fact]
    public async Task A_byte_order_mark_carriage_returns_and_a_last_line_without_its_end_are_read()
    {
        Answer answer = await PostAsync(
            [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes($"{Line(Known)}\r\n{Line(Known)}\r\n{Line(Known)}")]);

        Assert.Equal([200, 200, 200], answer.Lines.SkipLast(1).Select(line => (int)line!["status"]!));
    }

    [Fact]
    public async Task A_run_goes_on_from_a_line()
    {
        string[] lines = [Line(Known, "1"), "{", new string('x', RequestLimits.MaxBodyBytes + 1), Line(Known, "4"), Line(Unknown, "5")];

        Answer all = await service.PostLinesAsync(Predictions, lines);
        Answer rest = await service.PostLinesAsync(Predictions + "?fromLine=4", lines);

        Assert.Equal([200, 400, 413, 200, 400], all.Lines.SkipLast(1).Select(line => (int)line!["status"]!));
        Assert.Equal(all.Lines[3]!.ToJsonString(), rest.Lines[0]!.ToJsonString());
        Assert.Equal(all.Lines[4]!.ToJsonString(), rest.Lines[1]!.ToJsonString());
        Assert.EndsWith("\n{\"done\":true,\"count\":2,\"failed\":1,\"lastLine\":5,\"problem\":null}\n", rest.Text);
        Assert.Equal(
            "{\"done\":true,\"count\":0,\"failed\":0,\"lastLine\":null,\"problem\":null}\n",
            (await service.PostLinesAsync(Predictions + "?fromLine=6", lines)).Text);
    }

    [Theory]
    [InlineData("fromLine=0", "out-of-range")]
    [InlineData("fromLine=x", "out-of-range")]
    [InlineData("fromLine=1&fromLine=2", "duplicate-parameter")]
    [InlineData("from=2", "unknown-parameter")]
    [InlineData("units=imperial", "unknown-word")]
    public async Task A_wrong_address_is_told_before_any_line(string query, string code)
    {
        Answer answer = await service.PostLinesAsync($"{Predictions}?{query}", Line(Known));

        Assert.Equal((400, code), (answer.Status, answer.Code));
    }

    [Theory]
    [InlineData(null, null, "No Content-Type was sent")]
    [InlineData("application/json", null, "Content-Type was sent as application/json")]
    [InlineData("application/x-ndjson; charset=utf-16", null, "Content-Type was sent as application/x-ndjson; charset=utf-16")]
    [InlineData("application/x-ndjson", "gzip", "Content-Encoding was sent as gzip")]
    public async Task A_body_that_is_not_said_to_be_plain_lines_is_refused(string? mediaType, string? encoding, string told)
    {
        foreach (string path in new[] { Predictions, Picks })
        {
            Answer answer = await PostAsync("{}"u8.ToArray(), path, mediaType, encoding);

            Assert.Equal((415, "lines-needed"), (answer.Status, answer.Code));
            Assert.Equal(
                $"{told}. Send Content-Type: application/x-ndjson, in UTF-8 and uncompressed.", (string?)answer.Json["detail"]);
        }
    }

    [Fact]
    public async Task More_runs_than_there_are_places_are_told_when_to_come_again()
    {
        using BulkGate full = new(maxRuns: 0, maxLinesAtOnce: 1, maxAnswers: 1, TimeSpan.FromMinutes(1));
        using WebApplicationFactory<Program> busy = service.WithWebHostBuilder(builder => builder.ConfigureTestServices(
            services => services.Replace(ServiceDescriptor.Singleton(full))));
        using StringContent content = new(Line(Known), Encoding.UTF8, WireJson.LinesMediaType);
        using HttpResponseMessage response = await busy.CreateClient().PostAsync(
            new Uri(Predictions, UriKind.Relative), content);
        Answer answer = await Answer.ReadAsync(response);

        Assert.Equal((503, "too-many-runs", "10"), (answer.Status, answer.Code, answer.Header("Retry-After")));
        Assert.Equal(0, full.Runs);
    }

    [Theory]
    [InlineData(Predictions, "BulkPrediction")]
    [InlineData(Picks, "BulkPick")]
    public async Task The_document_promises_the_members_that_lines_have(string path, string schema)
    {
        JsonNode schemas = (await service.GetAsync("/openapi/v1.json")).Json["components"]!["schemas"]!;
        string axes = """[{ "member": "/x", "zz": 1 }]""";
        JsonArray lines = (await service.PostLinesAsync(
            path, $$"""{ "request": {}, "zz": 1, "axes": {{axes}} }""",
            """{ "request": {}, "axes": [{ "member": "/machine", "values": [1] }] }""")).Lines;

        Dictionary<string, string> expected = lines[0]!["problem"]!["errors"]!.AsArray()
            .Where(error => (string?)error!["code"] == "unknown-member")
            .ToDictionary(error => (string)error!["pointer"]!, error => (string)error!["expected"]!);
        AssertMembers($"{schema}Request", expected["/zz"]["one of: ".Length..].Split(", "));
        AssertMembers("GridAxis", expected["/axes/0/zz"]["one of: ".Length..].Split(", "));
        AssertMembers("BulkEnd", lines[2]!.AsObject().Select(member => member.Key));
        // One line has a result or a problem, and this one has the problem.
        AssertMembers(schema, lines[1]!.AsObject().Select(member => member.Key).Append("result"));

        void AssertMembers(string name, IEnumerable<string> members) => Assert.Equal(
            schemas[name]!["properties"]!.AsObject().Select(member => member.Key).Order(StringComparer.Ordinal),
            members.Order(StringComparer.Ordinal));
    }

    private static string Line(string request, string? id = null)
    {
        string flat = request.ReplaceLineEndings(" ");
        return id is null ? $$"""{"request":{{flat}}}""" : $$"""{"id":{{id}},"request":{{flat}}}""";
    }

    private Task<Answer> PostAsync(
        byte[] body, string path = Predictions, string? mediaType = WireJson.LinesMediaType, string? encoding = null)
    {
        ByteArrayContent content = new(body);
        content.Headers.ContentType = mediaType is null ? null : MediaTypeHeaderValue.Parse(mediaType);
        if (encoding is not null)
            content.Headers.ContentEncoding.Add(encoding);
        return service.SendAsync(HttpMethod.Post, path, content);
    }
}
