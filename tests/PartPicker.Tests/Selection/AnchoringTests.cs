using PartPicker.Parts;
using PartPicker.Selection;
using Xunit;
using static PartPicker.Tests.Selection.Bench;

namespace PartPicker.Tests.Selection;

/// <summary>What a measured run does to a prediction, and what is said of a run that cannot be.</summary>
public sealed class AnchoringTests
{
    private static readonly AirState High = new(1200, 280);

    [Fact]
    public void One_measured_point_is_reproduced_exactly()
    {
        double ratio = new Bench().Predicted().Curve[4].Ratio;
        Bench bench = new Bench() with { Run = set => new Baseline(set, 1930, [new(ratio, 7850)], null, High) };
        Prediction prediction = bench.Predicted(r => r with { Air = High });
        Assert.Equal(1930, prediction.EngagementRpm!.Value, 1e-9);
        Assert.Equal(7850, prediction.Curve[4].Upshift!.Rpm, 1e-6);
        RatioRpm residual = Assert.Single(prediction.Anchoring!.Residuals);
        Assert.Equal(ratio, residual.Ratio, 1e-9);
        Assert.Equal(0, residual.Rpm, 1e-6);
        Assert.Empty(prediction.Anchoring.Warnings);

        // The factors belong to the parts and their run: in other air the curve moves, the engagement does not.
        Prediction atSea = bench.Predicted();
        Assert.Equal(1930, atSea.EngagementRpm!.Value, 1e-9);
        Assert.NotEqual(7850, atSea.Curve[4].Upshift!.Rpm, 1.0);
        Assert.Equal(prediction.Anchoring.ThrustFactor, atSea.Anchoring!.ThrustFactor, 1e-12);
    }

    [Fact]
    public void Several_points_leave_residuals_which_are_reported_in_their_order()
    {
        double[] ratios = [.. new Bench().Predicted().Curve.Select(p => p.Ratio)];
        RatioRpm[] measured = [new(ratios[7], 8100), new(ratios[1], 7800), new(ratios[4], 7900)];
        Bench bench = new Bench() with { Run = set => new Baseline(set, 2000, measured, null, default) };
        Prediction prediction = bench.Predicted();
        IReadOnlyList<RatioRpm> residuals = prediction.Anchoring!.Residuals;
        Assert.Equal(measured.Select(m => m.Ratio), residuals.Select(r => r.Ratio), (a, b) => Math.Abs(a - b) < 1e-9);
        int[] places = [7, 1, 4];
        for (int j = 0; j < 3; j++)
            Assert.Equal(prediction.Curve[places[j]].Upshift!.Rpm - measured[j].Rpm, residuals[j].Rpm, 1e-6);
        Assert.True(residuals.Max(r => r.Rpm) > 5 && residuals.Min(r => r.Rpm) < -5);
    }

    [Fact]
    public void One_speed_held_through_the_whole_shift_counts_at_nine_ratios()
    {
        Prediction prediction = new Bench().Predicted();
        Assert.Equal(9, prediction.Anchoring!.Residuals.Count);
        Assert.Equal(prediction.Curve.Select(p => p.Ratio), prediction.Anchoring.Residuals.Select(r => r.Ratio));
        Assert.Equal(
            prediction.Curve.Select(p => p.Upshift!.Rpm - 8000), prediction.Anchoring.Residuals.Select(r => r.Rpm),
            (a, b) => Math.Abs(a - b) < 1e-6);
        Assert.Equal(2000, prediction.EngagementRpm!.Value, 1e-9);
    }

    // Unanchored the fitted parts engage at 2026 rpm: a factor of 0.7 stands for 2422 rpm, 1.4 for 1712.
    [Theory]
    [InlineData(2410, false)]
    [InlineData(2435, true)]
    [InlineData(1720, false)]
    [InlineData(1705, true)]
    public void A_factor_on_flyweights_outside_its_usual_range_is_warned_of(double engagementRpm, bool warned)
    {
        Bench bench = new Bench() with { Run = set => new Baseline(set, engagementRpm, [], 8000, default) };
        PredictionAnswer answer = bench.Predict().Answer!;
        string? warning = answer.Prediction.Anchoring!.Warnings
            .SingleOrDefault(w => w.StartsWith("The factor on flyweight thrust is", StringComparison.Ordinal));
        Assert.Equal(warned, warning is not null);
        Assert.Equal(warned, answer.Cautions.Any(c => c == new Caution("NOTICE", warning!)));
    }

