using PartPicker.Api.Picks;

namespace PartPicker.Service.Tests.Picks;

/// <summary>A search that has begun and goes on until it is told to finish.</summary>
internal sealed class HeldSearch : IDisposable
{
    private readonly ManualResetEventSlim begun = new();
    private readonly ManualResetEventSlim mayEnd = new();
    private readonly Task<string?> search;

    public HeldSearch(SearchGate gate)
    {
        search = Task.Run(() => gate.RunAsync(
            stop =>
            {
                begun.Set();
                mayEnd.Wait(CancellationToken.None); // Even past its time: a search may be slow to stop.
                return "held";
            },
            default));
        begun.Wait();
    }

    public Task<string?> Finish()
    {
        mayEnd.Set();
        return search;
    }

    public void Dispose()
    {
        mayEnd.Set();
        begun.Dispose();
    }
}
