using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.TestKit;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>A machine and its measured run serve every request of a revision, and no answer tells that they were kept.</summary>
public sealed class PreparedMachinesTests
{
    private static readonly Bench Plain = new();

    [Fact]
    public void Requests_at_once_solve_a_run_once()
    {
        CatalogSnapshot catalog = Plain.Snapshot();
        MachineProfile profile = catalog.FindMachine(Plain.Profile().Machine.Id)!;
        using var start = new Barrier(8);
        Predictor[] got = new Predictor[8];
        Thread[] askers =
        [
            .. Enumerable.Range(0, 8).Select(i => new Thread(() =>
            {
                start.SignalAndWait();
                got[i] = Build(catalog, PreparedMachines.Of(catalog).Machine(profile, [])!, profile.OwnBaseline!);
            })),
        ];
        foreach (Thread asker in askers)
            asker.Start();
        foreach (Thread asker in askers)
            asker.Join();

        Assert.All(got, one => Assert.Same(got[0].Run, one.Run));
        Assert.All(got, one => Assert.Same(got[0].Anchoring, one.Anchoring));
        Assert.All(got, one => Assert.Same(got[0].Model.Positions, one.Model.Positions));
    }

    [Fact]
    public void A_run_is_the_same_by_what_it_says_in_any_air()
    {
        CatalogSnapshot catalog = Plain.Snapshot();
        MachineModel machine = PreparedMachines.Of(catalog).Machine(Plain.Profile(), [])!;
        Baseline run = Baseline();
        Predictor first = Build(catalog, machine, run);

        Assert.Same(first.Run, Build(catalog, machine, Baseline()).Run);
        Predictor high = Build(catalog, machine, run, new AirState(1800, 270));
        Assert.Same(first.Run, high.Run);
        Assert.Same(first.Model.Positions, high.Model.Positions);
        Assert.NotEqual(first.Model.PeakPower, high.Model.PeakPower, 1.0);

        Assert.NotSame(first.Run, Build(catalog, machine, run with { EngagementRpm = 2001 }).Run);
        Assert.NotSame(first.Run, Build(catalog, machine, run with { Shift = [new(2.5, 7900), new(1.2, 8001)] }).Run);
        Assert.NotSame(first.Run, Build(catalog, machine, run with { Air = new AirState(1, null) }).Run);
        Assert.NotSame(first.Run, Build(catalog, machine, run with { Air = new AirState(0, null) { RelativeHumidity = 0.5 } }).Run);
        Assert.NotSame(first.Run, Build(catalog, machine, run with { SolveFriction = true }).Run);
        Assert.NotSame(first.Run, Build(catalog, machine, run, law: AirLaw.Iso1585).Run);
        Assert.NotSame(first.Run, Build(catalog, machine, run with { Parts = Masses(0.012) }).Run);
        Assert.NotSame(first.Run, Build(Plain.Snapshot(), machine, run).Run);
        Assert.NotSame(first.Run, Build(catalog, machine.OnShims(0.001), run).Run);

        static Baseline Baseline() => new(Masses(0.010), 2000, [new(2.5, 7900), new(1.2, 8000)], null, default);

        static PartSet Masses(double tip) => Plain.Fitted with
        {
            StationMasses = new Dictionary<StationName, double> { [StationName.Tip] = tip, [StationName.Heel] = 0.004 },
        };
    }

    [Fact]
    public void The_runs_longest_unused_go()
    {
        CatalogSnapshot catalog = Plain.Snapshot();
        MachineModel machine = PreparedMachines.Of(catalog).Machine(Plain.Profile(), [])!;
        MeasuredRun first = Solved(0);
        MeasuredRun second = Solved(1);
        for (int i = 2; i < PreparedMachines.MaxKept; i++)
            Solved(i);

        Assert.Same(first, Solved(0));
        Solved(PreparedMachines.MaxKept);
        Assert.Same(first, Solved(0));
        Assert.NotSame(second, Solved(1));

        MeasuredRun Solved(int i) => Build(catalog, machine, new Baseline(Plain.Fitted, 2000 + i, [], 8000, default)).Run!;
    }