    // A factor of 4 stands for 1013 rpm, 0.25 for 4052.
    [Theory]
    [InlineData(1020, false)]
    [InlineData(1005, true)]
    [InlineData(4040, false)]
    [InlineData(4065, true)]
    public void A_factor_far_out_makes_the_run_unusable(double engagementRpm, bool refused)
    {
        var bench = new Bench();
        IReadOnlyList<RequestProblem> problems = bench
            .Predict(r => r with { Baseline = new Baseline(bench.Fitted, engagementRpm, [], 8000, default) }).Problems;
        RequestProblem? problem = problems.FirstOrDefault(p => p.Sent?.EndsWith("on flyweight thrust", StringComparison.Ordinal) == true);

        Assert.Equal(refused, problem is not null);
        if (problem is not null)
        {
            Assert.Equal(("baseline", "baseline-unusable"), (problem.Place, problem.Code));
            Assert.Contains("from 0.25 to 4; this one asks for", problem.Expected);
        }
    }

    [Theory]
    [InlineData(6500, true)]
    [InlineData(8000, false)]
    public void A_factor_on_belt_thrust_outside_its_usual_range_is_warned_of(double heldRpm, bool warned)
    {
        Bench bench = new Bench() with { Run = set => new Baseline(set, 2026, [], heldRpm, default) };
        Assert.Equal(warned, bench.Predicted().Anchoring!.Warnings.Any(w => w.StartsWith("The factor on belt thrust", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_run_that_the_request_brings_goes_before_the_one_of_the_machine()
    {
        var bench = new Bench();
        var own = new Baseline(bench.Fitted, 1900, [], 7700, default);
        Assert.Equal(1900, bench.Predicted(r => r with { Baseline = own }).EngagementRpm!.Value, 1e-9);
        Assert.Equal(1900, bench.Answer(r => r with { Baseline = own }).Fitted.Prediction.EngagementRpm!.Value, 1e-9);
        Assert.Equal(2000, bench.Answer().Fitted.Prediction.EngagementRpm!.Value, 1e-9);
    }

    [Fact]
    public void A_run_with_other_parts_than_those_fitted_anchors_too()
    {
        var bench = new Bench();
        DriveSpring softer = bench.DriveSpring with { Id = "softer", Rate = UnitsNet.ForcePerLength.FromNewtonsPerMeter(17_000) };
        bench = bench with
        {
            Shelf = [softer],
            Run = set => new Baseline(set with { DriveSpring = "softer" }, 1850, [], 7900, default),
        };
        Assert.Equal(1850, bench.Predicted(r => r with { Parts = bench.Fitted with { DriveSpring = "softer" } }).EngagementRpm!.Value, 1e-9);
        Assert.Equal(1850 * Math.Sqrt(19.0 / 17), bench.Predicted().EngagementRpm!.Value, 1e-6);
    }

    public static TheoryData<string, string, Func<Baseline, Baseline>> Impossible => new()
    {
        { "shiftCurve/0/ratio", "baseline-unusable", b => Points(b, new RatioRpm(3.09, 7900)) },
        { "shiftCurve/1/ratio", "baseline-unusable", b => Points(b, new RatioRpm(2, 7900), new RatioRpm(0.5, 7900)) },
        { "shiftCurve/1/rpm", "baseline-unusable", b => Points(b, new RatioRpm(2, 7900), new RatioRpm(1, 9001)) },
        { "shiftCurve/0/rpm", "baseline-unusable", b => Points(b, new RatioRpm(2, 1999)) },
        { "shiftRpm", "baseline-unusable", b => b with { FlatShiftRpm = 9001 } },
        { "shiftRpm", "baseline-unusable", b => b with { FlatShiftRpm = 1999 } },
        { "engagementRpm", "baseline-unusable", b => b with { EngagementRpm = 9001 } },
        { "engagementRpm", "baseline-unusable", b => b with { EngagementRpm = 0 } },
        { "engagementRpm", "baseline-unusable", b => b with { EngagementRpm = double.NaN } },
        { "", "baseline-unusable", b => b with { FlatShiftRpm = null } },
        { "parts/driveSpring", "unknown-part", b => b with { Parts = b.Parts with { DriveSpring = "none" } } },
        { "parts/flyweight", "wrong-kind", b => b with { Parts = b.Parts with { Flyweight = "hx" } } },
        { "parts/hole", "unknown-hole", b => b with { Parts = b.Parts with { Hole = "9" } } },
        { "parts/stationMasses/tip", "station-mass", b => b with { Parts = b.Parts with { StationMasses = Tip(0.009) } } },
        { "parts/stationMasses/middle", "station-mass", b => b with { Parts = b.Parts with { StationMasses = Middle(0.009) } } },
        { "parts/helix", "part-unusable", b => b with { Parts = b.Parts with { Helix = "short" } } },

        // At the engagement speed the flyweights do not reach what the spring asks at full shift.
        { "", "baseline-unusable", b => Points(b, new RatioRpm(0.85, 2000)) },
    };

    [Theory]
    [MemberData(nameof(Impossible))]
    public void A_run_that_cannot_be_is_named_with_its_place_and_a_remedy(
        string place, string code, Func<Baseline, Baseline> change)
    {
        var bench = new Bench();
        bench = bench with
        {
            Shelf = [new Helix { Id = "short", AnglePoints = Curve((0, 0.7), (0.015, 0.7)) }],
        };
        Baseline run = change(new Baseline(bench.Fitted, 2000, [], 8000, default));
        Outcome<PickAnswer> picked = bench.Pick(r => r with { Baseline = run });
        Named(picked.Problems, $"baseline/{place}".TrimEnd('/'));
        Named(bench.Predict(r => r with { Baseline = run }).Problems, $"baseline/{place}".TrimEnd('/'));
        Named((bench with { Run = _ => run }).Pick().Problems, $"machine/baselines/0/{place}".TrimEnd('/'));
        Assert.Null(picked.Answer);

        void Named(IReadOnlyList<RequestProblem> problems, string where)
        {
            RequestProblem problem = Assert.Single(problems);
            Assert.Equal((where, code), (problem.Place, problem.Code));
            Assert.NotEmpty(problem.Expected);
        }
    }

    [Fact]
    public void A_reading_a_little_beyond_an_end_of_the_belt_belongs_to_that_end()
    {
        Prediction prediction = (new Bench() with { Run = set => new Baseline(set, 2000, [new(3.07, 7900)], null, default) }).Predicted();
        Assert.Equal(prediction.Curve[0].Ratio, prediction.Anchoring!.Residuals[0].Ratio, 1e-9);
        Assert.Equal(7900, prediction.Curve[0].Upshift!.Rpm, 1e-6);
    }

    [Fact]
    public void Without_any_run_a_pick_asks_for_one_and_a_prediction_says_that_it_is_not_anchored()
    {
        Bench bench = new Bench() with { Run = _ => null };
        RequestProblem problem = Assert.Single(bench.Pick().Problems);
        Assert.Equal(("baseline", "baseline-needed"), (problem.Place, problem.Code));
        Assert.Contains("engagementRpm and shiftRpm", problem.Expected);

        PredictionAnswer answer = bench.Predict().Answer!;
        Assert.Null(answer.Prediction.Anchoring);
        Assert.Contains(answer.Cautions, c => c.Signal == "NOTICE" && c.Sentence.StartsWith("This prediction is not tied", StringComparison.Ordinal));
        Assert.DoesNotContain(new Bench().Predict().Answer!.Cautions, c => c.Sentence.StartsWith("This prediction is not tied", StringComparison.Ordinal));
    }

    [Fact]
    public void A_profile_of_class_defaults_gets_no_pick_and_its_prediction_a_caution()
    {
        var bench = new Bench();
        bench = bench with
        {
            DriveClutch = bench.DriveClutch with { Origins = new Dictionary<string, Origin> { ["armCount"] = Origin.Measured, ["springLength"] = Origin.ClassDefault } },
            Belt = bench.Belt with { Origins = new Dictionary<string, Origin> { ["friction"] = Origin.ClassDefault } },
        };
        RequestProblem problem = Assert.Single(bench.Pick().Problems);
        Assert.Equal(("machine", "profile-not-measured", Id), (problem.Place, problem.Code, problem.Sent));
        Assert.Contains("belt/friction, drive-clutch/springLength. ", problem.Expected);
        Assert.Contains(bench.Predict().Answer!.Cautions, c =>
            c.Sentence.Contains("class defaults (belt/friction, drive-clutch/springLength)", StringComparison.Ordinal));
    }

    private static Baseline Points(Baseline run, params RatioRpm[] points) => run with { Shift = points, FlatShiftRpm = null };

    private static Dictionary<StationName, double> Tip(double mass) => new() { [StationName.Tip] = mass };

    private static Dictionary<StationName, double> Middle(double mass) => new() { [StationName.Middle] = mass };
}
