using PartPicker.Api.Wire;

namespace PartPicker.Api.Picks;

/// <summary>Limits what searches may take: so many at once, and each so long, its waiting included.</summary>
/// <remarks>
/// A search keeps one processor busy. More of them at once than processors would only slow each other.
/// </remarks>
internal sealed class SearchGate(TimeSpan maxTime, int maxAtOnce) : IDisposable
{
    private readonly SemaphoreSlim places = new(maxAtOnce);

    public TimeSpan MaxTime => maxTime;

    public static SearchGate Standard() => new(RequestLimits.MaxSearchTime, Environment.ProcessorCount);

    /// <summary>Runs a search when its turn comes.</summary>
    /// <exception cref="OperationCanceledException">The time was up, or the caller went away.</exception>
    public async Task<T> RunAsync<T>(Func<CancellationToken, T> search, CancellationToken callerGone)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(callerGone);
        limit.CancelAfter(maxTime);
        await places.WaitAsync(limit.Token);
        try
        {
            return search(limit.Token);
        }
        finally
        {
            places.Release();
        }
    }

    public void Dispose() => places.Dispose();
}
