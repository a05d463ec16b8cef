using System.Diagnostics;
using System.Runtime;
using System.Runtime.CompilerServices;
using PartPicker.Mechanics;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.TestKit;

namespace PartPicker.Benchmarks;

/// <summary>The exact search against trying everything, on generated catalogs of growing size.</summary>
/// <remarks>
/// Trying everything is projected: sets of the same catalog are judged at all points, one after the other, and the mean
/// cost is multiplied. One thread. The ranking is timed without the writing of its answer, on pools that are prepared; no
/// request is asked twice. Where an outlet is named, the cheapest set and those that none beats in price are searched too.
/// </remarks>
internal static class SearchBenchmark
{
    private const int Requests = 40;
    private const int RequestsInARow = 1000;
    private const int Judged = 2000;

    // Seeds of requests: none is timed that was warmed up with.
    private const int FirstTimed = 100;
    private const int FirstInARow = 10_000;
    private const int FirstWarmUp = 1_000_000;

    private static readonly TimeSpan QuietTime = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan MostWarmUp = TimeSpan.FromSeconds(30);

    private static readonly LargeCatalogSize OfAShop = new(1e8, 100, 12, 3, 20, 10, 50);

    public static readonly IReadOnlyList<LargeCatalogSize> Standard =
    [
        new(1e6, 50, 5, 3, 6, 10, 10),
        OfAShop,
        new(1e10, 200, 32, 4, 100, 10, 110),
        new(1e12, 1000, 42, 5, 250, 20, 220),
    ];

    private static readonly LargeCatalogSize TriedWhole = new(2e4, 8, 2, 2, 4, 8, 8);

    public static void Run(IReadOnlyList<LargeCatalogSize> sizes, TextWriter to)
    {
        to.WriteLine("| combinations | outlet | trying everything, projected | p50 ms | p95 ms | not proven | work p50 | judged by the model p50 | KB allocated p50 | prepare ms | prepared MB |");
        to.WriteLine("|---|---|---|---|---|---|---|---|---|---|---|");
        List<Measured> plain = [];
        List<Measured> priced = [];
        foreach (LargeCatalogSize size in sizes)
        {
            var catalog = new LargeCatalog(1, size);
            var ready = new ReadySearch(catalog.Snapshot, catalog.Request(0));
            double whole = ready.CostOfOne(catalog.Request(FirstTimed), Judged) * ready.Combinations;
            plain.Add(Measure(ready, catalog, null, whole, to));
            priced.Add(Measure(ready, catalog, catalog.Snapshot.FindOutlet("corner"), whole, to));
        }

        if (sizes.Contains(OfAShop))
            to.WriteLine(FormattableString.Invariant(
                $"{RequestsInARow:N0} different requests at {OfAShop.Nominal:0e0}: {PicksPerSecond(OfAShop):0} picks per second and core"));
        if (sizes.Count > 1)
            to.WriteLine(FormattableString.Invariant(
                $"for each tenfold of combinations p50 is {PerTenfold(plain):0.00} times as long, with an outlet named {PerTenfold(priced):0.00} times"));
        (bool same, long tried) = SameAnswer();
        to.WriteLine(FormattableString.Invariant(
            $"search: {plain[^1].TimesFaster:0.0e+0} times faster than trying everything (projected) at {plain[^1].Combinations:0.0e+0} combinations; same answer at {tried} combinations tried whole: {(same ? "yes" : "no")}"));
    }

    /// <param name="outlet">The one that every request names; null: none.</param>
    /// <param name="whole">Seconds to try everything.</param>
    private static Measured Measure(ReadySearch ready, LargeCatalog catalog, Outlet? outlet, double whole, TextWriter to)
    {
        var times = new List<double>();
        var allocated = new List<double>();
        var judged = new List<double>();
        var work = new List<double>();
        int unproven = 0;
        WarmUp(i => ready.Run(Ask(FirstWarmUp + i)));
        for (int i = 0; i < Requests; i++)
        {
            PickRequest request = Ask(FirstTimed + i);
            long before = GC.GetAllocatedBytesForCurrentThread();
            long started = Stopwatch.GetTimestamp();
            SetSearch search = ready.Run(request);
            times.Add(Stopwatch.GetElapsedTime(started).TotalMilliseconds);
            allocated.Add((GC.GetAllocatedBytesForCurrentThread() - before) / 1024.0);
            judged.Add(search.Predictions);
            work.Add(search.WorkDone);
            unproven += search.Proven ? 0 : 1;
        }

        double median = At(times, 0.5);
        to.WriteLine(FormattableString.Invariant(
            $"| {ready.Combinations:0.0e+0} | {(outlet is null ? "none" : "named")} | {Said(whole)} | {median:0.0} | {At(times, 0.95):0.0} | {unproven} of {Requests} | {At(work, 0.5):0} | {At(judged, 0.5):0} | {At(allocated, 0.5):0} | {ready.PrepareMs:0} | {ready.Bytes / 1e6:0.0} |"));
        return new Measured(ready.Combinations, median, 1000 * whole / median);

        PickRequest Ask(int seed) => catalog.Request(seed) with { Outlet = outlet };
    }

