using System.Text.Json.Nodes;
using PartPicker.Api.Wire;
using Xunit;

namespace PartPicker.Service.Tests.Bulk;

/// <summary>A grid is the same as all its points sent one by one.</summary>
[Collection(ServiceTests.Name)]
public sealed class GridTests(Service service)
{
    private const string Path = "/v1/bulk-predictions";

    private static readonly string MostPoints = $"axes whose values make at most {RequestLimits.MaxGridPoints} points";

    [Fact]
    public async Task Every_point_is_answered_as_the_question_alone_and_the_last_axis_is_the_fastest()
    {
        JsonArray lines = (await service.PostLinesAsync(Path, Line(
            """{ "machine": "valley-two-seater" }""",
            """{ "member": "/altitude", "from": 0, "to": 900, "step": 400, "unit": "m" }""",
            """{ "member": "/parts/stationMasses/tip", "values": ["0 g", { "value": 1.5, "unit": "g" }] }""",
            """{ "member": "/ratioPoints", "values": [3] }"""))).Lines;

        int number = 0;
        foreach (int altitude in new[] { 0, 400, 800 })
        {
            foreach (string mass in new[] { "\"0 g\"", """{"value":1.5,"unit":"g"}""" })
            {
                JsonNode line = lines[number++]!;
                Assert.Equal((1, "grid", number, 6), (
                    (int)line["line"]!, (string)line["id"]!, (int)line["point"]!, (int)line["points"]!));
                Assert.Equal(
                    $$$"""{"/altitude":{"value":{{{altitude}}},"unit":"m"},"/parts/stationMasses/tip":{{{mass}}},"/ratioPoints":3}""",
                    line["axes"]!.ToJsonString());
                Answer alone = await service.PostAsync("/v1/predictions", $$$"""
                    {
                      "machine": "valley-two-seater", "altitude": "{{{altitude}}} m", "ratioPoints": 3,
                      "parts": { "stationMasses": { "tip": {{{mass}}} } }
                    }
                    """);
                Assert.True(JsonNode.DeepEquals(alone.Json, line["result"] ?? line["problem"]), line.ToJsonString());
            }
        }

        Assert.Equal(number, (int)lines[number]!["count"]!);
        Assert.Equal(number + 1, lines.Count);
    }

    [Fact]
    public async Task A_point_that_is_refused_stops_no_other()
    {
        JsonArray lines = (await service.PostLinesAsync(Path, Line(
            """{ "ratioPoints": 3 }""",
            """{ "member": "/machine", "values": ["valley-two-seater", "moon-buggy", null] }"""))).Lines;

        Assert.Equal([200, 400, 400], lines.SkipLast(1).Select(line => (int)line!["status"]!));
        Assert.Equal("/machine", (string?)lines[1]!["problem"]!["errors"]![0]!["pointer"]);
        Assert.Equal("wrong-type", (string?)lines[2]!["problem"]!["code"]);
    }

    [Fact]
    public async Task An_entry_of_an_array_can_be_an_axis()
    {
        JsonArray lines = (await service.PostLinesAsync(Path, Line(
            """{ "machine": "valley-two-seater", "ratioPoints": 3, "explain": ["engagementRpm"] }""",
            """{ "member": "/explain/0", "values": ["shiftOutRpm", "helix"] }"""))).Lines;

        Assert.Equal([200, 400], lines.SkipLast(1).Select(line => (int)line!["status"]!));
        Assert.Equal("/explain/0", (string?)lines[1]!["problem"]!["errors"]![0]!["pointer"]);
    }

    [Theory]
    [InlineData("0.1", "0.5", "0.1", "0.1,0.2,0.3,0.4,0.5")]
    [InlineData("2000", "2100", "30", "2000,2030,2060,2090")]
    [InlineData("-500", "-500", "7", "-500")]
    [InlineData("-1", "1", "1", "-1,0,1")]
    [InlineData("1e3", "1.2e3", "1e2", "1000,1100,1200")]
    [InlineData("0", "1", "0.3333333", "0,0.3333333,0.6666666,0.9999999")]
    public async Task Steps_end_where_a_person_expects(string from, string to, string step, string values)
    {
        // The member is wrong on purpose, so that nothing is computed.
        JsonArray lines = (await service.PostLinesAsync(Path, Line(
            "{}", $$"""{ "member": "/x", "from": {{from}}, "to": {{to}}, "step": {{step}} }"""))).Lines;

        Assert.Equal(values.Split(','), lines.SkipLast(1).Select(line => line!["axes"]!["/x"]!.ToJsonString()));
    }

