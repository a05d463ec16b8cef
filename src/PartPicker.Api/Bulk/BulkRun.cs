using System.IO.Pipelines;
using System.Text.Json;
using System.Threading.Channels;
using PartPicker.Api.Errors;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Bulk;

/// <summary>One run: lines come in, are answered side by side, and leave in the order in which they came.</summary>
/// <remarks>
/// Few answers at a time are begun and not yet written. When there are no more to begin, because lines are slow or the
/// caller does not read, no more is read, and TCP makes the caller wait. So a run of any length needs the memory of these.
/// </remarks>
internal sealed class BulkRun(
    LineReader lines, PipeWriter output, long fromLine, BulkGate gate,
    Func<JsonElement, CancellationToken, Task<BulkReply>> answer, ILogger log) : IDisposable
{
    // Answers that are ready together leave together, in pieces of this size.
    private const int FlushBytes = 32 * 1024;

    private readonly SemaphoreSlim mayBegin = new(RequestLimits.MaxBulkAnswersHeld);
    private readonly Channel<Task<BulkAnswer>> begun = Channel.CreateUnbounded<Task<BulkAnswer>>(
        new UnboundedChannelOptions { SingleReader = true, SingleWriter = true });

    private int started;
    private int written;
    private int failed;
    private int unflushed;
    private long? lastLine;
    private ProblemWire? problem;

    /// <summary>True where the run ended before the body did, so that the caller may still be sending.</summary>
    public bool LeftUnread { get; private set; }

    /// <summary>Answers every line, and says how the run ended.</summary>
    /// <param name="callerGone">Stops everything.</param>
    /// <param name="stopping">Ends the run with what was begun.</param>
    public async Task RunAsync(CancellationToken callerGone, CancellationToken stopping)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(callerGone);
        Task reading = ReadAsync(stop.Token, stopping);
        try
        {
            await WriteAsync(stop.Token);
            await reading;
            Write(BulkLineWriter.End(written, failed, lastLine, problem));
            await FlushAsync(stop.Token);
        }
        finally
        {
            // Nothing of a run goes on when the run is over.
            await stop.CancelAsync();
            await reading.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            while (begun.Reader.TryRead(out Task<BulkAnswer>? left))
                await ((Task)left).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    public void Dispose() => mayBegin.Dispose();

    private async Task ReadAsync(CancellationToken callerGone, CancellationToken stopping)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(callerGone, stopping);
        try
        {
            // What comes after the end of a run is read too: a caller who still sends would not see the answer.
            while (await NextAsync(stop) is { } line)
            {
                if (line.Number >= fromLine && problem is null && !line.IsBlank)
                    await TakeAsync(line, callerGone, stop.Token);
            }
        }
        catch (OperationCanceledException) when (!callerGone.IsCancellationRequested)
        {
            LeftUnread = true;
            problem ??= stopping.IsCancellationRequested
                ? Problems.Of(ErrorCodes.ServiceStopping, "No more lines are taken.").Problem
                : Problems.Of(ErrorCodes.BodyTooSlow, $"No whole line came for {gate.MaxStall.TotalSeconds:0} s.").Problem;
        }
        catch (BadHttpRequestException fault)
        {
            problem ??= Problems.Of(ErrorCodes.OfStatus(fault.StatusCode), RequestBody.NotWhole, fault.StatusCode).Problem;
        }
        catch (IOException)
        {
            // The server says so of a chunk whose size it cannot count; a caller who is gone reads nothing anyway.
            problem ??= Problems.Of(ErrorCodes.BadHttp, RequestBody.NotWhole).Problem;
        }
        finally
        {
            begun.Writer.Complete();
        }
    }

    // Only waiting for the caller counts as stall: not the time that answers take, or that they wait to be read.
    private async ValueTask<SentLine?> NextAsync(CancellationTokenSource stop)
    {
        stop.CancelAfter(gate.MaxStall);
        bool passOver = lines.Count + 1 < fromLine || problem is not null;
        SentLine? line = await lines.NextAsync(passOver, stop.Token);
        stop.CancelAfter(Timeout.InfiniteTimeSpan);
        return line;
    }

    private async Task TakeAsync(SentLine line, CancellationToken callerGone, CancellationToken stop)
    {
        foreach (BulkItem item in BulkLineReader.Read(line))
        {
            if (started == gate.MaxAnswers)
            {
                problem = Problems.Of(
                    ErrorCodes.TooManyAnswers, $"A run gives at most {gate.MaxAnswers} answers.").Problem;
                return;
            }

            await mayBegin.WaitAsync(stop);
            started++;
            begun.Writer.TryWrite(AnswerAsync(item, callerGone));
        }

        lastLine = line.Number;
    }

    private async Task<BulkAnswer> AnswerAsync(BulkItem item, CancellationToken callerGone)
    {
        BulkReply reply;
        try
        {
            reply = item.Refusal is { } refusal
                ? new BulkReply(null, refusal)
                : await gate.ComputeAsync(() => answer(item.Request, callerGone), callerGone);
        }
        catch (Exception fault) when (!callerGone.IsCancellationRequested)
        {
            // A fault of the service in one line is no fault of the others.
            log.LogError(fault, "Line {Line} of a bulk run could not be answered.", item.Line);
            reply = new BulkReply(null, Problems.Of(
                ErrorCodes.InternalError, "The log of the service holds the cause; the line may be sound."));
        }

        return new BulkAnswer(BulkLineWriter.Line(item, reply), reply.Problem is not null);
    }

    private async Task WriteAsync(CancellationToken callerGone)
    {
        while (true)
        {
            if (!begun.Reader.TryRead(out Task<BulkAnswer>? next))
            {
                await FlushAsync(callerGone);
                if (!await begun.Reader.WaitToReadAsync(callerGone))
                    return;
                continue;
            }

            if (!next.IsCompleted || unflushed > FlushBytes)
                await FlushAsync(callerGone);
            BulkAnswer ready = await next;
            Write(ready.Bytes);
            written++;
            failed += ready.Failed ? 1 : 0;
            mayBegin.Release();
        }
    }

    private void Write(ReadOnlyMemory<byte> bytes)
    {
        bytes.Span.CopyTo(output.GetSpan(bytes.Length));
        output.Advance(bytes.Length);
        unflushed += bytes.Length;
    }

    private async Task FlushAsync(CancellationToken callerGone)
    {
        if (unflushed == 0)
            return;
        unflushed = 0;
        FlushResult flushed = await output.FlushAsync(callerGone);
        if (flushed.IsCompleted)
            throw new OperationCanceledException("Nobody reads the answers any more.");
    }

    private readonly record struct BulkAnswer(ReadOnlyMemory<byte> Bytes, bool Failed);
}