    private static double PicksPerSecond(LargeCatalogSize size)
    {
        var catalog = new LargeCatalog(1, size);
        var ready = new ReadySearch(catalog.Snapshot, catalog.Request(0));
        WarmUp(i => ready.Run(catalog.Request(FirstWarmUp + i)));
        long started = Stopwatch.GetTimestamp();
        for (int i = 0; i < RequestsInARow; i++)
            ready.Run(catalog.Request(FirstInARow + i));
        return RequestsInARow / Stopwatch.GetElapsedTime(started).TotalSeconds;
    }

    // The mean growth from the first size to the last, of any sizes between.
    private static double PerTenfold(List<Measured> sizes) => Math.Pow(
        sizes[^1].MedianMs / sizes[0].MedianMs,
        1 / Math.Log10((double)sizes[^1].Combinations / sizes[0].Combinations));

    // A service that has run for a while: the compiler has had nothing to do for some time.
    private static void WarmUp(Action<int> run)
    {
        long started = Stopwatch.GetTimestamp();
        long quietSince = started;
        long compiled = -1;
        for (int i = 0; Left(quietSince, QuietTime) && Left(started, MostWarmUp); i++)
        {
            run(i);
            long now = JitInfo.GetCompiledMethodCount();
            if (now > compiled)
                (compiled, quietSince) = (now, Stopwatch.GetTimestamp());
        }

        static bool Left(long since, TimeSpan time) => Stopwatch.GetElapsedTime(since) < time;
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

    private sealed record Measured(long Combinations, double MedianMs, double TimesFaster);

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
            index = Prepared(request);
            PrepareMs = Stopwatch.GetElapsedTime(started).TotalMilliseconds;
            Bytes = GC.GetTotalMemory(forceFullCollection: true) - before;
        }

        // By itself, so that what the rules said of refused parts is not counted with what is kept.
        [MethodImpl(MethodImplOptions.NoInlining)]
        private SearchIndex Prepared(PickRequest request)
        {
            CandidatePools pools = new PoolBuilder(catalog, machine, fitted, request, new FitReport()).Build([], default)!;
            return SearchIndex.Build(pools, fitted, machine, request.PointCount, default);
        }

        public double PrepareMs { get; }

        public long Bytes { get; }

        public long Combinations => index.Pools.Combinations;

        public SetSearch Run(PickRequest request)
        {
            (Predictor predictor, Score score) = Meaning(request);
            var planner = new PurchasePlanner(catalog, request, fitted);
            var search = new SetSearch(
                [new Condition(predictor, score)], request, planner, index,
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
            (DriveSide Drive, DrivenSide Driven)[] sets =
            [
                .. Enumerable.Range(0, count).Select(_ => (
                    predictor.Drive(
                        pools.DriveSprings[random.Next(pools.DriveSprings.Count)],
                        pools.Flyweights[random.Next(pools.Flyweights.Count)]),
                    predictor.Driven(pools.Driven[random.Next(pools.Driven.Count)]))),
            ];
            WarmUp(_ => JudgeAll());
            long started = Stopwatch.GetTimestamp();
            double sum = JudgeAll();
            double seconds = Stopwatch.GetElapsedTime(started).TotalSeconds / count;
            return sum > 0 ? seconds : throw new InvalidOperationException("No set of the sample shifts.");

            double JudgeAll() => sets.Sum(set => predictor.Model.Positions.Select(
                (_, j) => predictor.Model.BalanceRpm(set.Drive, set.Driven, j, ShiftDirection.Upshift) ?? 0).Sum());
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
