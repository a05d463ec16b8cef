using System.Threading.RateLimiting;
using PartPicker.Api.Errors;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Capacity;

/// <summary>Places where answers are computed, and a few to wait for one; who finds neither is told so at once.</summary>
/// <remarks>
/// An answer keeps one processor busy: more of them at once than processors would only slow each other, and a long queue
/// would let everybody wait for answers that nobody wants any more.
/// </remarks>
internal sealed class Places(int atOnce, int waiting, string what) : IDisposable
{
    private readonly ConcurrencyLimiter limiter = new(new ConcurrencyLimiterOptions
    {
        PermitLimit = atOnce,
        QueueLimit = waiting,
        QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
    });

    /// <summary>How many wait for a place.</summary>
    public long Waiting => limiter.GetStatistics()!.CurrentQueuedCount;

    /// <summary>Computes when a place is free; null where all are taken, those to wait included.</summary>
    /// <exception cref="OperationCanceledException">It was stopped, computing or waiting.</exception>
    public async Task<T?> RunAsync<T>(Func<T> compute, CancellationToken stop)
        where T : class
    {
        using RateLimitLease place = await limiter.AcquireAsync(1, stop);
        if (!place.IsAcquired)
            return null;
        // On a thread of its own: those of the pool are left to the requests that need no computing.
        return await Task.Factory.StartNew(compute, stop, TaskCreationOptions.LongRunning, TaskScheduler.Default);
    }

    /// <summary>What is answered where all places are taken.</summary>
    public ProblemAnswer Full()
    {
        ProblemWire problem = Problems.Of(
            ErrorCodes.TooBusy, $"At most {atOnce} {what} are computed at once, and {waiting} wait (limits {what} and {what}-waiting).").Problem;
        return new ProblemAnswer(problem) { RetryAfter = RequestLimits.BusyRetryAfter };
    }

    public void Dispose() => limiter.Dispose();
}
