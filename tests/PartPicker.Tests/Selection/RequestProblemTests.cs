using PartPicker.Parts;
using PartPicker.Selection;
using Xunit;
using static PartPicker.Tests.Selection.Bench;

namespace PartPicker.Tests.Selection;

/// <summary>What cannot be answered is said with its place, its code and a remedy.</summary>
public sealed class RequestProblemTests
{
    [Fact]
    public void A_kept_part_that_does_not_fit_is_a_problem_and_an_open_slot_is_not()
    {
        var bench = new Bench();
        bench = bench with
        {
            DriveClutch = bench.DriveClutch with { CupBore = Mm(57) },
            Helix = bench.Helix with { CamRadius = Mm(40) },
        };
        Outcome<PickAnswer> outcome = bench.Pick(r => r with { Keep = new HashSet<Slot> { Slot.DriveSpring, Slot.Helix } });
        Assert.Null(outcome.Answer);
        Assert.Equal(["driveSpring: ds", "helix: hx"], outcome.Problems.Select(p => p.Sent));
        Assert.All(outcome.Problems, p => Assert.Equal(("keep", "kept-part-does-not-fit"), (p.Place, p.Code)));
        Assert.Contains("by rule drive-spring-outside-diameter outside diameter 57.989 mm", outcome.Problems[0].Expected);
        Assert.NotNull(bench.Pick().Answer);
    }

    [Fact]
    public void A_part_is_not_kept_and_excluded_at_once()
    {
        var bench = new Bench();
        bench = bench with { Shelf = [bench.Helix with { Id = "hx-2" }] };
        Assert.NotNull(bench.Pick(Helices("hx-2", Slot.Helix)).Answer);
        Assert.NotNull(bench.Pick(Helices("hx", Slot.Hole)).Answer);
        RequestProblem problem = Assert.Single(bench.Pick(Helices("hx", Slot.Helix)).Problems);
        Assert.Equal(("exclude", "contradiction", "hx"), (problem.Place, problem.Code, problem.Sent));
        Assert.Contains("helix in keep or hx in exclude", problem.Expected);

        static Func<PickRequest, PickRequest> Helices(string excluded, Slot kept) =>
            r => r with { Exclude = new HashSet<string> { excluded }, Keep = new HashSet<Slot> { kept } };
    }

    [Fact]
    public void Kept_shims_are_not_excluded()
    {
        var bench = new Bench();
        bench = bench with
        {
            DriveClutch = bench.DriveClutch with { ShimLimit = 2 },
            Shelf = [new Shim { Id = "sh", Thickness = Mm(1), OutsideDiameter = Mm(58), InsideDiameter = Mm(46) }],
        };
        RequestProblem problem = Assert.Single(bench.Pick(r => r with
        {
            Fitted = bench.Fitted with { Shims = new FittedShims("sh", 1) },
            Exclude = new HashSet<string> { "sh" },
            Keep = new HashSet<Slot> { Slot.DriveSpring },
        }).Problems);
        Assert.Equal(("exclude", "contradiction", "sh"), (problem.Place, problem.Code, problem.Sent));
    }

    [Fact]
    public void A_kept_part_is_judged_however_many_others_are_refused()
    {
        var bench = new Bench();
        bench = bench with
        {
            Helix = bench.Helix with { CamRadius = Mm(40) },
            Shelf = [.. Enumerable.Range(0, 501).Select(i => bench.DriveSpring with { Id = $"wide-{i}", OutsideDiameter = Mm(70) })],
        };
        RequestProblem problem = Assert.Single(bench.Pick(r => r with { Keep = new HashSet<Slot> { Slot.Helix } }).Problems);
        Assert.Equal("helix: hx", problem.Sent);
    }