    [Fact]
    public void A_refused_run_says_why_each_time_and_where_it_stands()
    {
        CatalogSnapshot catalog = Plain.Snapshot();
        var good = new Baseline(Plain.Fitted, 2000, [], 8000, default);
        var bad = new Baseline(Plain.Fitted with { Helix = "nowhere" }, 2000, [], 8000, default);
        MachineProfile own = Plain.Profile();
        MachineProfile spoilt = own with { Machine = own.Machine with { Baselines = [bad] } };
        for (int i = 0; i < 2; i++)
        {
            Assert.Equal("baseline/parts/helix", Where(Plain.Request() with { Machine = spoilt, Baseline = bad }));
            Assert.Equal("machine/baselines/0/parts/helix", Where(Plain.Request() with { Machine = spoilt }));
            Assert.Empty(PartSelection.Pick(catalog, Plain.Request() with { Machine = spoilt, Baseline = good }).Problems);
        }

        string Where(PickRequest request) => Assert.Single(PartSelection.Pick(catalog, request).Problems).Place;
    }

    [Fact]
    public void A_replaced_number_in_a_run_is_told_each_time_at_its_place()
    {
        DriveSpring old = Plain.DriveSpring with { Id = "ds-old", SupersededBy = "ds" };
        Bench bench = Plain with { Shelf = [old], Run = set => new Baseline(set with { DriveSpring = "ds-old" }, 2000, [], 8000, default) };
        CatalogSnapshot catalog = bench.Snapshot();
        for (int i = 0; i < 2; i++)
        {
            Assert.Equal("machine/baselines/0/parts/driveSpring", Place(bench.Request()));
            Assert.Equal("baseline/parts/driveSpring", Place(bench.Request() with { Baseline = bench.Run(bench.Fitted) }));
        }

        string Place(PickRequest request) => Assert.Single(PartSelection.Pick(catalog, request).Answer!.Superseded).Place;
    }

    [Fact]
    public void Answers_are_the_same_from_what_is_kept_as_from_what_is_new()
    {
        int answered = 0;
        for (int seed = 1; seed <= 40; seed++)
        {
            var warm = new RandomCatalog(seed);
            AirState[] airs = [warm.Request.Air, new(1500, 280), warm.Request.Air, new(1500, 280)];
            for (int i = 0; i < airs.Length; i++)
            {
                // The second half is asked of what the first half left.
                PickRequest request = warm.Request with { Air = airs[i], SlipMargin = 0.9, PointCount = 5 + i % 2 };
                Outcome<PickAnswer> kept = PartSelection.Pick(warm.Snapshot, request);
                Outcome<PickAnswer> anew = PartSelection.Pick(new RandomCatalog(seed).Snapshot, request);
                Assert.Equal(anew.Problems, kept.Problems);
                Assert.Equal(Said(anew), Said(kept));
                answered += kept.Answer is null ? 0 : 1;
            }
        }

        Assert.True(answered > 80, $"only {answered} answers");

        static IEnumerable<double> Said(Outcome<PickAnswer> outcome) => outcome.Answer is not { } answer ? [] :
        [
            answer.Work.Predictions,
            .. answer.Picks.SelectMany(pick => (double[])
            [
                pick.Miss, pick.Prediction.EngagementRpm ?? 0, pick.Prediction.TorqueFactor,
                .. pick.Prediction.Curve.Select(p => p.Upshift?.Rpm ?? 0), .. pick.Prediction.Curve.Select(p => p.Upshift?.SlipMargin ?? 0),
            ]),
        ];
    }

    private static Predictor Build(
        CatalogSnapshot catalog, MachineModel machine, Baseline run, AirState air = default, AirLaw law = AirLaw.SaeJ1349)
    {
        var problems = new List<RequestProblem>();
        Predictor? predictor = PredictorBuilder.Build(catalog, machine, run, "baseline", air, law, 9, problems);
        Assert.Empty(problems);
        return predictor!;
    }
}