    [Theory]
    [InlineData(RequestLimits.MaxGridPoints, true)]
    [InlineData(RequestLimits.MaxGridPoints + 1, false)]
    public async Task A_grid_has_a_limit(int points, bool taken)
    {
        JsonArray lines = (await service.PostLinesAsync(Path, Line(
            "{}", $$"""{ "member": "/x", "from": 1, "to": {{points}}, "step": 1 }"""))).Lines;

        if (taken)
        {
            Assert.Equal(points, (int)lines[^1]!["count"]!);
            Assert.Equal(points, (int)lines[^2]!["point"]!);
        }
        else
        {
            AssertFault(lines, "grid-too-large", "/axes");
            Assert.Equal(MostPoints, (string?)lines[0]!["problem"]!["errors"]![0]!["expected"]);
        }
    }

    [Fact]
    public async Task Axes_that_multiply_beyond_every_number_are_too_large()
    {
        string axis = """{ "member": "/x#", "from": -1e9, "to": 1e9, "step": 1e-6 }""";
        string[] axes = [.. "123456".Select(digit => axis.Replace('#', digit))];

        AssertFault((await service.PostLinesAsync(Path, Line("{}", axes))).Lines, "grid-too-large", "/axes");
    }

    [Theory]
    [InlineData("""7""", "wrong-type", "/axes/0")]
    [InlineData("""{ "member": "/x" }""", "missing-member", "/axes/0/from")]
    [InlineData("""{ "values": [1] }""", "missing-member", "/axes/0/member")]
    [InlineData("""{ "member": "x", "values": [1] }""", "out-of-range", "/axes/0/member")]
    [InlineData("""{ "member": "", "values": [1] }""", "out-of-range", "/axes/0/member")]
    [InlineData("""{ "member": "/a/a/a/a/a/a/a/a/a/a/a/a/a/a/a/a/a", "values": [1] }""", "out-of-range", "/axes/0/member")]
    [InlineData("""{ "member": "/x", "values": [] }""", "out-of-range", "/axes/0/values")]
    [InlineData("""{ "member": "/x", "values": 1 }""", "wrong-type", "/axes/0/values")]
    [InlineData("""{ "member": "/x", "values": [1], "step": 1 }""", "contradiction", "/axes/0/step")]
    [InlineData("""{ "member": "/x", "from": 1, "to": 0, "step": 1 }""", "empty-range", "/axes/0/to")]
    [InlineData("""{ "member": "/x", "from": 1, "to": 2, "step": 0 }""", "out-of-range", "/axes/0/step")]
    [InlineData("""{ "member": "/x", "from": 1, "to": 2, "step": -1 }""", "out-of-range", "/axes/0/step")]
    [InlineData("""{ "member": "/x", "from": "1", "to": 2, "step": 1 }""", "wrong-type", "/axes/0/from")]
    [InlineData("""{ "member": "/x", "from": 1, "to": 2, "step": 1, "unit": 3 }""", "wrong-type", "/axes/0/unit")]
    [InlineData("""{ "member": "/machine/x", "values": [1] }""", "out-of-range", "/axes/0/member")]
    [InlineData("""{ "member": "/explain/1", "values": [1] }""", "out-of-range", "/axes/0/member")]
    [InlineData("""{ "member": "/explain/x/y", "values": [1] }""", "out-of-range", "/axes/0/member")]
    [InlineData("""{ "member": "/x", "values": [1] }, { "member": "/x", "values": [2] }""", "contradiction", "/axes/1/member")]
    [InlineData("""{ "member": "/x", "values": [{}, 1] }, { "member": "/x/y", "values": [2] }""", "contradiction", "/axes/1/member")]
    [InlineData("""{ "member": "/x/y", "values": [1] }, { "member": "/x", "values": [2] }""", "contradiction", "/axes/1/member")]
    [InlineData("""{ "member": "/explain/00", "values": [1] }""", "out-of-range", "/axes/0/member")]
    [InlineData("", "out-of-range", "/axes")]
    public async Task A_wrong_axis_is_told_with_its_place(string axes, string code, string place)
    {
        string request = """{ "machine": "valley-two-seater", "explain": ["engagementRpm"] }""";

        AssertFault((await service.PostLinesAsync(Path, Line(request, axes))).Lines, code, place);
    }

    [Theory]
    [InlineData("7", "wrong-type")]
    [InlineData("""{ "machine": "a", "machine": "b" }""", "duplicate-member")]
    public async Task A_request_that_cannot_carry_axes_is_told(string request, string code) =>
        AssertFault(
            (await service.PostLinesAsync(Path, Line(request, """{ "member": "/x", "values": [1] }"""))).Lines,
            code, "/request");

    private static string Line(string request, params string[] axes) =>
        $$"""{ "id": "grid", "request": {{request}}, "axes": [{{string.Join(", ", axes)}}] }""";

    private static void AssertFault(JsonArray lines, string code, string place)
    {
        JsonNode error = lines[0]!["problem"]!["errors"]![0]!;
        Assert.Equal((code, place), ((string)error["code"]!, (string)error["pointer"]!));
        Assert.Equal("grid", (string?)lines[0]!["id"]);
        Assert.Equal(2, lines.Count);
    }
}
