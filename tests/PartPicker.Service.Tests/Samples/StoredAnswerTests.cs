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

    // Any row that changes the catalog changes its revision, and the id that is made of it: that says nothing here.
    private static readonly string[] OfTheRevision = ["catalogRevision", "id"];

    public static TheoryData<string> Questions => [.. Repository.SampleRequests(".json")];

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task An_answer_is_the_one_that_is_kept(string file)
    {
        bool pick = file.EndsWith("-pick.json", StringComparison.Ordinal);
        Answer answer = await service.PostAsync(
            pick ? "/v1/picks" : "/v1/predictions", Repository.ReadSampleRequest(file));
        Assert.True(answer.Status == (pick ? 201 : 200), answer.Text);
        JsonObject now = answer.Json.AsObject();
        foreach (string member in OfTheRevision)
            now.Remove(member);

        string kept = KeptFile.Read(Path.Combine(Folder, file), ReadableJson.Write(now));

        Assert.True(
            kept.Length > 0 && JsonNode.DeepEquals(JsonNode.Parse(kept), now),
            $"catalog-samples/answers/{file} is not what the service answers now. {KeptFile.HowTo}");
    }

    [Fact]
    public void Nothing_is_kept_that_nobody_asks() => Assert.Equal(
        Repository.SampleRequests(".json"),
        Directory.GetFiles(Folder).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal));
}
