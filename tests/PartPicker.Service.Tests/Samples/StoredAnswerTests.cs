using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using PartPicker.Service.Tests.Docs;
using Xunit;

namespace PartPicker.Service.Tests.Samples;

/// <summary>
/// Every ready-made question of the sample catalog gets the answer that is kept beside it, so that a change of the
/// model, of a rule or of a sample row shows what it does to answers.
/// </summary>
[Collection(ServiceTests.Name)]
public sealed class StoredAnswerTests(Service service)
{
    private static readonly string Folder = Path.Combine(Repository.CatalogSamples, "answers");

    // Of a ranked answer only what a person acts on is kept: with every refusal it would be some 200 kB.
    private static readonly string[] OfAnAnswer =
        ["fitted", "picks", "cheapest", "fewestChanges", "undominatedCount", "waivers", "superseded", "inTheWay", "work"];

    private static readonly string[] OfAPick =
    [
        "rank", "parts", "changes", "engagementRpm", "shiftOutRpm", "miss", "withinTolerance", "price", "toBuy",
        "labourMinutes",
    ];

    private static readonly JsonSerializerOptions Indented = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static TheoryData<string> Picks => [.. Repository.SampleRequests("-pick.json")];

    public static TheoryData<string> Predictions => [.. Repository.SampleRequests("-prediction.json")];

    [Theory]
    [MemberData(nameof(Picks))]
    public async Task A_ranked_answer_is_the_one_that_is_kept(string file)
    {
        Answer answer = await service.PostAsync("/v1/picks", Repository.ReadSampleRequest(file));

        Assert.Equal(201, answer.Status);
        JsonObject kept = Only(answer.Json, OfAnAnswer);
        foreach (string pick in new[] { "fitted", "cheapest", "fewestChanges" })
            kept[pick] = kept[pick] is { } one ? Only(one, OfAPick) : null;
        kept["picks"] = new JsonArray([.. kept["picks"]!.AsArray().Select(pick => Only(pick!, OfAPick))]);
        AssertKept(file, kept);
    }

    [Theory]
    [MemberData(nameof(Predictions))]
    public async Task A_prediction_is_the_one_that_is_kept(string file)
    {
        Answer answer = await service.PostAsync("/v1/predictions", Repository.ReadSampleRequest(file));

        Assert.Equal(200, answer.Status);
        JsonObject kept = answer.Json.AsObject();
        kept.Remove("catalogRevision"); // A row that this question never meets changes it too.
        AssertKept(file, kept);
    }

    [Fact]
    public void Nothing_is_kept_that_nobody_asks() =>
        Assert.Equal(
            Repository.SampleRequests(".json"),
            Directory.GetFiles(Folder).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal));

    private static void AssertKept(string file, JsonObject now)
    {
        string path = Path.Combine(Folder, file);
        string kept = KeptFile.Read(path, now.ToJsonString(Indented) + "\n");

        Assert.True(
            kept.Length > 0 && JsonNode.DeepEquals(JsonNode.Parse(kept), now),
            $"answers/{file} is not what the service answers now. {KeptFile.HowTo}");
    }

    /// <summary>The members of these names, where they are; names of parts say nothing that their ids do not.</summary>
    private static JsonObject Only(JsonNode from, string[] names)
    {
        JsonObject kept = [];
        foreach (string name in names)
        {
            if (from.AsObject().TryGetPropertyValue(name, out JsonNode? value))
                kept[name] = Nameless(value);
        }

        return kept;
    }

    private static JsonNode? Nameless(JsonNode? node) => node switch
    {
        JsonObject members => new JsonObject(members.Where(member => member.Key != "name")
            .Select(member => KeyValuePair.Create(member.Key, Nameless(member.Value)))),
        JsonArray items => new JsonArray([.. items.Select(Nameless)]),
        _ => node?.DeepClone(),
    };
}
