using PartPicker.Api.Capacity;
using PartPicker.Api.CommandLine;
using PartPicker.Api.Errors;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Picks;

/// <summary>Limits what searches may take: so many at once, few waiting, and each so long, its waiting included.</summary>
internal sealed class SearchGate(TimeSpan maxTime, Places places) : IDisposable
{
    public TimeSpan MaxTime => maxTime;

    public static SearchGate Standard(ServiceOptions options) => new(
        RequestLimits.MaxSearchTime,
        new Places(
            options.Of(ServiceLimits.Searches), options.Of(ServiceLimits.SearchesWaiting), ServiceLimits.Searches.Name));

    /// <summary>Runs a search when its turn comes; null where too many search and wait already.</summary>
    /// <param name="search">The search.</param>
    /// <param name="callerGone">Set when the caller went away.</param>
    /// <exception cref="OperationCanceledException">The time was up, or the caller went away.</exception>
    public async Task<T?> RunAsync<T>(Func<CancellationToken, T> search, CancellationToken callerGone)
        where T : class
    {
        using CancellationTokenSource limit = Limit(callerGone);
        return await places.RunAsync(() => search(limit.Token), limit.Token);
    }

    /// <summary>
    /// Runs the search of a line of a bulk run, which has its place already: lines and single questions keep none from each
    /// other.
    /// </summary>
    /// <inheritdoc cref="RunAsync"/>
    public T RunLine<T>(Func<CancellationToken, T> search, CancellationToken callerGone)
    {
        using CancellationTokenSource limit = Limit(callerGone);
        return search(limit.Token);
    }

    /// <summary>What is answered where too many search and wait.</summary>
    public ProblemAnswer Full() => places.Full();

    public void Dispose() => places.Dispose();

    private CancellationTokenSource Limit(CancellationToken callerGone)
    {
        var limit = CancellationTokenSource.CreateLinkedTokenSource(callerGone);
        limit.CancelAfter(maxTime);
        return limit;
    }
}
