using PartPicker.Mechanics;
using PartPicker.Parts;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>Bytes that a prediction allocates once all is compiled; the limits are a quarter above what was measured.</summary>
public sealed class AllocationTests
{
    private const long BalanceLimit = 430;
    private const long CurveLimit = 34_000;
    private const long PredictionLimit = 2_900_000;

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

    private static long Allocated<T>(Func<T> run)
    {
        run();
        run();
        long before = GC.GetAllocatedBytesForCurrentThread();
        run();
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }
}
