using System.Diagnostics;
using System.Net.Sockets;
using System.Text;

namespace PartPicker.Benchmarks;

/// <summary>Bulk runs against the same questions sent one by one to the same service, and the memory of a long run.</summary>
/// <remarks>
/// The service is a process of its own on the sample catalog. One by one is a single connection that sends the next
/// question when the answer is there; side by side are as many of them as there are processors. Every question is another
/// one, so that nothing is answered from the store. The best of some rounds counts, since others may use the machine.
/// </remarks>
internal static class BulkBenchmark
{
    public const int StandardLongRun = 100_000;

    private const int Rounds = 3;
    private const int WarmUp = 200;
    private const int EndLength = 300;
    private const int VeryLongRun = 1_000_000;
    private const int AskedOfRefused = 100;
    private const double Million = 1e6;

    private static readonly Kind Predictions = new("predictions", 600, i =>
        $$"""{"machine":"valley-two-seater","altitude":"{{Tenths(i, 20_000)}} m"}""");

    private static readonly Kind Picks = new("picks", 60, i =>
        $$"""{"targets":{"engagementRpm":{{Tenths(i, 10_000) + 1500}},"shiftRpm":7900},"machine":"valley-two-seater"}""");

    // Few ratios, so that a long run ends.
    private static readonly Kind Short = new("predictions", 0, i =>
        $$"""{"machine":"valley-two-seater","altitude":"{{Tenths(i, 20_000)}} m","ratioPoints":3}""");

    // Nearly every line is refused, so that a run of very many ends: what it takes of memory, it takes for their number.
    private static readonly Kind Refused = new("predictions", 0, i =>
        i % AskedOfRefused == 0 ? Short.Question(i) : """{"machine":"none-such"}""");

    private static int next;

    public static async Task RunAsync(int longRun, TextWriter to)
    {
        using BenchmarkedService service = await BenchmarkedService.StartAsync();
        using HttpClient client = new() { BaseAddress = service.Address, Timeout = Timeout.InfiniteTimeSpan };
        await to.WriteLineAsync("| what | one by one, lines/s | side by side, lines/s | bulk, lines/s | peak MB | bulk over one by one | bulk over side by side |");
        await to.WriteLineAsync("|---|---|---|---|---|---|---|");
        foreach (Kind kind in new[] { Predictions, Picks })
        {
            await ManyAsync(service.Address, kind, Math.Min(WarmUp, kind.Questions));
            var best = (Single: 0.0, Beside: 0.0, Bulk: 0.0);
            for (int round = 0; round < Rounds; round++)
            {
                best.Single = Math.Max(best.Single, await RateAsync(kind, () => OneByOneAsync(client, kind, 1)));
                best.Beside = Math.Max(best.Beside, await RateAsync(kind, () => OneByOneAsync(client, kind, Environment.ProcessorCount)));
                best.Bulk = Math.Max(best.Bulk, await RateAsync(kind, () => ManyAsync(service.Address, kind, kind.Questions)));
            }

            await to.WriteLineAsync(FormattableString.Invariant(
                $"| {kind.Name} | {best.Single:0.0} | {best.Beside:0.0} | {best.Bulk:0.0} | {service.PeakBytes / Million:0} | {best.Bulk / best.Single:0.00} | {best.Bulk / best.Beside:0.00} |"));
        }

        foreach (int lines in new[] { longRun / 10, longRun })
        {
            long started = Stopwatch.GetTimestamp();
            await ManyAsync(service.Address, Short, lines);
            double seconds = Stopwatch.GetElapsedTime(started).TotalSeconds;
            await to.WriteLineAsync(FormattableString.Invariant(
                $"| a run of {lines} predictions at 3 ratios | - | - | {lines / seconds:0.0} | {service.PeakBytes / Million:0} | - | - |"));
        }
    }

    /// <summary>Does a run of very many lines take more memory than a short one?</summary>
    public static async Task RunLinesAsync(TextWriter to)
    {
        using BenchmarkedService service = await BenchmarkedService.StartAsync();
        await to.WriteLineAsync("| what | lines/s | peak MB |");
        await to.WriteLineAsync("|---|---|---|");
        foreach (int lines in new[] { VeryLongRun / 100, VeryLongRun / 10, VeryLongRun })
        {
            long started = Stopwatch.GetTimestamp();
            await ManyAsync(service.Address, Refused, lines, refused: lines - lines / AskedOfRefused);
            double seconds = Stopwatch.GetElapsedTime(started).TotalSeconds;
            await to.WriteLineAsync(FormattableString.Invariant(
                $"| a run of {lines} lines, all but each {AskedOfRefused}th refused | {lines / seconds:0} | {service.PeakBytes / Million:0} |"));
        }
    }

    private static double Tenths(int i, int most) => i % most / 10.0;

    private static async Task<double> RateAsync(Kind kind, Func<Task> ask)
    {
        long started = Stopwatch.GetTimestamp();
        await ask();
        return kind.Questions / Stopwatch.GetElapsedTime(started).TotalSeconds;
    }

    private static async Task OneByOneAsync(HttpClient client, Kind kind, int besides)
    {
        int left = kind.Questions;
        await Task.WhenAll(Enumerable.Range(0, besides).Select(async _ =>
        {
            while (Interlocked.Decrement(ref left) >= 0)
            {
                using StringContent content = new(kind.Question(Interlocked.Increment(ref next)), Encoding.UTF8, "application/json");
                using HttpResponseMessage answer = await client.PostAsync(new Uri($"/v1/{kind.Name}", UriKind.Relative), content);
                answer.EnsureSuccessStatusCode();
                await answer.Content.CopyToAsync(Stream.Null);
            }
        }));
    }

    // By hand, because a client that sends a request whole before it reads cannot make a run of any length.
    private static async Task ManyAsync(Uri address, Kind kind, int lines, int refused = 0)
    {
        using TcpClient caller = new(address.Host, address.Port);
        NetworkStream stream = caller.GetStream();
        int first = next;
        next += lines;
        Task sending = SendAsync(stream, kind, first, lines);
        string end = await LastAsync(stream);
        await sending;
        if (!end.Contains($$"""{"done":true,"count":{{lines}},"failed":{{refused}},""", StringComparison.Ordinal))
            throw new InvalidOperationException($"The run was not answered whole: {end}");
    }

    private static async Task SendAsync(NetworkStream stream, Kind kind, int first, int lines)
    {
        await stream.WriteAsync(Encoding.ASCII.GetBytes(
            $"POST /v1/bulk-{kind.Name} HTTP/1.1\r\nHost: {Environment.MachineName}\r\nConnection: close\r\n"
            + "Content-Type: application/x-ndjson\r\nTransfer-Encoding: chunked\r\n\r\n"));
        for (int i = 0; i < lines; i++)
        {
            string line = $"{{\"request\":{kind.Question(first + i)}}}\n";
            await stream.WriteAsync(Encoding.ASCII.GetBytes($"{line.Length:x}\r\n{line}\r\n"));
        }

        await stream.WriteAsync("0\r\n\r\n"u8.ToArray());
    }

    /// <summary>The end of all that comes.</summary>
    private static async Task<string> LastAsync(NetworkStream stream)
    {
        byte[] buffer = new byte[256 * 1024];
        string end = "";
        while (await stream.ReadAsync(buffer) is > 0 and var read)
        {
            end += Encoding.ASCII.GetString(buffer.AsSpan(Math.Max(0, read - EndLength), Math.Min(read, EndLength)));
            end = end[Math.Max(0, end.Length - EndLength)..];
        }

        return end;
    }

    private sealed record Kind(string Name, int Questions, Func<int, string> Question);
}