    [Fact]
    public void A_driven_side_that_is_kept_whole_is_judged_together()
    {
        var bench = new Bench();
        bench = bench with { DrivenClutch = bench.DrivenClutch with { HubDiameter = Mm(49) } };
        RequestProblem problem = Assert.Single(
            bench.Pick(r => r with { Keep = new HashSet<Slot> { Slot.DrivenSpring, Slot.Hole, Slot.Helix } }).Problems);
        Assert.Equal("drivenSpring: vs", problem.Sent);
        Assert.Contains("driven-spring-wound-diameter", problem.Expected);
    }

    [Theory]
    [InlineData("belt too short", 700, 270, 72, 60)]
    [InlineData("belt too long", 1700, 270, 72, 60)]
    [InlineData("drive spring shorter than its travel", 992, 270, 24, 60)]
    [InlineData("driven spring shorter than its travel", 992, 270, 72, 15)]
    public void A_machine_whose_pieces_do_not_go_together_is_named(
        string what, double beltMm, double centreMm, double driveSpringMm, double drivenSpringMm)
    {
        var bench = new Bench();
        bench = bench with
        {
            CentreDistance = Mm(centreMm),
            Belt = bench.Belt with { PitchLength = Mm(beltMm) },
            DriveClutch = bench.DriveClutch with { SpringLength = Mm(driveSpringMm) },
            DrivenClutch = bench.DrivenClutch with { SpringLength = Mm(drivenSpringMm) },
        };
        foreach (IReadOnlyList<RequestProblem> problems in new[] { bench.Pick().Problems, bench.Predict().Problems })
        {
            RequestProblem problem = Assert.Single(problems);
            Assert.Equal(("machine", "machine-impossible", Id), (problem.Place, problem.Code, problem.Sent));
            Assert.Contains(what.Split(' ')[0], problem.Expected, StringComparison.OrdinalIgnoreCase);
            Assert.Matches(@"\d mm \([\d.]+ in\)", problem.Expected);
            Assert.DoesNotMatch(@"\d m\b", problem.Expected);
        }
    }

    [Fact]
    public void Too_many_masses_are_counted_before_they_are_combined()
    {
        var bench = new Bench();
        double[] masses = [.. Enumerable.Range(0, 200).Select(i => i * 1e-4)];
        var empty = new Dictionary<StationName, double>();
        bench = bench with
        {
            Flyweight = bench.Flyweight with
            {
                HeelMasses = masses,
                TipMasses = masses,
                MiddleMasses = masses,
                MiddleCurve = bench.Flyweight.HeelCurve,
            },
            Run = set => new Baseline(set with { StationMasses = empty }, 2000, [], 8000, default),
        };
        PickRequest request = bench.Request() with { Fitted = bench.Fitted with { StationMasses = empty } };
        RequestProblem problem = Assert.Single(PartSelection.Pick(bench.Snapshot(), request).Problems);
        Assert.Equal(("keep", "too-many-combinations", "8000000 choices of the flyweight"), (problem.Place, problem.Code, problem.Sent));
        Assert.Contains("at most 200000 choices", problem.Expected);
        Assert.NotNull(PartSelection.Pick(
            bench.Snapshot(), request with { Keep = new HashSet<Slot> { Slot.Flyweight } }).Answer);
    }

    [Fact]
    public void Too_many_driven_choices_are_refused_before_one_is_judged()
    {
        var bench = new Bench();
        bench = bench with
        {
            DrivenClutch = bench.DrivenClutch with
            {
                Holes = [.. Enumerable.Range(1, 1000).Select(i => new SpringHole($"{i}", 40 + i * 0.01))],
            },
            Shelf =
            [
                .. Enumerable.Range(0, 70).Select(i => bench.DrivenSpring with { Id = $"vs-{i}" }),
                .. Enumerable.Range(0, 70).Select(i => bench.Helix with { Id = $"hx-{i}" }),
            ],
        };
        RequestProblem problem = Assert.Single(bench.Pick().Problems);
        Assert.Equal(("too-many-combinations", "5041000 choices of the driven side"), (problem.Code, problem.Sent));
        Assert.NotNull(bench.Pick(r => r with { Keep = new HashSet<Slot> { Slot.Helix } }).Answer);
    }

