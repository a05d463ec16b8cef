using System.Text.Json.Nodes;
using Xunit;

namespace PartPicker.Service.Tests.Picks;

/// <summary>One machine in several airs.</summary>
[Collection(ServiceTests.Name)]
public sealed class SeasonTests(Service service)
{
    private const string Machine = """
        "machine": "plateau-snow-machine", "targets": { "engagementRpm": 3900, "shiftRpm": 8150 },
        "keep": ["drivenSpring", "hole", "helix"], "ratioPoints": 5, "count": 1, "refusals": 0
        """;

    private const string Valley = """{ "altitude": "300 m", "temperature": "-20 °C" }""";
    private const string Pass = """{ "altitude": "2600 m", "temperature": "0 °C", "relativeHumidity": "80 %" }""";

    [Fact]
    public async Task The_best_of_each_air_is_the_first_of_a_question_in_that_air()
    {
        JsonNode season = (await Ask($"[{Valley}, {Pass}]"))["season"]!;

        JsonArray conditions = season["conditions"]!.AsArray();
        Assert.Equal(2, conditions.Count);
        foreach ((JsonNode? condition, string air) in conditions.Zip(new[] { Valley, Pass }))
        {
            Answer alone = await service.PostAsync("/v1/picks", $$"""{ {{Machine}}, {{air.Trim('{', '}')}} }""");
            JsonNode first = alone.Json["picks"]![0]!;
            Assert.True(JsonNode.DeepEquals(first["parts"], condition!["best"]!["parts"]));
            Assert.Equal((double)first["miss"]!, (double)condition["best"]!["miss"]!);
            Assert.True(JsonNode.DeepEquals(first["curve"]![2]!["upshiftRpm"], condition["best"]!["curve"]![2]!["upshiftRpm"]));
            Assert.True((bool)condition["proven"]!);
        }

        Assert.Equal("80", $"{conditions[1]!["air"]!["relativeHumidity"]!["value"]}");
        Assert.True((double)conditions[0]!["torqueFactor"]! > (double)conditions[1]!["torqueFactor"]!);
    }

    [Fact]
    public async Task The_set_for_all_shows_what_it_does_in_each_air()
    {
        JsonNode season = (await Ask($"[{Valley}, {Pass}]"))["season"]!;

        JsonNode forAll = season["forAll"]!;
        JsonNode[] here = [.. season["conditions"]!.AsArray().Select(condition => condition!["forAll"]!)];
        Assert.All(here, set => Assert.True(JsonNode.DeepEquals(forAll["parts"], set["parts"])));
        Assert.Equal((double)forAll["miss"]!, here.Max(set => (double)set["miss"]!));
        Assert.All(season["conditions"]!.AsArray(), condition =>
            Assert.True((double)condition!["best"]!["miss"]! <= (double)condition["forAll"]!["miss"]!));
        Assert.True((bool)forAll["proven"]!);
    }

    [Fact]
    public async Task Without_airs_there_is_no_season_and_the_airs_come_back_as_understood()
    {
        Assert.Null((await service.PostAsync("/v1/picks", $$"""{ {{Machine}} }""")).Json["season"]);

        JsonNode answer = await Ask("""[{ "altitude": "5000 ft", "temperature": "14 °F" }]""");

        JsonNode air = answer["request"]!["conditions"]![0]!;
        Assert.Equal((1524, "m"), ((double)air["altitude"]!["value"]!, (string?)air["altitude"]!["unit"]));
        Assert.Equal(263.15, (double)air["temperature"]!["value"]!, 9);
        Assert.Null(air["relativeHumidity"]);
    }

    [Fact]
    public async Task A_work_limit_holds_for_each_search_and_is_told()
    {
        JsonNode season = (await Ask($"[{Valley}, {Pass}]", """, "workLimit": 1 """))["season"]!;

        Assert.All(season["conditions"]!.AsArray(), condition => Assert.False((bool)condition!["proven"]!));
        Assert.Null(season["forAll"]);
    }

    [Theory]
    [InlineData("[]", "/conditions", "out-of-range")]
    [InlineData("{}", "/conditions", "wrong-type")]
    [InlineData("[3]", "/conditions/0", "wrong-type")]
    [InlineData("""[{}, { "altitude": "300" }]""", "/conditions/1/altitude", "unit-needed")]
    [InlineData("""[{ "temperature": "-300 °C" }]""", "/conditions/0/temperature", "out-of-range")]
    [InlineData("""[{ "place": "summit" }]""", "/conditions/0/place", "unknown-member")]
    public async Task What_is_no_air_is_refused_with_its_place(string conditions, string at, string code)
    {
        Answer answer = await service.PostAsync("/v1/picks", $$"""{ {{Machine}}, "conditions": {{conditions}} }""");

        Assert.Equal(400, answer.Status);
        JsonNode problem = Assert.Single(answer.Json["errors"]!.AsArray())!;
        Assert.Equal((at, code), ((string)problem["pointer"]!, (string)problem["code"]!));
    }

    [Fact]
    public async Task More_airs_than_the_limit_are_refused()
    {
        string airs = string.Join(", ", Enumerable.Repeat(Valley, 13));

        Answer answer = await service.PostAsync("/v1/picks", $$"""{ {{Machine}}, "conditions": [{{airs}}] }""");

        Assert.Equal(400, answer.Status);
        Assert.Contains("12", (string)Assert.Single(answer.Json["errors"]!.AsArray())!["expected"]!, StringComparison.Ordinal);
    }

    private async Task<JsonNode> Ask(string conditions, string more = "")
    {
        Answer answer = await service.PostAsync("/v1/picks", $$"""{ {{Machine}}, "conditions": {{conditions}}{{more}} }""");
        Assert.True(answer.Status == 201, answer.Text);
        return answer.Json;
    }
}
