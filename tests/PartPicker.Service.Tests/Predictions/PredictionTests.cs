using System.Text.Json.Nodes;
using Xunit;

namespace PartPicker.Service.Tests.Predictions;

[Collection(ServiceTests.Name)]
public sealed class PredictionTests(Service service)
{
    private const string Fitted = """{ "machine": "valley-two-seater" }""";

    [Fact]
    public async Task A_prediction_says_what_it_rests_on()
    {
        JsonNode answer = (await service.PostAsync("/v1/predictions", Fitted)).Json;

        Assert.Equal("valley-two-seater", (string?)answer["machine"]!["id"]);
        Assert.Equal("ds-96-201", (string?)answer["parts"]!["driveSpring"]!["id"]);
        Assert.Equal(
            """{"altitude":{"value":0,"unit":"m"},"temperature":null,"relativeHumidity":null,"airLaw":"saeJ1349"}""",
            answer["air"]!.ToJsonString());
        Assert.True((bool?)answer["anchored"]);
        Assert.NotEmpty(answer["anchoring"]!["residuals"]!.AsArray());
        Assert.Equal(9, answer["curve"]!.AsArray().Count);
        Assert.NotEmpty(answer["cautions"]!.AsArray());
        Assert.True(answer["limits"]!.AsArray().Count >= 4);
    }

    [Fact]
    public async Task Humid_air_takes_torque_and_is_said()
    {
        JsonNode dry = await Warm("");
        JsonNode bone = await Warm(""", "relativeHumidity": "0 %" """);
        JsonNode humid = await Warm(""", "relativeHumidity": { "value": 80, "unit": "%" } """);

        Assert.Equal("""{"value":80,"unit":"%"}""", humid["air"]!["relativeHumidity"]!.ToJsonString());
        Assert.Equal(dry["curve"]!.ToJsonString(), bone["curve"]!.ToJsonString());
        Assert.InRange((double)humid["torqueFactor"]! / (double)dry["torqueFactor"]!, 0.9605, 0.9606); // SAE J1349, recomputed.
        Assert.NotEqual((double)dry["shiftOutRpm"]!, (double)humid["shiftOutRpm"]!);

        async Task<JsonNode> Warm(string more) => (await service.PostAsync(
            "/v1/predictions?precision=full",
            $$"""{ "machine": "valley-two-seater", "temperature": "30 °C"{{more}} }""")).Json;
    }

    [Fact]
    public async Task Without_an_anchor_it_says_so()
    {
        JsonNode answer = (await service.PostAsync(
            "/v1/predictions", """{ "machine": "valley-two-seater", "anchor": false }""")).Json;

        Assert.False((bool?)answer["anchored"]);
        Assert.Null(answer["anchoring"]);
    }

    [Fact]
    public async Task A_number_is_taken_apart_where_that_is_asked_for()
    {
        JsonNode answer = (await service.PostAsync(
            "/v1/predictions", """{ "machine": "valley-two-seater", "explain": ["shiftOutRpm", "engagementRpm"] }""")).Json;
        JsonNode plain = (await service.PostAsync("/v1/predictions", Fitted)).Json;

        Assert.Equal(
            ["shiftOutRpm", "engagementRpm"], answer["explanations"]!.AsArray().Select(each => (string?)each!["name"]));
        foreach (JsonNode? each in answer["explanations"]!.AsArray())
            Assert.Equal((double)plain[(string)each!["name"]!]!, (double)each["value"]!);
        JsonNode thrust = answer["explanations"]![0]!["parts"]![1]!;
        Assert.Equal("flyweight-thrust", (string?)thrust["relation"]);
        Assert.Equal("KG", (string?)thrust["source"]);
        Assert.Equal("/docs/model/flyweights#flyweight-thrust", (string?)thrust["page"]);
        Assert.Equal(answer["curve"]![8]!["upshift"]!["flyweightThrust"]!["value"]!.ToJsonString(), thrust["value"]!.ToJsonString());
        Assert.Empty(plain["explanations"]!.AsArray());
    }