    [Fact]
    public void Without_a_fitted_set_one_is_asked_for()
    {
        MachineProfile profile = new Bench().Profile();
        profile = profile with { Machine = profile.Machine with { Fitted = null } };
        RequestProblem picked = Assert.Single(new Bench().Pick(r => r with { Machine = profile }).Problems);
        Assert.Equal(("fitted", "fitted-set-needed"), (picked.Place, picked.Code));
        RequestProblem predicted = Assert.Single(new Bench().Predict(r => r with { Machine = profile }).Problems);
        Assert.Equal(("parts", "fitted-set-needed"), (predicted.Place, predicted.Code));
        Assert.NotNull(new Bench().Pick(r => r with { Machine = profile, Fitted = new Bench().Fitted }).Answer);
    }

    [Fact]
    public void All_that_is_wrong_with_a_set_is_said_at_once()
    {
        var set = new PartSet("none", "hx", new Dictionary<StationName, double>(), "vs", "9", "ds");
        (string, string)[] expected =
        [
            ("driveSpring", "unknown-part"), ("flyweight", "wrong-kind"), ("hole", "unknown-hole"), ("helix", "wrong-kind"),
        ];
        IReadOnlyList<RequestProblem> picked = new Bench().Pick(r => r with { Fitted = set }).Problems;
        Assert.Equal(expected, picked.Select(p => (p.Place["fitted/".Length..], p.Code)));
        IReadOnlyList<RequestProblem> predicted = new Bench().Predict(r => r with { Parts = set }).Problems;
        Assert.Equal(expected, predicted.Select(p => (p.Place["parts/".Length..], p.Code)));
        RequestProblem hole = picked[2];
        Assert.Equal(("9", "one of the holes or settings of this machine: 1, 2, 3, 4"), (hole.Sent, hole.Expected));
    }

    [Theory]
    [InlineData(0.010, 0.010, null)]
    [InlineData(0.0100005, 0.010, null)]
    [InlineData(0.0, 0.0, null)]
    [InlineData(0.011, null, "station-mass")]
    public void A_station_takes_one_of_its_masses_or_none(double kilograms, double? taken, string? code)
    {
        var bench = new Bench();
        Outcome<PredictionAnswer> outcome = bench.Predict(r => r with
        {
            Parts = bench.Fitted with { StationMasses = new Dictionary<StationName, double> { [StationName.Tip] = kilograms } },
        });
        Assert.Equal(code, outcome.Problems.SingleOrDefault()?.Code);
        Assert.Equal(taken, outcome.Answer?.Parts.StationMasses[StationName.Tip]);
        if (code is not null)
        {
            Assert.Equal("parts/stationMasses/tip", outcome.Problems[0].Place);
            Assert.Equal(("11 g", "one of 8 g, 10 g, 12 g"), (outcome.Problems[0].Sent, outcome.Problems[0].Expected));
        }
    }

    [Fact]
    public void A_fitted_part_that_the_model_cannot_compute_is_named_with_the_reason()
    {
        var bench = new Bench();
        bench = bench with { DriveSpring = bench.DriveSpring with { FreeLength = Mm(70) } };
        Outcome<PickAnswer> outcome = bench.Pick();
        RequestProblem fitted = outcome.Problems.Single(p => p.Place == "machine/fitted/driveSpring");
        Assert.Equal(("part-unusable", "ds"), (fitted.Code, fitted.Sent));
        Assert.Contains("free length 70.0 mm", fitted.Expected);
        Assert.Contains("in the fitted set of the machine's profile: correct the part or the profile", fitted.Expected);
        RequestProblem sent = bench.Pick(r => r with { Fitted = bench.Fitted }).Problems.Single(p => p.Place == "fitted/driveSpring");
        Assert.EndsWith("It stands in fitted: name another part there, or correct its numbers in the catalog", sent.Expected);

        // The run was made with the same part, and is told so.
        Assert.Contains(outcome.Problems, p => p.Place == "machine/baselines/0/parts/driveSpring");
    }
}
