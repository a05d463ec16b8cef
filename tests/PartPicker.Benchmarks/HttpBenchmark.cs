using System.Globalization;
using System.Text;

namespace PartPicker.Benchmarks;

/// <summary>What requests cost over loopback, against the least that this host takes for any answer in JSON.</summary>
/// <remarks>
/// The service is a process of its own on the sample catalog. The floor is GET /health/live, a line of JSON; its ratio to
/// the rest says what is ours. Twice as many callers as processors keep the service busy; the client is
/// <see cref="ClosedLoop"/>, which shares the machine. All kinds are asked in turn, some rounds long, and the best round of
/// each counts, since others may use the machine.
/// </remarks>
internal static class HttpBenchmark
{
    private const string Floor = "GET /health/live, the floor";
    private const int Rounds = 5;

    private static readonly TimeSpan RoundTime = TimeSpan.FromSeconds(2);
    private static int next;

    public static async Task RunAsync(TextWriter to)
    {
        // Every caller finds a place to wait in: what is sent away at once is no answer to time.
        using BenchmarkedService service = await BenchmarkedService.StartAsync(
            "--limit", $"searches-waiting={2 * Environment.ProcessorCount}");
        Kind[] kinds = await KindsAsync(service.Address);
        ClosedLoop loop = new(service.Address, 2 * Environment.ProcessorCount);
        Dictionary<string, LoopFigures> best = [];
        foreach (Kind kind in kinds) // Warm-up.
            await loop.RunAsync(RoundTime, kind.Request, kind.Status);
        for (int round = 0; round < Rounds; round++)
        {
            foreach (Kind kind in kinds)
            {
                LoopFigures figures = await loop.RunAsync(RoundTime, kind.Request, kind.Status);
                if (!best.TryGetValue(kind.Name, out LoopFigures? known) || figures.RequestsPerSecond > known.RequestsPerSecond)
                    best[kind.Name] = figures;
            }
        }

        await to.WriteLineAsync("| what | bytes | requests/s | p50, ms | p99, ms |");
        await to.WriteLineAsync("|---|---|---|---|---|");
        foreach (Kind kind in kinds)
        {
            LoopFigures f = best[kind.Name];
            await to.WriteLineAsync(string.Create(
                CultureInfo.InvariantCulture, $"| {kind.Name} | {kind.Bytes} | {f.RequestsPerSecond:0} | {f.MedianMs:0.00} | {f.P99Ms:0.00} |"));
        }

        LoopFigures floor = best[Floor];
        foreach (Kind kind in kinds.Where(kind => kind.Name != Floor))
        {
            await to.WriteLineAsync(string.Create(
                CultureInfo.InvariantCulture,
                $"{kind.Name}: {best[kind.Name].RequestsPerSecond / floor.RequestsPerSecond:0.000} of the requests of the floor, "
                + $"{best[kind.Name].MedianMs / floor.MedianMs:0.0} times its p50"));
        }
    }

    private static async Task<Kind[]> KindsAsync(Uri address)
    {
        const string part = "/v1/parts/ds-96-201";
        const string outlet = "?outlet=valley-counter";
        string question = Question();
        using HttpClient client = new() { BaseAddress = address };
        using StringContent content = new(question, Encoding.UTF8, "application/json");
        using HttpResponseMessage pick = await client.PostAsync(new Uri("/v1/picks", UriKind.Relative), content);
        using HttpResponseMessage shown = await client.GetAsync(new Uri(part + outlet, UriKind.Relative));
        using HttpResponseMessage live = await client.GetAsync(new Uri("/health/live", UriKind.Relative));
        string kept = pick.Headers.Location!.OriginalString;
        return
        [
            Same(Floor, "GET /health/live", live),
            Same("GET /v1/parts/{id}", $"GET {part}{outlet}", shown),
            Same("GET /v1/parts/{id} by its tag, 304", $"GET {part}{outlet}", shown, tag: shown.Headers.ETag!.ToString()),
            Same("POST /v1/picks, repeated", "POST /v1/picks", pick, question, status: 201),
            Same("GET /v1/picks/{id}", $"GET {kept}", pick),
            Same("GET /v1/picks/{id} by its tag, 304", $"GET {kept}", pick, tag: pick.Headers.ETag!.ToString()),
            new("POST /v1/picks, each another one", 201, Length(pick), () => ClosedLoop.Request("POST /v1/picks", Question())),
        ];

        static Kind Same(string name, string methodAndPath, HttpResponseMessage like, string? json = null, string? tag = null, int status = 200)
        {
            byte[] request = ClosedLoop.Request(methodAndPath, json, tag);
            return new Kind(name, tag is null ? status : 304, tag is null ? Length(like) : 0, () => request);
        }

        static long Length(HttpResponseMessage answer) => answer.Content.Headers.ContentLength ?? 0;
    }

    private static string Question() => string.Create(
        CultureInfo.InvariantCulture,
        $$"""{"targets":{"engagementRpm":{{1500 + Interlocked.Increment(ref next) / 10.0}},"shiftRpm":7900},"machine":"valley-two-seater"}""");

    private sealed record Kind(string Name, int Status, long Bytes, Func<byte[]> Request);
}
