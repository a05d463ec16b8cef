using System.Text;
using Xunit;

namespace PartPicker.Service.Tests.CommandLine;

/// <summary>What was answered before a restart, and before the import of another catalog, is still there after it.</summary>
public sealed class NewCatalogTests : IDisposable
{
    private const string Question = """
        {
          "machine": "valley-two-seater", "targets": { "engagementRpm": 2200, "shiftRpm": 7650 }, "ratioPoints": 3, "count": 2,
          "keep": ["drivenSpring", "hole", "driveSpring"]
        }
        """;

    private const string Part = "/v1/parts/ds-96-201";

    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_catalog_that_is_imported_between_two_calls_changes_what_is_asked_and_not_what_was_answered()
    {
        string[] kept = [];
        Answer[] before = await Session(kept, "--quiet");
        kept = [before[0].Header("Location")!, Part];

        Answer[] restarted = await Session(kept, "--quiet");
        Assert.Equal(before[0].Body, restarted[0].Body);
        Assert.Equal(before[0].Body, restarted[1].Body);
        Assert.Equal("current", restarted[1].Header("Pick-Status"));
        Assert.Equal(before[0].Header("ETag"), restarted[1].Header("ETag"));
        string partTag = restarted[2].Header("ETag")!;

        string catalog = Path.Combine(folder.Path, "catalog");
        Repository.CopySamples(catalog, (file, text) => file == "drive-springs.csv"
            ? text.Replace("Drive spring 86/179", "Drive spring 86/179 of the second make", StringComparison.Ordinal)
            : text);
        Answer[] imported = await Session(kept, "--quiet", "--catalog", catalog);
        Assert.Equal(before[0].Body, imported[1].Body);
        Assert.Equal("catalog-changed", imported[1].Header("Pick-Status"));
        Assert.NotEqual((string?)before[0].Json["catalogRevision"], (string?)imported[0].Json["catalogRevision"]);
        Assert.NotEqual(before[0].Header("Location"), imported[0].Header("Location"));
        Assert.NotEqual(partTag, imported[2].Header("ETag"));

        // The first catalog again, by its own revision: what was answered from it is the answer of today once more.
        Answer[] back = await Session(kept, "--quiet", "--catalog", Repository.CatalogSamples);
        Assert.Equal(before[0].Body, back[0].Body);
        Assert.Equal("current", back[1].Header("Pick-Status"));
        Assert.Equal(partTag, back[2].Header("ETag"));
    }

    /// <summary>One life of the service on the same store: the question, and then what stands at each address.</summary>
    private async Task<Answer[]> Session(string[] paths, params string[] args)
    {
        using ServiceProcess service = ServiceProcess.Start(
            folder.Path, [.. args, "--port=0", "--data", Path.Combine(folder.Path, "data")]);
        using HttpClient client = new() { BaseAddress = await service.AddressAsync() };
        using StringContent question = new(Question, Encoding.UTF8, "application/json");
        using HttpResponseMessage asked = await client.PostAsync(new Uri("/v1/picks", UriKind.Relative), question);
        List<Answer> answers = [await Answer.ReadAsync(asked)];
        foreach (string path in paths)
        {
            using HttpResponseMessage fetched = await client.GetAsync(new Uri(path, UriKind.Relative));
            answers.Add(await Answer.ReadAsync(fetched));
        }

        Assert.All(answers, answer => Assert.InRange(answer.Status, 200, 201));
        service.Terminate();
        Assert.Equal(0, await service.EndAsync());
        return [.. answers];
    }
}
