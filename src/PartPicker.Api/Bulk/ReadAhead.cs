using System.IO.Pipelines;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Bulk;

/// <summary>Takes a body in before its lines are needed, up to a limit.</summary>
/// <remarks>
/// Many clients send all of a request before they read any of the answer. One whose body fits is answered; a longer body
/// waits, and its caller has to read.
/// </remarks>
internal sealed class ReadAhead : IAsyncDisposable
{
    private readonly Pipe taken = new(new PipeOptions(
        pauseWriterThreshold: RequestLimits.MaxBulkBytesAhead, resumeWriterThreshold: RequestLimits.MaxBulkBytesAhead / 2));

    private readonly CancellationTokenSource stop;
    private readonly Task taking;

    public ReadAhead(PipeReader body, CancellationToken callerGone)
    {
        stop = CancellationTokenSource.CreateLinkedTokenSource(callerGone);
        taking = TakeAsync(body);
    }

    /// <summary>What was taken in; whatever is wrong with the body is thrown here.</summary>
    public PipeReader Body => taken.Reader;

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await taken.Reader.CompleteAsync();
        await taking;
        stop.Dispose();
    }

    private async Task TakeAsync(PipeReader body)
    {
        try
        {
            await body.CopyToAsync(taken.Writer, stop.Token);
            await taken.Writer.CompleteAsync();
        }
        catch (Exception fault)
        {
            await taken.Writer.CompleteAsync(fault);
        }
    }
}
