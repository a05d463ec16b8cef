using System.Text.Json.Nodes;
using PartPicker.Service.Tests.Docs;
using Xunit;

namespace PartPicker.Service.Tests.Picks;

/// <summary>Every ready-made question of the sample catalog, and the stored answer that somebody has read.</summary>
[Collection(ServiceTests.Name)]
public sealed class SampleAnswerTests(Service service)
{
    private static readonly string Folder = Path.Combine(Repository.CatalogSamples, "answers");

    public static TheoryData<string> Questions => [.. Repository.SampleRequests(".json")];

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task A_sample_question_gets_its_stored_answer(string file)
    {
        JsonNode now = await Ask(file, "");
        string kept = KeptFile.Read(Path.Combine(Folder, file), ReadableJson.Write(now));

        Assert.True(
            kept.Length > 0 && JsonNode.DeepEquals(JsonNode.Parse(kept), now),
            $"catalog-samples/answers/{file} is not what the service answers now. {KeptFile.HowTo}");
    }

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task An_answer_in_inch_is_the_answer_in_metric(string file)
    {
        JsonNode metric = await Ask(file, "?units=metric&precision=full");
        JsonNode inch = await Ask(file, "?units=inch&precision=full");

        Assert.NotEqual(metric.ToJsonString(), inch.ToJsonString());
        Assert.Null(UnitsApart.FirstDifference(metric, inch));
    }

    [Fact]
    public void Every_stored_answer_has_its_question() => Assert.Equal(
        Repository.SampleRequests(".json"),
        Directory.GetFiles(Folder).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));

    private async Task<JsonNode> Ask(string file, string query)
    {
        bool pick = file.EndsWith("-pick.json", StringComparison.Ordinal);
        Answer answer = await service.PostAsync(
            (pick ? "/v1/picks" : "/v1/predictions") + query, Repository.ReadSampleRequest(file));
        Assert.True(answer.Status == (pick ? 201 : 200), answer.Text);
        return answer.Json;
    }
}
