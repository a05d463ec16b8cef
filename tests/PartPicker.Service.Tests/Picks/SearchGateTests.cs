using PartPicker.Api.Capacity;
using PartPicker.Api.Picks;
using Xunit;

namespace PartPicker.Service.Tests.Picks;

public sealed class SearchGateTests
{
    private static readonly TimeSpan Ample = TimeSpan.FromMinutes(1);

    [Fact]
    public async Task A_search_waits_for_its_turn()
    {
        using SearchGate gate = Gate(Ample, waiting: 1);
        using HeldSearch first = new(gate);
        Task<string?> second = Task.Run(() => gate.RunAsync(_ => "second", default));

        Assert.NotSame(second, await Task.WhenAny(second, Task.Delay(100)));
        Assert.Equal("held", await first.Finish());
        Assert.Equal("second", await second);
    }

    [Fact]
    public async Task One_that_finds_no_place_to_wait_is_sent_away_while_the_others_go_on()
    {
        using SearchGate gate = Gate(Ample, waiting: 1);
        using HeldSearch first = new(gate);
        Task<string?> second = gate.RunAsync(_ => "second", default);

        Assert.Null(await gate.RunAsync(_ => "third", default));

        Assert.False(second.IsCompleted);
        Assert.Equal("held", await first.Finish());
        Assert.Equal("second", await second);
        Assert.Equal("fourth", await gate.RunAsync(_ => "fourth", default));
    }

    [Fact]
    public async Task Waiting_counts_as_time()
    {
        using SearchGate gate = Gate(TimeSpan.FromMilliseconds(50), waiting: 1);
        using HeldSearch first = new(gate);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => gate.RunAsync(_ => "second", default));
        Assert.Equal("held", await first.Finish());
    }

    [Fact]
    public async Task A_search_that_fails_gives_its_place_back()
    {
        using SearchGate gate = Gate(Ample, waiting: 0);

        await Assert.ThrowsAsync<InvalidOperationException>(() =>
            gate.RunAsync<string>(_ => throw new InvalidOperationException(), default));
        Assert.Equal("second", await gate.RunAsync(_ => "second", default));
    }

    [Fact]
    public async Task A_caller_who_goes_away_stops_the_search()
    {
        using SearchGate gate = Gate(Ample, waiting: 0);
        using CancellationTokenSource gone = new();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => gate.RunAsync(
            stop =>
            {
                gone.Cancel();
                stop.ThrowIfCancellationRequested();
                return "never";
            },
            gone.Token));
    }

    [Fact]
    public async Task A_caller_who_goes_away_waits_no_more_and_leaves_room()
    {
        using SearchGate gate = Gate(Ample, waiting: 1);
        using HeldSearch first = new(gate);
        using CancellationTokenSource gone = new();
        Task<string?> second = gate.RunAsync(_ => "second", gone.Token);

        await gone.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => second);
        Task<string?> third = gate.RunAsync(_ => "third", default);
        Assert.Equal("held", await first.Finish());
        Assert.Equal("third", await third);
    }

    [Fact]
    public async Task A_line_of_a_bulk_run_needs_no_place_and_has_the_same_time()
    {
        using SearchGate gate = Gate(TimeSpan.FromMilliseconds(50), waiting: 0);
        using HeldSearch first = new(gate);

        Assert.Equal("line", gate.RunLine(_ => "line", default));
        Assert.Throws<OperationCanceledException>(() => gate.RunLine<string>(
            stop =>
            {
                stop.WaitHandle.WaitOne();
                throw new OperationCanceledException(stop);
            },
            default));
        Assert.Equal("held", await first.Finish());
    }

    [Fact]
    public async Task A_search_leaves_the_threads_of_the_pool_to_everybody_else()
    {
        using SearchGate gate = Gate(Ample, waiting: 0);

        Assert.Equal("False", await gate.RunAsync(_ => $"{Thread.CurrentThread.IsThreadPoolThread}", default));
    }

    private static SearchGate Gate(TimeSpan maxTime, int waiting) => new(maxTime, new Places(1, waiting, "searches"));
}
