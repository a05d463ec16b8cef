using PartPicker.Api.Picks;
using Xunit;

namespace PartPicker.Service.Tests.Picks;

public sealed class SearchGateTests
{
    private static readonly TimeSpan Ample = TimeSpan.FromMinutes(1);

    [Fact]
    public async Task A_search_waits_for_its_turn()
    {
        using SearchGate gate = new(Ample, maxAtOnce: 1);
        using HeldSearch first = new(gate);
        Task<int> second = Task.Run(() => gate.RunAsync(_ => 2, default));

        Assert.NotSame(second, await Task.WhenAny(second, Task.Delay(100)));
        Assert.Equal(1, await first.Finish());
        Assert.Equal(2, await second);
    }

    [Fact]
    public async Task Waiting_counts_as_time()
    {
        using SearchGate gate = new(TimeSpan.FromMilliseconds(50), maxAtOnce: 1);
        using HeldSearch first = new(gate);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => gate.RunAsync(_ => 2, default));
        Assert.Equal(1, await first.Finish());
    }

    [Fact]
    public async Task A_search_that_fails_gives_its_place_back()
    {
        using SearchGate gate = new(Ample, maxAtOnce: 1);

        await Assert.ThrowsAsync<InvalidOperationException>(() =>
            gate.RunAsync<int>(_ => throw new InvalidOperationException(), default));
        Assert.Equal(2, await gate.RunAsync(_ => 2, default));
    }

    [Fact]
    public async Task A_caller_who_goes_away_stops_the_search()
    {
        using SearchGate gate = new(Ample, maxAtOnce: 1);
        using CancellationTokenSource gone = new();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => gate.RunAsync(
            stop =>
            {
                gone.Cancel();
                stop.ThrowIfCancellationRequested();
                return 1;
            },
            gone.Token));
    }
}
