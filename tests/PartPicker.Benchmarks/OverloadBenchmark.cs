using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;
using System.Text;

namespace PartPicker.Benchmarks;

/// <summary>What becomes of those who find a place while ten times as many ask as can be answered.</summary>
/// <remarks>
/// The service is a process of its own on the sample catalog. Unloaded is one caller who asks when the last answer is there;
/// capacity is what as many callers as processors get answered in this way. Under overload questions leave at even times,
/// whether earlier ones are answered or not. Every question is another one. Rounds of both take turns, and all of them count,
/// since others may use the machine. Caller and service share its processors.
/// </remarks>
internal static class OverloadBenchmark
{
    private const int Times = 10;
    private const int Rounds = 5;
    private const int WarmUp = 60;
    private const int Unloaded = 150;
    private static readonly TimeSpan RoundTime = TimeSpan.FromSeconds(10);
    private static int next;

    public static async Task RunAsync(TextWriter to)
    {
        using BenchmarkedService service = await BenchmarkedService.StartAsync();
        using HttpClient client = new() { BaseAddress = service.Address, Timeout = Timeout.InfiniteTimeSpan };
        List<Reply> quiet = [];
        List<Reply> loaded = [];
        List<double> capacities = [];
        await AskInTurnAsync(client, WarmUp, Environment.ProcessorCount);
        for (int round = 0; round < Rounds; round++)
        {
            quiet.AddRange(await AskInTurnAsync(client, Unloaded, 1));
            long started = Stopwatch.GetTimestamp();
            await AskInTurnAsync(client, Unloaded, Environment.ProcessorCount);
            capacities.Add(Unloaded / Stopwatch.GetElapsedTime(started).TotalSeconds);
            loaded.AddRange(await AskEvenlyAsync(client, Times * capacities[^1]));
        }

        if (quiet.Concat(loaded).FirstOrDefault(r => r.Status is not (HttpStatusCode.Created or HttpStatusCode.ServiceUnavailable)) is { } odd)
            throw new InvalidOperationException($"A question was answered with {odd.Status}.");
        await to.WriteLineAsync("| what | questions | a second | p50 ms | p95 ms | p99 ms |");
        await to.WriteLineAsync("|---|---|---|---|---|---|");
        Row(to, "unloaded", quiet, double.NaN);
        Row(to, "overload, answered", [.. loaded.Where(r => r.Status == HttpStatusCode.Created)], Seconds);
        Row(to, "overload, sent away", [.. loaded.Where(r => r.Status == HttpStatusCode.ServiceUnavailable)], Seconds);
        double ratio = At([.. loaded.Where(r => r.Status == HttpStatusCode.Created)], 0.99) / At(quiet, 0.99);
        await to.WriteLineAsync(FormattableString.Invariant(
            $"overload: capacity {capacities.Order().ElementAt(Rounds / 2):0.0} picks a second; at {Times} times that p99 of the answered is {ratio:0.00} times the unloaded one"));
    }

    private static double Seconds => Rounds * RoundTime.TotalSeconds;

    private static async Task<IReadOnlyCollection<Reply>> AskInTurnAsync(HttpClient client, int count, int callers)
    {
        ConcurrentBag<Reply> replies = [];
        int left = count;
        await Task.WhenAll(Enumerable.Range(0, callers).Select(async _ =>
        {
            while (Interlocked.Decrement(ref left) >= 0)
                replies.Add(await AskAsync(client));
        }));
        return replies;
    }

    private static async Task<IReadOnlyCollection<Reply>> AskEvenlyAsync(HttpClient client, double aSecond)
    {
        List<Task<Reply>> asked = [];
        long started = Stopwatch.GetTimestamp();
        while (Stopwatch.GetElapsedTime(started) < RoundTime)
        {
            while (asked.Count < aSecond * Stopwatch.GetElapsedTime(started).TotalSeconds)
                asked.Add(AskAsync(client));
            await Task.Delay(1);
        }

        return await Task.WhenAll(asked);
    }

    private static async Task<Reply> AskAsync(HttpClient client)
    {
        int number = Interlocked.Increment(ref next);
        string question = FormattableString.Invariant(
            $$"""{"targets":{"engagementRpm":{{1500 + (number % 10_000 / 10.0)}},"shiftRpm":{{7900 + (number / 10_000)}} },"machine":"valley-two-seater"}""");
        long started = Stopwatch.GetTimestamp();
        using StringContent body = new(question, Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await client.PostAsync(new Uri("/v1/picks", UriKind.Relative), body);
        return new Reply(answer.StatusCode, Stopwatch.GetElapsedTime(started).TotalMilliseconds);
    }

    private static void Row(TextWriter to, string what, IReadOnlyCollection<Reply> replies, double seconds) =>
        to.WriteLine(FormattableString.Invariant(
            $"| {what} | {replies.Count} | {(double.IsNaN(seconds) ? "-" : FormattableString.Invariant($"{replies.Count / seconds:0.0}"))} | {At(replies, 0.5):0.0} | {At(replies, 0.95):0.0} | {At(replies, 0.99):0.0} |"));

    private static double At(IReadOnlyCollection<Reply> replies, double share) =>
        replies.Select(r => r.Ms).Order().ElementAt((int)Math.Round(share * (replies.Count - 1)));

    private sealed record Reply(HttpStatusCode Status, double Ms);
}
