using PartPicker.Mechanics;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.TestKit;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>Bytes that a prediction allocates once all is compiled; the limits are a quarter above what was measured.</summary>
public sealed class AllocationTests
{
    private const long BalanceLimit = 430;
    private const long CurveLimit = 34_000;
    private const long PredictionLimit = 2_900_000;
    private const long RankingLimit = 44_000;

    [Fact]
    public void A_balance_a_curve_and_a_prediction_stay_within_their_bytes()
    {
        var bench = new Bench();
        CatalogSnapshot catalog = bench.Snapshot();
        MachineModel machine = bench.Model();
        SetUp set = new SetUpReader(catalog, bench.Profile(), []).Find(bench.Fitted, "")!;
        Predictor predictor = PredictorBuilder.Build(
            catalog, machine, bench.Profile().OwnBaseline, "", default, AirLaw.SaeJ1349, PickRequest.StandardPointCount, [])!;
        DriveSide drive = predictor.Drive(set.Spring, set.Flyweight);
        DrivenSide driven = predictor.Driven(set.Driven);
        var request = new PredictionRequest { Machine = bench.Profile() };

        Assert.InRange(Allocated(() => predictor.Model.BalanceRpm(drive, driven, 4, ShiftDirection.Upshift)), 0, BalanceLimit);
        Assert.InRange(Allocated(() => predictor.Predict(set)), 1, CurveLimit);
        Assert.InRange(Allocated(() => SetPrediction.Predict(catalog, request)), 1, PredictionLimit);
    }

    [Fact]
    public void A_ranking_of_a_million_sets_stays_within_its_bytes()
    {
        var catalog = new LargeCatalog(1, new LargeCatalogSize(1e6, 50, 5, 3, 6, 10, 10));
        PickRequest request = catalog.Request(100);
        MachineModel machine = MachineModel.Create(request.Machine, [])!;
        SetUp fitted = new SetUpReader(catalog.Snapshot, request.Machine, [], []).Find(request.Machine.Machine.Fitted!, "fitted")!;
        CandidatePools pools = new PoolBuilder(catalog.Snapshot, machine, fitted, request, new FitReport()).Build([], default)!;
        SearchIndex index = SearchIndex.Build(pools, fitted, machine, request.PointCount, default);
        Predictor predictor = PredictorBuilder.Build(
            catalog.Snapshot, machine, request.Machine.OwnBaseline, "", request.Air, request.AirLaw, request.PointCount, [])!;
        WantedRpm wanted = ShiftGoals.Of(request.Target, predictor, fitted, [])!;

        Assert.InRange(Allocated(Rank), 1, RankingLimit);

        IReadOnlyList<RankedSet> Rank()
        {
            var planner = new PurchasePlanner(catalog.Snapshot, request, fitted);
            var search = new SetSearch(
                [new Condition(predictor, new Score(wanted, request))], request, planner, index,
                PriceFloors.Of(index, catalog.Snapshot, request, planner, fitted));
            IReadOnlyList<RankedSet> found = search.Run(default, default);
            Assert.NotEmpty(found);
            return found;
        }
    }

    private static long Allocated<T>(Func<T> run)
    {
        run();
        run();
        long before = GC.GetAllocatedBytesForCurrentThread();
        run();
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }
}
