using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;
using Xunit;
using static PartPicker.Tests.Selection.Bench;

namespace PartPicker.Tests.Selection;

/// <summary>The cautions beside an answer, and the energies that they name.</summary>
public sealed class CautionTests
{
    // ½ 19 000 (0.0945 − 0.072)² = 4.809 J; ½ 9000 (0.100 − 0.060)² + ½ 9 (70°)² = 7.2 + 6.717 J; 9 · 70° = 11.0 N·m.
    [Fact]
    public void A_rated_spring_stores_half_of_its_rate_times_its_travel_squared()
    {
        IReadOnlyList<Caution> cautions = new Bench().Predict().Answer!.Cautions;
        Assert.StartsWith(
            "Springs store energy as fitted: the drive spring about 4.8 J (3.5 ft·lbf), the driven spring about 13.9 J (10.3 ft·lbf).",
            cautions[0].Sentence, StringComparison.Ordinal);
        Assert.Contains("with 11 N·m (8.1 lbf·ft) in hole 2", cautions[1].Sentence);
        Assert.Equal(["WARNING", "WARNING", "WARNING", "CAUTION", "NOTICE"], cautions.Select(c => c.Signal));
    }

    [Fact]
    public void A_table_of_the_same_line_stores_the_same_though_it_ends_before_the_spring_is_free()
    {
        var bench = new Bench();
        Assert.StartsWith(
            "Springs store energy as fitted: the drive spring about 4.8 J (3.5 ft·lbf), the driven spring about 13.9 J (10.3 ft·lbf).",
            First(bench with
            {
                DriveSpring = bench.DriveSpring with { LoadTable = Line(l => 19_000 * (0.0945 - l), 0.04, 0.06, 0.08) },
                DrivenSpring = bench.DrivenSpring with
                {
                    LoadTable = Line(l => 9000 * (0.1 - l), 0.03, 0.05, 0.065),
                    TorqueTable = Line(t => 9 * t, 0.9, 2, 4),
                },
            }),
            StringComparison.Ordinal);
    }

    // From 0.072 m on the table gives 400 N until it ends at 0.08 m, and then as far as the longest spring: 400 · 0.328 J.
    [Fact]
    public void A_table_that_ends_flat_stores_no_more_than_up_to_the_longest_spring()
    {
        var bench = new Bench();
        Assert.Contains("the drive spring about 131.2 J", First(bench with
        {
            DriveSpring = bench.DriveSpring with { LoadTable = Curve((0.04, 900), (0.07, 400), (0.08, 400)) },
        }), StringComparison.Ordinal);
    }

    // Zero at 40°, 4 N·m more for each 10°: ½ · 12 N·m · 30° = 3.14 J, besides the 7.2 J of compression.
    [Fact]
    public void A_line_through_two_torques_stores_nothing_below_zero()
    {
        var bench = new Bench();
        Assert.Contains("the driven spring about 10.3 J", First(bench with
        {
            DrivenSpring = bench.DrivenSpring with
            {
                FirstTwistDeg = 60,
                FirstTorque = Torque.FromNewtonMeters(8),
                SecondTwistDeg = 90,
                SecondTorque = Torque.FromNewtonMeters(20),
            },
        }), StringComparison.Ordinal);
    }

