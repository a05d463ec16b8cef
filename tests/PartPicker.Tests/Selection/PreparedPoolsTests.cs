using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.TestKit;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>What is prepared for one request serves the next, and has its limits.</summary>
public sealed class PreparedPoolsTests
{
    [Fact]
    public void Requests_at_once_prepare_once()
    {
        var catalog = new RandomCatalog(7);
        Prepared ready = Of(catalog.Snapshot, catalog.Request);
        PreparedPools pools = PreparedPools.Of(new CatalogSnapshot("another", new CatalogContents([], [])));
        PoolKey key = KeyOf(catalog, catalog.Request);
        using var start = new Barrier(8);
        int prepared = 0;

        Prepared?[] got = new Prepared?[8];
        Thread[] askers =
        [
            .. Enumerable.Range(0, 8).Select(i => new Thread(() =>
            {
                start.SignalAndWait();
                got[i] = pools.Get(key, () =>
                {
                    Interlocked.Increment(ref prepared);
                    Thread.Sleep(50); // Long enough for the others to come and wait.
                    return ready;
                });
            })),
        ];
        foreach (Thread asker in askers)
            asker.Start();
        foreach (Thread asker in askers)
            asker.Join();

        Assert.Equal(1, prepared);
        Assert.All(got, one => Assert.Same(ready, one));
    }

    [Fact]
    public void What_no_box_knows_of_prepares_nothing_anew()
    {
        var catalog = new RandomCatalog(7);
        PickRequest request = catalog.Request;
        Prepared first = Of(catalog.Snapshot, request);

        Assert.Same(first, Of(catalog.Snapshot, request with { Air = new AirState(1800, null), Count = 3 }));
        Assert.NotSame(first, Of(catalog.Snapshot, request with { PointCount = request.PointCount + 1 }));
        Assert.NotSame(first, Of(catalog.Snapshot, request with { Exclude = new HashSet<string> { "ds-1" } }));
        Assert.NotSame(first, Of(new RandomCatalog(7).Snapshot, request));
    }

    [Fact]
    public void What_failed_is_asked_again_and_the_ones_longest_unused_go()
    {
        var catalog = new RandomCatalog(7);
        Prepared ready = Of(catalog.Snapshot, catalog.Request);
        PreparedPools pools = PreparedPools.Of(new CatalogSnapshot("another", new CatalogContents([], [])));
        PoolKey key = KeyOf(catalog, catalog.Request);
        int prepared = 0;

        Assert.Null(pools.Get(key, () => null));
        Ask(0);
        Ask(0);
        Assert.Equal(1, prepared);
        for (int i = 1; i < PreparedPools.MaxKept; i++)
            Ask(i);
        Ask(0);
        Assert.Equal(PreparedPools.MaxKept, prepared);
        Ask(PreparedPools.MaxKept);
        Ask(0);
        Assert.Equal(PreparedPools.MaxKept + 1, prepared);
        Ask(1);
        Assert.Equal(PreparedPools.MaxKept + 2, prepared);

        void Ask(int points) => pools.Get(key with { PointCount = points }, () =>
        {
            prepared++;
            return ready;
        });
    }

    [Fact]
    public void Preparation_takes_no_more_than_was_said_before_it_began()
    {
        for (int seed = 1; seed <= 60; seed++)
        {
            var catalog = new RandomCatalog(seed);
            SearchIndex index = Of(catalog.Snapshot, catalog.Request).Index;
            CandidatePools pools = index.Pools;
            if (pools.Empty)
                continue;
            long said = SearchIndex.BytesToBuild(
                pools.DriveSprings.Count, pools.Flyweights.Count, pools.Driven.Count, pools.Driven.Helices.Count, catalog.Request.PointCount);
            Assert.InRange(index.Bytes, 1, said);
        }
    }

    [Fact]
    public void Pools_that_memory_cannot_hold_are_refused_with_the_numbers()
    {
        var catalog = new LargeCatalog(1, new LargeCatalogSize(1e12, 4, 2, 2, 500, 40, 240));

        RequestProblem problem = Assert.Single(PartSelection.Pick(catalog.Snapshot, catalog.Request(1)).Problems);

        Assert.Equal(RequestProblemCodes.TooManyCombinations, problem.Code);
        Assert.Contains("4800000 choices of the driven side at 9 points", problem.Sent, StringComparison.Ordinal);
        Assert.Contains("at most 300 MB", problem.Expected, StringComparison.Ordinal);

        // With the helix held the same catalog is answered.
        Assert.Empty(PartSelection.Pick(
            catalog.Snapshot, catalog.Request(1) with { Keep = new HashSet<Slot> { Slot.Helix }, WorkLimit = 1000 }).Problems);
    }

    private static Prepared Of(CatalogSnapshot catalog, PickRequest request) =>
        PartSelection.Rank(catalog, request, [])!.Prepared;

    private static PoolKey KeyOf(RandomCatalog catalog, PickRequest request) =>
        PoolKey.Of(request, PartSelection.Rank(catalog.Snapshot, request, [])!.Fitted);
}
