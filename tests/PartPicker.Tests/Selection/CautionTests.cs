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
            "Springs store energy as fitted: the drive spring about 4.8 J, the driven spring about 13.9 J.",
            cautions[0].Sentence, StringComparison.Ordinal);
        Assert.Contains("with 11 N·m (8.1 lbf·ft) in hole 2", cautions[1].Sentence);
        Assert.Equal(["WARNING", "WARNING", "WARNING", "CAUTION", "NOTICE"], cautions.Select(c => c.Signal));
    }

    [Fact]
    public void A_table_of_the_same_line_stores_the_same_though_it_ends_before_the_spring_is_free()
    {
        var bench = new Bench();
        Assert.StartsWith(
            "Springs store energy as fitted: the drive spring about 4.8 J, the driven spring about 13.9 J.",
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

    private static string First(Bench bench) => bench.Predict(r => r with { Anchor = false }).Answer!.Cautions[0].Sentence;

    private static CurvePoint[] Line(Func<double, double> y, params double[] xs) => [.. xs.Select(x => new CurvePoint(x, y(x)))];
}
