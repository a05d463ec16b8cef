using PartPicker.Api.Wire;

namespace PartPicker.Api.Picks;

/// <summary>Limits what searches may take: so many at once, and each so long, its waiting included.</summary>
/// <remarks>
/// A search keeps one processor busy. Many more of them at once than processors would only slow each other. Lines of
/// bulk runs may keep every processor busy, but not every place: one is always left to a request of its own.
/// </remarks>
internal sealed class SearchGate(TimeSpan maxTime, int maxAtOnce) : IDisposable
{
    private readonly SemaphoreSlim places = new(maxAtOnce);

    public TimeSpan MaxTime => maxTime;

    public static SearchGate Standard() => new(RequestLimits.MaxSearchTime, Environment.ProcessorCount + 1);

    /// <summary>Runs a search when its turn comes.</summary>
    /// <param name="search">The search.</param>
    /// <param name="callerGone">Set when the caller went away.</param>
    /// <param name="patient">True: waiting does not count as time, as for a line of many.</param>
    /// <exception cref="OperationCanceledException">The time was up, or the caller went away.</exception>
    public async Task<T> RunAsync<T>(
        Func<CancellationToken, T> search, CancellationToken callerGone, bool patient = false)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(callerGone);
        if (!patient)
            limit.CancelAfter(maxTime);
        await places.WaitAsync(limit.Token);
        try
        {
            if (patient)
                limit.CancelAfter(maxTime);
            return search(limit.Token);
        }
        finally
        {
            places.Release();
        }
    }

    public void Dispose() => places.Dispose();
}