    [Fact]
    public async Task A_baseline_of_the_caller_is_met_by_the_prediction_of_its_own_parts()
    {
        JsonNode answer = (await service.PostAsync("/v1/predictions", """
            {
              "machine": "valley-two-seater",
              "baseline": { "engagementRpm": 2055.5, "shiftCurve": [{ "ratio": 1.5, "rpm": 7777 }] }
            }
            """)).Json;

        Assert.Equal(2055.5, (double)answer["engagementRpm"]!);
        Assert.Equal("[{\"ratio\":1.5,\"rpm\":0}]", answer["anchoring"]!["residuals"]!.ToJsonString());
    }

    [Fact]
    public async Task Numbers_are_rounded_unless_they_are_asked_for_in_full()
    {
        JsonNode rounded = (await service.PostAsync("/v1/predictions", Fitted)).Json;
        JsonNode full = (await service.PostAsync("/v1/predictions?precision=full", Fitted)).Json;

        for (int i = 0; i < 9; i++)
        {
            (double Ratio, double Rpm, double ClampN) round = Numbers(rounded["curve"]![i]!);
            (double Ratio, double Rpm, double ClampN) whole = Numbers(full["curve"]![i]!);
            Assert.Equal(round.Ratio, whole.Ratio, 0.5e-4 + 1e-12);
            Assert.Equal(round.Rpm, whole.Rpm, 0.05 + 1e-9);
            Assert.Equal(round.ClampN, whole.ClampN, 0.05 + 1e-9);
            Assert.NotEqual(round.Rpm, whole.Rpm);
        }

        static (double Ratio, double Rpm, double ClampN) Numbers(JsonNode point) => (
            (double)point["ratio"]!, (double)point["upshift"]!["rpm"]!,
            (double)point["upshift"]!["drivenClamp"]!["value"]!);
    }

    [Fact]
    public async Task Inch_units_state_the_same_prediction()
    {
        JsonNode metric = (await service.PostAsync("/v1/predictions?precision=full", Fitted)).Json;
        JsonNode inch = (await service.PostAsync("/v1/predictions?precision=full&units=inch", Fitted)).Json;

        Assert.Equal((double)metric["engagementRpm"]!, (double)inch["engagementRpm"]!);
        Assert.Equal("in", (string?)inch["engagementTravel"]!["unit"]);
        Assert.Equal(
            (double)metric["engagementTravel"]!["value"]!, (double)inch["engagementTravel"]!["value"]! * 25.4, 1e-9);
        Assert.Equal("ft", (string?)inch["air"]!["altitude"]!["unit"]);
    }

    [Fact]
    public async Task Where_it_does_not_shift_there_is_a_reason()
    {
        // Arms without station masses cannot overcome this pair of springs below the rev limit.
        JsonNode answer = (await service.PostAsync("/v1/predictions", """
            {
              "machine": "valley-two-seater",
              "parts": {
                "driveSpring": "ds-116-219", "flyweight": "fw-valley-40", "stationMasses": {},
                "drivenSpring": "dv-11.4-9.4", "hole": "4"
              }
            }
            """)).Json;

        JsonNode[] stuck = [.. answer["curve"]!.AsArray().Where(point => point!["upshift"] is null)!];
        Assert.NotEmpty(stuck);
        Assert.All(stuck, point => Assert.Contains("below the rev limit of 9000 rpm", (string?)point["reason"]));
        Assert.All(
            answer["curve"]!.AsArray().Where(point => point!["upshift"] is not null && point["backshift"] is not null),
            point => Assert.Null(point!["reason"]));
    }

    [Fact]
    public async Task The_same_question_gets_the_same_bytes() =>
        Assert.Equal(
            (await service.PostAsync("/v1/predictions", Fitted)).Body,
            (await service.PostAsync("/v1/predictions", Fitted)).Body);
}
