using System.Text;
using Xunit;

namespace PartPicker.Service.Tests.CommandLine;

/// <summary>Answers hang neither on what the processor can do at once nor on how many there are.</summary>
public sealed class HardwareTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_same_bytes_without_vector_instructions_and_on_one_processor()
    {
        IReadOnlyList<byte[]>[] answers = await Task.WhenAll(
            AskAsync("as-it-is"),
            AskAsync("scalar", ("DOTNET_EnableHWIntrinsic", "0")),
            AskAsync("alone", ("DOTNET_PROCESSOR_COUNT", "1")));

        foreach (IReadOnlyList<byte[]> other in answers[1..])
        {
            for (int i = 0; i < other.Count; i++)
                Assert.Equal(Encoding.UTF8.GetString(answers[0][i]), Encoding.UTF8.GetString(other[i]));
        }
    }

    private async Task<IReadOnlyList<byte[]>> AskAsync(string name, params (string Name, string Value)[] environment)
    {
        using ServiceProcess service = ServiceProcess.Start(
            folder.Path, environment, "--quiet", "--port", "0", "--data", Path.Combine(folder.Path, name));
        using HttpClient client = new() { BaseAddress = await service.AddressAsync() };
        List<byte[]> answers = [];
        foreach ((string path, string question) in Questions())
        {
            using StringContent content = new(question, Encoding.UTF8, "application/json");
            using HttpResponseMessage answer = await client.PostAsync(path, content);
            byte[] body = await answer.Content.ReadAsByteArrayAsync();
            Assert.True(answer.IsSuccessStatusCode, Encoding.UTF8.GetString(body));
            answers.Add(body);
        }

        return answers;
    }

    // Wide pools, a search that its work limit ends, a season on all cores, a curve with all that explains it.
    private static IEnumerable<(string Path, string Question)> Questions()
    {
        foreach (string file in new[] { "season-pick.json", "least-work-pick.json", "snow-machine-pick.json" })
            yield return ("/v1/picks", Repository.ReadSampleRequest(file));
        yield return ("/v1/picks", """
            { "machine": "valley-two-seater", "targets": { "engagementRpm": 2200, "shiftRpm": 7650 }, "workLimit": 3000, "count": 5 }
            """);
        yield return ("/v1/predictions", Repository.ReadSampleRequest("fitted-set-prediction.json"));
    }
}
