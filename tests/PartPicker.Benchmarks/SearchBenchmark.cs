using System.Diagnostics;
using PartPicker.Mechanics;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.TestKit;

namespace PartPicker.Benchmarks;

/// <summary>The exact search against trying everything, on generated catalogs of growing size.</summary>
/// <remarks>
/// Trying everything is projected: sets of the same catalog are judged at all points, one after the other, and the mean
/// cost is multiplied. One thread. The ranking is timed without the writing of its answer, on pools that are prepared.
/// </remarks>
internal static class SearchBenchmark
{
    private const int Requests = 40;
    private const int Judged = 2000;
    private const int MaxWarmUps = 200;
    private static readonly TimeSpan WarmUpTime = TimeSpan.FromSeconds(3);

    public static readonly IReadOnlyList<LargeCatalogSize> Standard =
    [
        new(1e6, 50, 5, 3, 6, 10, 10),
        new(1e8, 100, 12, 3, 20, 10, 50),
        new(1e10, 200, 32, 4, 100, 10, 110),
        new(1e12, 1000, 42, 5, 250, 20, 220),
    ];

    private static readonly LargeCatalogSize TriedWhole = new(2e4, 8, 2, 2, 4, 8, 8);

    public static void Run(IReadOnlyList<LargeCatalogSize> sizes, TextWriter to)
    {
        to.WriteLine("| combinations | trying everything, projected | p50 ms | p95 ms | prepare ms | prepared MB | KB allocated | work p50 | full root solves p50 | not proven |");
        to.WriteLine("|---|---|---|---|---|---|---|---|---|---|");
        double ratio = 0;
        long largest = 0;
        foreach (LargeCatalogSize size in sizes)
            (ratio, largest) = Measure(size, to);
        (bool same, long tried) = SameAnswer();
        to.WriteLine(FormattableString.Invariant(
            $"search: {ratio:0.0e+0} times faster than trying everything (projected) at {largest:0.0e+0} combinations; same answer at {tried} combinations tried whole: {(same ? "yes" : "no")}"));
    }

    private static (double Ratio, long Combinations) Measure(LargeCatalogSize size, TextWriter to)
    {
        var catalog = new LargeCatalog(1, size);
        var times = new List<double>();
        var allocated = new List<double>();
        var solves = new List<double>();
        var work = new List<double>();
        int unproven = 0;
        var ready = new ReadySearch(catalog.Snapshot, catalog.Request(0));
        WarmUp(ready, catalog);
        for (int i = 0; i < Requests; i++)
        {
            PickRequest request = catalog.Request(100 + i);
            long before = GC.GetAllocatedBytesForCurrentThread();
            long started = Stopwatch.GetTimestamp();
            SetSearch search = ready.Run(request);
            times.Add(Stopwatch.GetElapsedTime(started).TotalMilliseconds);
            allocated.Add((GC.GetAllocatedBytesForCurrentThread() - before) / 1024.0);
            solves.Add(search.Predictions);
            work.Add(search.WorkDone);
            unproven += search.Proven ? 0 : 1;
        }

        double whole = ready.CostOfOne(catalog.Request(100), Judged) * ready.Combinations;
        to.WriteLine(FormattableString.Invariant(
            $"| {ready.Combinations:0.0e+0} | {Said(whole)} | {At(times, 0.5):0.0} | {At(times, 0.95):0.0} | {ready.PrepareMs:0} | {ready.Bytes / 1e6:0.0} | {At(allocated, 0.5):0} | {At(work, 0.5):0} | {At(solves, 0.5):0} | {unproven} of {Requests} |"));
        return (whole / (At(times, 0.5) / 1000), ready.Combinations);
    }

    // A service that has run for a while: the compiler has seen the hot paths.
    private static void WarmUp(ReadySearch ready, LargeCatalog catalog)
    {
        long started = Stopwatch.GetTimestamp();
        for (int i = 0; i < MaxWarmUps && Stopwatch.GetElapsedTime(started) < WarmUpTime; i++)
            ready.Run(catalog.Request(1000 + i));
    }

    private static string Said(double seconds) => seconds switch
    {
        < 120 => FormattableString.Invariant($"{seconds:0} s"),
        < 7200 => FormattableString.Invariant($"{seconds / 60:0} min"),
        < 2 * 86400 => FormattableString.Invariant($"{seconds / 3600:0.0} h"),
        < 2 * 365.0 * 86400 => FormattableString.Invariant($"{seconds / 86400:0} days"),
        _ => FormattableString.Invariant($"{seconds / 86400 / 365:0} years"),
    };

