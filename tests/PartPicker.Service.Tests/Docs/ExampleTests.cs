using System.Text.Json.Nodes;
using PartPicker.Api.Wire;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

/// <summary>
/// The examples of the API document are questions that work, and the answers that they get, long lists cut short.
/// </summary>
[Collection(ServiceTests.Name)]
public sealed class ExampleTests(Service service)
{
    private static readonly string Folder = Path.Combine(Repository.Root, "src", "PartPicker.Api", "Docs", "Examples");

    private const int LongestList = 3;

    public static TheoryData<string, string, string, int> Questions => new()
    {
        { "pick.answer", "POST /v1/picks", "pick.request", 201 },
        { "prediction.answer", "POST /v1/predictions", "prediction.request", 200 },
        { "bulkPick.answer", "POST /v1/bulk-picks", "bulkPick.request", 200 },
        { "bulkPick.400", "POST /v1/bulk-picks?fromLine=0", "bulkPick.request", 400 },
        { "bulkPrediction.answer", "POST /v1/bulk-predictions", "bulkPrediction.request", 200 },
        { "bulkPrediction.400", "POST /v1/bulk-predictions?fromline=2", "bulkPrediction.request", 400 },
        { "machines.answer", "GET /v1/machines", "", 200 },
        { "machine.answer", "GET /v1/machines/valley-two-seater", "", 200 },
        {
            "parts.answer",
            "GET /v1/parts?kind=driveSpring&rate.min=60%20lbf/in&rate.max=120%20lbf/in&material=music-wire-a228"
                + "&outlet=valley-counter&sort=-rate&limit=2", "", 200
        },
        { "part.answer", "GET /v1/parts/ds-96-201?outlet=valley-counter", "", 200 },
        { "live.answer", "GET /health/live", "", 200 },
        { "ready.answer", "GET /health/ready", "", 200 },
        { "machines.400", "GET /v1/machines?year=last", "", 400 },
        { "parts.400", "GET /v1/parts?kind=helix&rate.min=60&helixDeg.min=50&helixDeg.max=40&colour=red", "", 400 },
        { "part.400", "GET /v1/parts/ds-96-201?outlet=none-such&units=imperial", "", 400 },
        { "machine.400", "GET /v1/machines/valley-two-seater?units=imperial", "", 400 },
        { "machine.404", "GET /v1/machines/moon-buggy", "", 404 },
        { "part.404", "GET /v1/parts/ds-0-0", "", 404 },
        { "pickAgain.404", "GET /v1/picks/0", "", 404 },
    };

    public static TheoryData<string, string, string> Mistakes => new()
    {
        {
            "pick.400", "/v1/picks",
            """
            {
              "machine": "valley-two-seater", "targets": { "engagementRpm": 2200 },
              "altitude": 1500, "helix": "hx-43-37"
            }
            """
        },
        {
            "prediction.400", "/v1/predictions",
            """{ "machine": "valley-two-seater", "parts": { "stationMasses": { "tip": "0.35 in" } } }"""
        },
    };

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task An_example_is_what_the_service_answers(string file, string request, string body, int status)
    {
        string[] parts = request.Split(' ');
        Answer answer = parts[0] == "GET"
            ? await service.GetAsync(parts[1])
            : await PostAsync(parts[1], await File.ReadAllTextAsync(PathOf(body)));

        Assert.Equal(status, answer.Status);
        AssertKept(file, answer.MediaType == WireJson.LinesMediaType ? answer.Lines : answer.Json);
    }

    [Theory]
    [MemberData(nameof(Mistakes))]
    public async Task An_example_of_mistakes_is_what_the_service_answers(string file, string path, string body)
    {
        Answer answer = await service.PostAsync(path, body);

        Assert.Equal(400, answer.Status);
        AssertKept(file, answer.Json);
    }

    [Fact]
    public void Every_example_file_is_asked_for()
    {
        IEnumerable<string> answers = Questions.Concat(Mistakes).Select(row => (string)row[0]);
        IEnumerable<string> requests = Questions.Select(row => (string)row[2]).Where(name => name.Length > 0).Distinct();

        Assert.Equal(
            answers.Concat(requests).Select(name => name + ".json").Order(StringComparer.Ordinal),
            Directory.GetFiles(Folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    // What is sent as lines is kept as an array of them.
    private Task<Answer> PostAsync(string path, string kept) => JsonNode.Parse(kept) is JsonArray lines
        ? service.PostLinesAsync(path, [.. lines.Select(line => line!.ToJsonString())])
        : service.PostAsync(path, kept);

    private static void AssertKept(string file, JsonNode now)
    {
        if (now is JsonArray lines)
        {
            foreach (JsonNode? line in lines)
                Shorten(line);
        }
        else
        {
            Shorten(now);
        }

        string kept = KeptFile.Read(PathOf(file), ReadableJson.Write(now));

        Assert.True(
            kept.Length > 0 && JsonNode.DeepEquals(JsonNode.Parse(kept), now),
            $"{PathOf(file)} is not what the service answers now. {KeptFile.HowTo}");
    }

    // A reader sees from three entries what the hundredth is like.
    private static void Shorten(JsonNode? node)
    {
        if (node is JsonArray list && list.Any(item => item is JsonObject))
        {
            while (list.Count > LongestList)
                list.RemoveAt(LongestList);
        }

        foreach (JsonNode? inner in node switch
        {
            JsonObject members => members.Select(member => member.Value),
            JsonArray items => items,
            _ => [],
        })
        {
            Shorten(inner);
        }
    }

    private static string PathOf(string name) => Path.Combine(Folder, name + ".json");
}