    [Fact]
    public void A_belt_that_slips_is_cautioned_with_where_it_slips_first()
    {
        var bench = new Bench();
        bench = bench with
        {
            Belt = bench.Belt with { Friction = 0.2 },
            DrivenSpring = bench.DrivenSpring with { Rate = ForcePerLength.FromNewtonsPerMillimeter(4), TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(4) },
            Helix = bench.Helix with { HelixDeg = 60, FinishDeg = 60 },
        };
        PredictionAnswer answer = bench.Predict(r => r with { Anchor = false }).Answer!;
        ShiftPoint[] slipping = [.. answer.Prediction.Curve.Where(p => p.Upshift is { Slips: true })];
        Assert.NotEmpty(slipping);
        Caution caution = Assert.Single(answer.Cautions, c => c.Sentence.StartsWith("By the model the belt slips", StringComparison.Ordinal));
        Assert.Equal("CAUTION", caution.Signal);
        Assert.Contains(
            FormattableString.Invariant($"at {slipping.Length} of 9 ratios, first at {slipping[0].Ratio:0.00}"), caution.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_that_does_not_fit_is_predicted_with_a_caution()
    {
        var bench = new Bench();
        bench = bench with { DriveClutch = bench.DriveClutch with { CupBore = Mm(57) } };
        Caution caution = Assert.Single(bench.Predict().Answer!.Cautions, c => c.Sentence.Contains("does not fit", StringComparison.Ordinal));
        Assert.Equal("CAUTION", caution.Signal);
        Assert.StartsWith(
            "The drive spring ds does not fit this machine by rule drive-spring-outside-diameter: outside diameter 57.989 mm",
            caution.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_check_that_cannot_be_made_and_may_do_harm_is_a_caution_of_the_pick_and_of_the_prediction()
    {
        var bench = new Bench();
        bench = bench with { DriveSpring = bench.DriveSpring with { Material = null, SolidLength = null } };
        foreach (IReadOnlyList<Caution> cautions in new[] { bench.Answer().Picks[0].Cautions, bench.Predict().Answer!.Cautions })
        {
            Assert.Contains(
                new Caution("CAUTION", "Not known of the drive spring ds: solid length; so rule drive-spring-solid-length could not be checked. "
                    + "Measure it or ask the supplier before you fit it."), cautions);
            Assert.Contains(
                new Caution("CAUTION", "Not known of the drive spring ds: material; so rule drive-spring-stress could not be checked. "
                    + "Measure it or ask the supplier before you fit it."), cautions);
        }

        bench = bench with { DriveSpring = bench.DriveSpring with { FitsClutches = [new ClutchFit("drive-clutch", null, null)] } };
        Assert.Contains(
            new Caution("NOTICE", "Not known of the drive spring ds: material; so rule drive-spring-stress stands on the word of its supplier alone."),
            bench.Answer().Picks[0].Cautions);
    }

    [Fact]
    public void Every_gap_that_may_do_harm_has_its_caution_and_none_that_may_not()
    {
        var bench = new Bench();
        bench = bench with
        {
            DriveClutch = bench.DriveClutch with { TipClearanceRadius = null },
            DriveSpring = bench.DriveSpring with { Ends = null },
            DrivenSpring = bench.DrivenSpring with { Material = null, TwistLimitDeg = null, ActiveCoils = null },
        };
        string[] rules =
        [
            .. bench.Answer().Picks[0].Cautions.Where(c => c.Sentence.StartsWith("Not known", StringComparison.Ordinal))
                .Select(c => c.Sentence.Split("rule ")[1].Split(' ')[0]),
        ];
        Assert.Equal(
            ["flyweight-tip-clearance", "driven-spring-twist-limit", "driven-spring-combined-stress", "driven-spring-solid-length"], rules);
        Assert.Contains(
            bench.Answer().Picks[0].Cautions,
            c => c.Sentence.EndsWith("Fill in tipClearanceRadius of the drive clutch drive-clutch in the catalog before you fit it.", StringComparison.Ordinal));
    }

    [Fact]
    public void The_gravest_cautions_come_first()
    {
        var bench = new Bench();
        bench = bench with
        {
            DriveClutch = bench.DriveClutch with { CupBore = Mm(57), SheaveHalfAngleDeg = 9 },
            Flyweight = bench.Flyweight with { TipHolding = MassHolding.Rivet },
            DriveSpring = bench.DriveSpring with { Material = null },
        };
        string[] signals = [.. bench.Predict(r => r with { Anchor = false }).Answer!.Cautions.Select(c => c.Signal)];
        Assert.Equal(signals.OrderBy(s => Array.IndexOf(["WARNING", "CAUTION", "NOTICE"], s)), signals);
        Assert.True(signals.Count(s => s == "CAUTION") > 2 && signals.Count(s => s == "NOTICE") > 2, string.Join(' ', signals));
    }

    [Fact]
    public void A_hole_that_twists_a_spring_too_far_is_named_as_what_does_not_suit()
    {
        // Full shift adds what the cam turns: the limit lies between what hole 3 and what hole 4 come to.
        var bench = new Bench();
        double turn = HelixRules.Cam(bench.Helix, bench.Model()).Turn(bench.Model().FullShift.OpeningTravel) * (180 / Math.PI);
        bench = bench with { DrivenSpring = bench.DrivenSpring with { TwistLimitDeg = 100 + turn } };
        string caution = Misfit(bench, "driven-spring-twist-limit", set => set with { Hole = "4" });
        Assert.StartsWith("Hole 4 does not suit the driven spring vs with the helix hx by rule", caution, StringComparison.Ordinal);
        Assert.EndsWith("It fits in hole 1, hole 2 and hole 3.", caution, StringComparison.Ordinal);

        bench = bench with { DrivenClutch = bench.DrivenClutch with { Holes = [], AdjusterFromDeg = 90, AdjusterToDeg = 110, AdjusterStepDeg = 10 } };
        string setting = Misfit(bench, "driven-spring-twist-limit", set => set with { Hole = "110" });
        Assert.StartsWith("Setting 110 does not suit the driven spring vs", setting, StringComparison.Ordinal);
        Assert.EndsWith("It fits in setting 90 and setting 100.", setting, StringComparison.Ordinal);
    }

    [Fact]
    public void A_helix_that_twists_a_spring_too_far_in_every_hole_is_named_and_else_the_spring()
    {
        var bench = new Bench();
        double turn = HelixRules.Cam(bench.Helix, bench.Model()).Turn(bench.Model().FullShift.OpeningTravel) * (180 / Math.PI);
        bench = bench with { DrivenSpring = bench.DrivenSpring with { TwistLimitDeg = 49 + turn } };
        string alone = Misfit(bench, "driven-spring-twist-limit", set => set with { Hole = "1" });
        Assert.StartsWith("The driven spring vs with the helix hx fits this machine in no hole by rule", alone, StringComparison.Ordinal);
        Assert.EndsWith("Do not fit it.", alone, StringComparison.Ordinal);

        bench = bench with { Shelf = [bench.Helix with { Id = "hx-steep", HelixDeg = 60, FinishDeg = 60 }] };
        string helix = Misfit(bench, "driven-spring-twist-limit", set => set with { Hole = "1" });
        Assert.StartsWith("The helix hx does not suit the driven spring vs in hole 1 by rule", helix, StringComparison.Ordinal);
        Assert.EndsWith("There it fits with helix hx-steep.", helix, StringComparison.Ordinal);
    }

    [Fact]
    public void Shims_that_leave_a_spring_no_room_are_named_and_a_shim_that_does_not_fit_is_no_spring()
    {
        // The stress at 72 − 24.5 mm is kept, and 18 mm of shims take it beyond.
        var bench = new Bench();
        var shim = new Shim { Id = "sh", Thickness = Mm(9), OutsideDiameter = Mm(60), InsideDiameter = Mm(40) };
        bench = bench with
        {
            DriveClutch = bench.DriveClutch with { ShimLimit = 2 },
            DriveSpring = bench.DriveSpring with { SolidLength = Mm(20) },
            Shelf = [shim],
        };
        string caution = Misfit(bench, "drive-spring-stress", set => set with { Shims = new FittedShims("sh", 2) });
        Assert.StartsWith("The shims under the drive spring ds leave it no room by rule", caution, StringComparison.Ordinal);

        bench = bench with { Shelf = [shim with { OutsideDiameter = Mm(63) }] };
        Assert.StartsWith(
            "The shim sh does not fit this machine by rule",
            Misfit(bench, "shim-outside-diameter", set => set with { Shims = new FittedShims("sh", 1) }), StringComparison.Ordinal);
    }

    [Fact]
    public void A_hole_in_which_the_model_has_no_answer_is_where_the_problem_is_put()
    {
        var bench = new Bench();
        bench = bench with { DrivenSpring = bench.DrivenSpring with { LegOffsetDeg = -60 } };
        RequestProblem problem = Assert.Single(bench.Predict(r => r with { Parts = bench.Fitted with { Hole = "1" } }).Problems);
        Assert.Equal(("parts/hole", "part-unusable", "1"), (problem.Place, problem.Code, problem.Sent));
        Assert.EndsWith("It can be computed in hole 2, hole 3, hole 4", problem.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void A_set_of_sliding_rollers_is_spoken_of_as_rollers()
    {
        var bench = new Bench();
        bench = bench with { DriveClutch = bench.DriveClutch with { Family = DriveFamily.SlidingRoller }, Flyweight = bench.Flyweight with { ArmLength = null } };
        Assert.Contains(bench.Predict().Answer!.Cautions, c => c.Sentence.Contains("All rollers of a set must carry equal mass", StringComparison.Ordinal));
        Assert.Contains(new Bench().Predict().Answer!.Cautions, c => c.Sentence.Contains("All arms of a set must carry equal mass", StringComparison.Ordinal));
    }

    private static string Misfit(Bench bench, string rule, Func<PartSet, PartSet> change) => Assert.Single(
        bench.Predict(r => r with { Anchor = false, Parts = change(bench.Fitted) }).Answer!.Cautions,
        c => c.Sentence.Contains($"by rule {rule}:", StringComparison.Ordinal)).Sentence;

    private static string First(Bench bench) => bench.Predict(r => r with { Anchor = false }).Answer!.Cautions[0].Sentence;

    private static CurvePoint[] Line(Func<double, double> y, params double[] xs) => [.. xs.Select(x => new CurvePoint(x, y(x)))];
}
