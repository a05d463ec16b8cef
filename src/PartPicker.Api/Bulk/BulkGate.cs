using PartPicker.Api.Wire;

namespace PartPicker.Api.Bulk;

/// <summary>Limits what bulk runs may take: so many at once, and so many of their lines computed at once.</summary>
/// <remarks>
/// All runs together compute as many lines at once as there are processors, so that a second run is no second service.
/// </remarks>
internal sealed class BulkGate(
    int maxRuns, int maxLinesAtOnce, int maxAnswers, TimeSpan maxStall) : IDisposable
{
    private readonly SemaphoreSlim places = new(maxLinesAtOnce);
    private readonly BulkThreads threads = new(maxLinesAtOnce);
    private int runs;

    /// <summary>How many runs are under way.</summary>
    public int Runs => Volatile.Read(ref runs);

    public int MaxRuns => maxRuns;

    /// <summary>Most answers of one run.</summary>
    public int MaxAnswers => maxAnswers;

    /// <summary>Longest that a run waits for a line, or for its caller to read more.</summary>
    public TimeSpan MaxStall => maxStall;

    public static BulkGate Standard() => new(
        RequestLimits.MaxBulkRuns, Environment.ProcessorCount, RequestLimits.MaxBulkAnswers, RequestLimits.MaxBulkStall);

    /// <summary>False where there are too many runs already; whoever enters must leave.</summary>
    public bool TryEnter()
    {
        if (Interlocked.Increment(ref runs) <= maxRuns)
            return true;
        Leave();
        return false;
    }

    public void Leave() => Interlocked.Decrement(ref runs);

    /// <summary>Computes a line when its turn comes, on a thread that is none of the pool.</summary>
    public async Task<T> ComputeAsync<T>(Func<Task<T>> line, CancellationToken callerGone)
    {
        await places.WaitAsync(callerGone);
        try
        {
            return await threads.RunAsync(line, callerGone);
        }
        finally
        {
            places.Release();
        }
    }

    public void Dispose()
    {
        places.Dispose();
        threads.Dispose();
    }
}
