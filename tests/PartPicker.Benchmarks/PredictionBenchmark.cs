using System.Diagnostics;
using PartPicker.Mechanics;
using PartPicker.Selection;
using PartPicker.TestKit;

namespace PartPicker.Benchmarks;

/// <summary>What a prediction is made of, each against the plainest way to the same numbers.</summary>
/// <remarks>
/// Plain are <see cref="PlainCurve"/> for root and curve, and for the bands a model that keeps nothing from one deviation of
/// an input to the next. Medians, after a warm-up; one thread, on a machine that is anchored to its run.
/// </remarks>
internal static class PredictionBenchmark
{
    private const int Turns = 30;
    private static readonly TimeSpan WarmUpTime = TimeSpan.FromSeconds(1);

    public static void Run(TextWriter to)
    {
        var catalog = new LargeCatalog(1, SearchBenchmark.Standard[0]);
        PickRequest request = catalog.Request(0);
        MachineModel machine = MachineModel.Create(request.Machine, [])!;
        SetUp set = new SetUpReader(catalog.Snapshot, request.Machine, []).Find(request.Machine.Machine.Fitted!, "fitted")!;
        Predictor predictor = PredictorBuilder.Build(
            catalog.Snapshot, machine, request.Machine.OwnBaseline, "", request.Air, request.AirLaw, request.PointCount, [])!;
        DriveSide drive = predictor.Drive(set.Spring, set.Flyweight);
        DrivenSide driven = predictor.Driven(set.Driven);
        var plain = new PlainCurve(
            machine.Drivetrain, predictor.Model.Positions, predictor.TorqueFactor, predictor.Model.Anchor.Thrust);
        int middle = predictor.Model.Positions.Count / 2;
        var prediction = new PredictionRequest { Machine = request.Machine };

        to.WriteLine("| what | plain | plain µs | µs | plain bytes allocated | bytes allocated | times faster |");
        to.WriteLine("|---|---|---|---|---|---|---|");
        Compare(
            to, "one balance, both sides at hand", "every 10 rpm solved, then halving", 100,
            () => plain.Rpm(drive, driven, middle, ShiftDirection.Upshift),
            () => predictor.Model.BalanceRpm(drive, driven, middle, ShiftDirection.Upshift));
        Compare(
            to, "shift curve with loads, up and back", "the same, rpm only", 5,
            () => plain.Of(predictor.Drive(set.Spring, set.Flyweight), predictor.Driven(set.Driven)),
            () => predictor.Predict(set));
        Compare(
            to, "bands of one set", "all rebuilt for every deviation", 1,
            () => Rebuilt(predictor, set), () => Response.Of(new InputModel(predictor), set).HalfWidths);
        Measured whole = Measure(() => SetPrediction.Predict(catalog.Snapshot, prediction), 1);
        to.WriteLine(FormattableString.Invariant(
            $"| prediction, with anchor and sensitivities | - | - | {whole.Microseconds:0} | - | {whole.Bytes} | - |"));
    }

    /// <summary>The numbers behind the bands of a set, of a new model each.</summary>
    private static double[][] Rebuilt(Predictor predictor, SetUp set)
    {
        IReadOnlyList<UncertainInput> inputs = Inputs.Of(
            set, predictor.Run?.Set, frictionTold: false, InputTolerances.Torque(predictor.Machine.Profile.Engine),
            misfit: predictor.Run is not null);
        double[] shares = [-1, -1 / Math.Sqrt(3), 1 / Math.Sqrt(3), 1];
        return
        [
            new InputModel(predictor).Numbers(set, Deviation.None, Deviation.None),
            .. from input in inputs
               from share in shares
               select new InputModel(predictor).Numbers(set, input.InSet(share), input.InOther(share)),
        ];
    }

    private static void Compare<T1, T2>(TextWriter to, string what, string how, int repeats, Func<T1> plain, Func<T2> ours)
    {
        (Measured slow, Measured fast) = (Measure(plain, repeats), Measure(ours, repeats));
        to.WriteLine(FormattableString.Invariant(
            $"| {what} | {how} | {slow.Microseconds:0.0} | {fast.Microseconds:0.0} | {slow.Bytes} | {fast.Bytes} | {slow.Microseconds / fast.Microseconds:0.0} |"));
    }

    private static Measured Measure<T>(Func<T> run, int repeats)
    {
        long started = Stopwatch.GetTimestamp();
        while (Stopwatch.GetElapsedTime(started) < WarmUpTime)
            run();
        var times = new List<double>();
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int turn = 0; turn < Turns; turn++)
        {
            long start = Stopwatch.GetTimestamp();
            for (int i = 0; i < repeats; i++)
                run();
            times.Add(Stopwatch.GetElapsedTime(start).TotalMicroseconds / repeats);
        }

        long bytes = (GC.GetAllocatedBytesForCurrentThread() - before) / (Turns * repeats);
        return new Measured(times.Order().ElementAt(Turns / 2), bytes);
    }

    private readonly record struct Measured(double Microseconds, long Bytes);
}