    private static double At(List<double> values, double share) =>
        values.Order().ElementAt((int)Math.Round(share * (values.Count - 1)));

    private static (bool Same, long Tried) SameAnswer()
    {
        var catalog = new LargeCatalog(2, TriedWhole);
        PickRequest request = catalog.Request(1);
        PickAnswer answer = PartSelection.Pick(catalog.Snapshot, request).Answer!;
        IEnumerable<string> expected = PlainSearch.Run(catalog.Snapshot, request).Picks.Select(p => $"{p.RoundedMiss} {Ids(p.Parts)}");
        bool same = expected.SequenceEqual(answer.Picks.Select(p => $"{(long)Math.Round(1000 * p.Miss)} {Ids(p.Parts)}"));
        return (same && answer.Picks.Count > 0, answer.Work.Combinations);

        static string Ids(PartSet set) =>
            $"{set.DriveSpring} {set.Flyweight} {string.Join(',', set.StationMasses.OrderBy(m => m.Key).Select(m => m.Value).Where(m => m > 0))} {set.DrivenSpring} {set.Hole} {set.Helix}";
    }

    /// <summary>A catalog prepared for one machine.</summary>
    private sealed class ReadySearch
    {
        private readonly CatalogSnapshot catalog;
        private readonly MachineModel machine;
        private readonly SetUp fitted;
        private readonly SearchIndex index;

        public ReadySearch(CatalogSnapshot catalog, PickRequest request)
        {
            this.catalog = catalog;
            machine = MachineModel.Create(request.Machine, [])!;
            fitted = new SetUpReader(catalog, request.Machine, [], []).Find(request.Machine.Machine.Fitted!, "fitted")!;
            long before = GC.GetTotalMemory(forceFullCollection: true);
            long started = Stopwatch.GetTimestamp();
            CandidatePools pools = new PoolBuilder(catalog, machine, fitted, request, new FitReport()).Build([], default)!;
            index = SearchIndex.Build(pools, fitted, machine, request.PointCount, default);
            PrepareMs = Stopwatch.GetElapsedTime(started).TotalMilliseconds;
            Bytes = GC.GetTotalMemory(forceFullCollection: true) - before;
        }

        public double PrepareMs { get; }

        public long Bytes { get; }

        public long Combinations => index.Pools.Combinations;

        public SetSearch Run(PickRequest request)
        {
            (Predictor predictor, Score score) = Meaning(request);
            var planner = new PurchasePlanner(catalog, request, fitted);
            var search = new SetSearch(
                [new Condition(predictor, score)], request, fitted, planner, index,
                PriceFloors.Of(index, catalog, request, planner, fitted));
            search.Run(default, default);
            return search;
        }

        /// <summary>Seconds to judge one set at every point, both sides at hand.</summary>
        public double CostOfOne(PickRequest request, int count)
        {
            (Predictor predictor, Score score) = Meaning(request);
            var random = new Random(1);
            CandidatePools pools = index.Pools;
            (DriveSide, DrivenSide)[] sets =
            [
                .. Enumerable.Range(0, count).Select(_ => (
                    predictor.Drive(
                        pools.DriveSprings[random.Next(pools.DriveSprings.Count)],
                        pools.Flyweights[random.Next(pools.Flyweights.Count)]),
                    predictor.Driven(pools.Driven[random.Next(pools.Driven.Count)]))),
            ];
            double sum = 0;
            long started = Stopwatch.GetTimestamp();
            foreach ((DriveSide drive, DrivenSide driven) in sets)
            {
                for (int j = 0; j < predictor.Model.Positions.Count; j++)
                    sum += predictor.Model.BalanceRpm(drive, driven, j, ShiftDirection.Upshift) ?? 0;
            }

            double seconds = Stopwatch.GetElapsedTime(started).TotalSeconds / count;
            return sum > 0 ? seconds : throw new InvalidOperationException("No set of the sample shifts.");
        }

        private (Predictor, Score) Meaning(PickRequest request)
        {
            Predictor predictor = PredictorBuilder.Build(
                catalog, machine, request.Machine.OwnBaseline, "", request.Air, request.AirLaw, request.PointCount, [])!;
            WantedRpm wanted = ShiftGoals.Of(request.Target, predictor, fitted, [])!;
            return (predictor, new Score(wanted, request));
        }
    }
}
