using System.Collections.Concurrent;
using System.IO.Pipelines;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.Extensions.Logging.Abstractions;
using PartPicker.Api.Bulk;
using PartPicker.Api.Errors;
using PartPicker.Api.Wire;
using Xunit;

namespace PartPicker.Service.Tests.Bulk;

/// <summary>The run alone, between two pipes, with answers that the test decides upon.</summary>
public sealed class BulkRunTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly Pipe sent = new(new PipeOptions(pauseWriterThreshold: 0));
    private readonly Pipe answers = new(new PipeOptions(pauseWriterThreshold: 0));
    private readonly CancellationTokenSource callerGone = new();
    private readonly CancellationTokenSource stopping = new();

    public void Dispose()
    {
        callerGone.Dispose();
        stopping.Dispose();
    }

    [Fact]
    public async Task Answers_keep_the_order_of_the_lines_whichever_is_ready_first()
    {
        using BulkGate gate = Gate(atOnce: 4);
        Task run = Run(gate, async (request, gone) =>
        {
            if (request.GetInt32() % 4 == 0)
                await Task.Delay(30, gone);
            return Reply($"{request}");
        });

        await Send([.. Enumerable.Range(0, 40).Select(i => Line(i))], end: true);
        JsonArray lines = await Lines(run);

        Assert.Equal(Enumerable.Range(1, 40), lines.SkipLast(1).Select(line => (int)line!["line"]!));
        Assert.Equal(Enumerable.Range(0, 40), lines.SkipLast(1).Select(line => (int)line!["result"]!));
        AssertEnd(lines, count: 40, failed: 0, lastLine: 40, code: null);
    }

    [Fact]
    public async Task As_many_lines_as_the_gate_allows_are_computed_side_by_side()
    {
        int now = 0;
        int most = 0;
        using Barrier both = new(2);
        using BulkGate gate = Gate(atOnce: 2);
        Task run = Run(gate, (_, gone) =>
        {
            InterlockedMax(ref most, Interlocked.Increment(ref now));
            Assert.True(both.SignalAndWait(Patience, gone), "Only one line is computed at once.");
            Interlocked.Decrement(ref now);
            return Task.FromResult(Reply("1"));
        });

        await Send([.. Enumerable.Range(0, 20).Select(i => Line(i))], end: true);
        AssertEnd(await Lines(run), count: 20, failed: 0, lastLine: 20, code: null);

        Assert.Equal(2, most);
    }

    [Fact]
    public async Task Lines_leave_the_threads_of_the_pool_to_everybody_else()
    {
        using BulkGate gate = Gate();

        Assert.False(await gate.ComputeAsync(() => Task.FromResult(Thread.CurrentThread.IsThreadPoolThread), default));
    }

    [Fact]
    public async Task Who_does_not_read_is_not_read_from()
    {
        const int Lines = 500;
        string large = new('9', 100_000);
        Pipe unread = new(new PipeOptions(pauseWriterThreshold: 1, resumeWriterThreshold: 1));
        int begun = 0;
        using BulkGate gate = Gate();
        Task run = Run(gate, (_, _) =>
        {
            Interlocked.Increment(ref begun);
            return Task.FromResult(Reply($"\"{large}\""));
        }, output: unread.Writer);

        await Send([.. Enumerable.Range(0, Lines).Select(i => Line(i))], end: true);
        await Until(() => Volatile.Read(ref begun) >= RequestLimits.MaxBulkAnswersHeld);
        await Task.Delay(300); // Time to do too much.

        // One is written and waits to be read.
        Assert.InRange(begun, RequestLimits.MaxBulkAnswersHeld, RequestLimits.MaxBulkAnswersHeld + 1);
        Assert.False(run.IsCompleted);

        Task<string> text = new StreamReader(unread.Reader.AsStream()).ReadToEndAsync();
        await run.WaitAsync(Patience);
        await unread.Writer.CompleteAsync();
        Assert.Equal(Lines + 1, (await text).Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
    }

    [Fact]
    public async Task An_answer_is_sent_before_the_next_line_comes()
    {
        using BulkGate gate = Gate();
        Task run = Run(gate, (request, _) => Task.FromResult(Reply($"{request}")));
        using StreamReader reader = new(answers.Reader.AsStream());

        for (int i = 1; i <= 3; i++)
        {
            // In two pieces, as a slow caller sends them.
            string line = Line(i) + "\n";
            await SendBytes(Encoding.UTF8.GetBytes(line[..9]));
            await SendBytes(Encoding.UTF8.GetBytes(line[9..]));
            JsonNode answer = JsonNode.Parse((await reader.ReadLineAsync().WaitAsync(Patience))!)!;
            Assert.Equal((i, i), ((int)answer["line"]!, (int)answer["result"]!));
        }

        await sent.Writer.CompleteAsync();
        await run.WaitAsync(Patience);
        Assert.Equal("""{"done":true,"count":3,"failed":0,"lastLine":3,"problem":null}""", await reader.ReadLineAsync());
    }

    [Fact]
    public async Task A_caller_who_goes_away_stops_what_is_computed()
    {
        using BulkGate gate = Gate();
        ConcurrentBag<CancellationToken> told = [];
        Task run = Run(gate, async (_, gone) =>
        {
            told.Add(gone);
            await Task.Delay(Timeout.Infinite, gone);
            return Reply("1");
        });
        await Send([.. Enumerable.Range(0, 100).Select(i => Line(i))], end: false);
        await Until(() => told.Count == 2);

        await callerGone.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => run.WaitAsync(Patience));
        Assert.Equal(2, told.Count);
        Assert.All(told, token => Assert.True(token.IsCancellationRequested));
    }

    [Fact]
    public async Task Answers_that_nobody_reads_any_more_end_the_run()
    {
        using BulkGate gate = Gate();
        Task run = Run(gate, (_, _) => Task.FromResult(Reply("1")));
        await answers.Reader.CompleteAsync();

        await Send([Line(1)], end: false);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => run.WaitAsync(Patience));
    }

    [Fact]
    public async Task A_line_that_does_not_come_ends_the_run_with_what_came()
    {
        using BulkGate gate = Gate(stall: TimeSpan.FromMilliseconds(200));
        Task run = Run(gate, (_, _) => Task.FromResult(Reply("1")));

        await Send([Line(1)], end: false);
        await SendBytes("{\"id\":"u8.ToArray());

        AssertEnd(await Lines(run), count: 1, failed: 0, lastLine: 1, code: "body-too-slow");
    }

    [Fact]
    public async Task Time_that_answers_take_is_no_stall()
    {
        using BulkGate gate = Gate(atOnce: 1, stall: TimeSpan.FromMilliseconds(200));
        Task run = Run(gate, async (_, gone) =>
        {
            await Task.Delay(30, gone);
            return Reply("1");
        });

        await Send([.. Enumerable.Range(0, 40).Select(i => Line(i))], end: true);

        AssertEnd(await Lines(run), count: 40, failed: 0, lastLine: 40, code: null);
    }

    [Fact]
    public async Task A_body_that_breaks_off_is_told_in_the_last_line()
    {
        int begun = 0;
        using BulkGate gate = Gate();
        Task run = Run(gate, (_, _) =>
        {
            Interlocked.Increment(ref begun);
            return Task.FromResult(Reply("1"));
        });

        await Send([Line(1), Line(2)], end: false);
        await Until(() => Volatile.Read(ref begun) == 2);
        await sent.Writer.CompleteAsync(new Microsoft.AspNetCore.Http.BadHttpRequestException("Bad chunk.", 400));

        JsonArray lines = await Lines(run);
        AssertEnd(lines, count: 2, failed: 0, lastLine: 2, code: "bad-http");
        Assert.Contains("RFC 9112", (string?)lines[^1]!["problem"]!["detail"]);
    }

    [Fact]
    public async Task A_service_that_stops_answers_what_it_began_and_says_so()
    {
        using BulkGate gate = Gate();
        using SemaphoreSlim begun = new(0);
        TaskCompletionSource mayEnd = new();
        Task run = Run(gate, async (_, _) =>
        {
            begun.Release();
            await mayEnd.Task;
            return Reply("1");
        });
        await Send([Line(1), Line(2)], end: false);
        await begun.WaitAsync(Patience);

        await stopping.CancelAsync();
        mayEnd.SetResult();

        JsonArray lines = await Lines(run);
        Assert.InRange(lines.Count, 2, 3);
        AssertEnd(lines, lines.Count - 1, failed: 0, lastLine: lines.Count - 1, code: "service-stopping");
    }

    [Fact]
    public async Task A_run_ends_at_the_greatest_number_of_answers_and_can_be_gone_on_with()
    {
        string[] lines = [Line(1), Grid(2), Grid(3), Line(4)];
        using BulkGate gate = Gate(maxAnswers: 5);
        Task run = Run(gate, (request, _) => Task.FromResult(Reply($"{request}")));
        await Send(lines, end: true);

        JsonArray first = await Lines(run);

        // The grid of line 3 had begun: its second point was one too many.
        Assert.Equal([1, 2, 2, 2, 3], first.SkipLast(1).Select(line => (int)line!["line"]!));
        AssertEnd(first, count: 5, failed: 0, lastLine: 2, code: "too-many-answers");

        using BulkRunTests next = new();
        Task rest = next.Run(gate, (request, _) => Task.FromResult(Reply($"{request}")), fromLine: 3);
        await next.Send(lines, end: true);
        JsonArray second = await next.Lines(rest);
        Assert.Equal([3, 3, 3, 4], second.SkipLast(1).Select(line => (int)line!["line"]!));
        AssertEnd(second, count: 4, failed: 0, lastLine: 4, code: null);
    }

    [Fact]
    public async Task A_fault_of_the_service_in_one_line_is_none_of_the_others()
    {
        using BulkGate gate = Gate();
        Task run = Run(gate, (request, _) => request.GetInt32() == 2
            ? throw new InvalidOperationException("a secret")
            : Task.FromResult(Reply("1")));

        await Send([Line(1), Line(2), Line(3)], end: true);

        JsonArray lines = await Lines(run);
        Assert.Equal([200, 500, 200], lines.SkipLast(1).Select(line => (int)line!["status"]!));
        Assert.Equal("internal-error", (string?)lines[1]!["problem"]!["code"]);
        Assert.DoesNotContain("secret", lines.ToJsonString());
        AssertEnd(lines, count: 3, failed: 1, lastLine: 3, code: null);
    }

    private static BulkGate Gate(int atOnce = 2, int maxAnswers = 1000, TimeSpan? stall = null) =>
        new(maxRuns: 1, atOnce, maxAnswers, stall ?? Patience);

    private static BulkReply Reply(string json) => new(Encoding.UTF8.GetBytes(json), (ProblemAnswer?)null);

    private static string Line(int number) => $$"""{"request":{{number}}}""";

    private static string Grid(int number) =>
        $$"""{"request":{"x":{{number}}},"axes":[{"member":"/x","from":1,"to":3,"step":1}]}""";

    private async Task Run(
        BulkGate gate, Func<JsonElement, CancellationToken, Task<BulkReply>> answer, long fromLine = 1,
        PipeWriter? output = null)
    {
        LineReader lines = new(sent.Reader, RequestLimits.MaxBodyBytes);
        using BulkRun run = new(lines, output ?? answers.Writer, fromLine, gate, answer, NullLogger.Instance);
        await run.RunAsync(callerGone.Token, stopping.Token);
    }

    private async Task Send(IEnumerable<string> lines, bool end)
    {
        await SendBytes(Encoding.UTF8.GetBytes(string.Concat(lines.Select(line => line + "\n"))));
        if (end)
            await sent.Writer.CompleteAsync();
    }

    private async Task SendBytes(byte[] bytes) => await sent.Writer.WriteAsync(bytes);

    private async Task<JsonArray> Lines(Task run)
    {
        await run.WaitAsync(Patience);
        await answers.Writer.CompleteAsync();
        string text = await new StreamReader(answers.Reader.AsStream()).ReadToEndAsync();
        Assert.EndsWith("\n", text);
        return [.. text.TrimEnd('\n').Split('\n').Select(line => JsonNode.Parse(line))];
    }

    private static void AssertEnd(JsonArray lines, int count, int failed, int? lastLine, string? code)
    {
        JsonNode end = lines[^1]!;
        Assert.True((bool)end["done"]!);
        Assert.Equal((count, failed), ((int)end["count"]!, (int)end["failed"]!));
        Assert.Equal(lastLine, (int?)end["lastLine"]);
        Assert.Equal(code, (string?)end["problem"]?["code"]);
        Assert.Equal(count, lines.Count - 1);
    }

    private static async Task Until(Func<bool> holds)
    {
        DateTime end = DateTime.UtcNow + Patience;
        while (!holds())
        {
            Assert.True(DateTime.UtcNow < end, "It did not come to pass.");
            await Task.Delay(5);
        }
    }

    private static void InterlockedMax(ref int most, int value)
    {
        int seen;
        while ((seen = Volatile.Read(ref most)) < value && Interlocked.CompareExchange(ref most, value, seen) != seen)
        {
        }
    }
}
