using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;
using Xunit;
using Xunit.Abstractions;
using static PartPicker.Tests.Selection.Bench;

namespace PartPicker.Tests.Selection;

/// <summary>What a prediction says beyond the curve, and what the newer fields of a machine do to it.</summary>
public sealed class ShiftAnswerTests(ITestOutputHelper output)
{
    // 26 104 bytes were counted, for nine points of two balances with some 18 quantities each; a fifth is left for runtimes.
    private const long BytesOfOnePrediction = 31_500;

    [Fact]
    public void Lock_up_lies_between_engagement_and_the_low_gear_upshift()
    {
        Prediction prediction = new Bench().Predicted();
        Assert.InRange(prediction.LockUpRpm!.Value, prediction.EngagementRpm!.Value, prediction.Curve[0].Upshift!.Rpm);
    }

    [Fact]
    public void No_lock_up_is_told_where_the_belt_does_not_start_the_machine()
    {
        var bench = new Bench();
        bench = bench with
        {
            DriveClutch = bench.DriveClutch with { StartDevice = StartDevice.CentrifugalClutch },
            Run = set => new Baseline(set, null, [], 8000, default),
        };
        Assert.Null(bench.Predicted().LockUpRpm);
    }

    [Fact]
    public void Hysteresis_is_the_gap_between_the_curves_and_missing_where_one_is() =>
        Assert.All(new Bench().Predicted().Curve, p =>
            Assert.Equal(p.Upshift!.Rpm - p.Backshift!.Rpm, p.HysteresisRpm!.Value, 1e-9));

    // By hand at the low-gear point: q η R₂ 2μ/(cos β r_c tan α) with the bench's own numbers.
    [Fact]
    public void The_helix_hold_is_that_by_hand()
    {
        ShiftPoint low = new Bench().Predicted().Curve[0];
        double hold = 0.5 * 0.95 * low.DrivenRadius.Meters * 2 * 0.36
            / (Math.Cos(13 * Math.PI / 180) * 0.042 * Math.Tan(43 * Math.PI / 180));
        Assert.Equal(hold, low.HelixHold, 1e-12);
        Assert.Equal(hold >= 1, low.HelixAloneHolds);
    }

    [Fact]
    public void A_reverse_angle_tells_its_clamp_beside_that_of_driving()
    {
        var bench = new Bench();
        Assert.Null(bench.Predicted().Reverse);
        ReverseClamp reverse = (bench with { Helix = bench.Helix with { ReverseDeg = 30 } }).Predicted().Reverse!;
        Assert.Equal(Math.Tan(43 * Math.PI / 180) * Math.Sqrt(3), reverse.ClampRatio, 1e-12);
        Assert.Equal(reverse.ClampRatio, reverse.Clamp!.Value / reverse.DrivingClamp!.Value, 1e-12);

        // The driving cam force is what the clamp holds beyond its spring, but for the friction of the cam.
        ShiftPoint low = bench.Predicted().Curve[0];
        double cam = 0.5 * 0.95 * low.Ratio * low.Upshift!.EngineTorque.NewtonMeters / (0.042 * Math.Tan(43 * Math.PI / 180));
        Assert.Equal(cam, reverse.DrivingClamp!.Value.Newtons, 1e-6);
    }

    [Fact]
    public void Two_peaks_make_an_engine_whose_peak_power_is_that_of_the_brochure()
    {
        var bench = new Bench();
        bench = bench with
        {
            Engine = bench.Engine with
            {
                TorqueCurve = [],
                PeakTorqueRpm = 6000,
                PeakTorque = Torque.FromNewtonMeters(82),
                PeakPowerRpm = 8000,
                PeakPower = Power.FromKilowatts(62),
            },
        };
        Prediction prediction = bench.Predicted();
        Assert.Equal(8000, prediction.PeakPowerRpm, 1e-3);
        Assert.Equal(62, (double)prediction.PeakPower.Kilowatts, 1e-9);
    }

    [Theory]
    [InlineData(1500, 1)]
    [InlineData(3000, 0.71344 / 0.86580)] // 1/cf by SAE J1349 at 3000 m and at 1500 m.
    public void A_boosted_engine_keeps_its_torque_up_to_its_altitude(double altitude, double factor)
    {
        var bench = new Bench();
        bench = bench with { Engine = bench.Engine with { BoostedTo = Length.FromMeters(1500) } };
        Assert.Equal(factor, bench.Predicted(r => r with { Air = new AirState(altitude, null) }).TorqueFactor, 2e-4);
    }

    [Fact]
    public void Friction_by_radius_takes_the_place_of_the_one_friction_on_each_clutch()
    {
        var bench = new Bench();
        Prediction one = bench.Predicted(r => r with { Anchor = false });
        Prediction level = With((20, 0.36), (150, 0.36)).Predicted(r => r with { Anchor = false });
        Assert.Equal(one.Curve.Select(p => p.Upshift!.Rpm), level.Curve.Select(p => p.Upshift!.Rpm), (a, b) => Math.Abs(a - b) < 1e-6);

        // Less grip on small radii: in low gear the drive clutch is small, so its arc grows against the driven one.
        Balance low = With((20, 0.26), (150, 0.46)).Predicted(r => r with { Anchor = false }).Curve[0].Upshift!;
        Assert.True(low.DriveActiveArc > low.ActiveArc);

        Bench With(params (double Mm, double Friction)[] points) => bench with
        {
            Belt = bench.Belt with { FrictionByRadius = [.. points.Select(p => new CurvePoint(p.Mm / 1000, p.Friction))] },
        };
    }

    [Fact]
    public void Friction_by_radius_must_cover_every_radius_of_the_belt()
    {
        var bench = new Bench();
        bench = bench with { Belt = bench.Belt with { FrictionByRadius = Curve((0.05, 0.3), (0.2, 0.4)) } };
        RequestProblem problem = Assert.Single(bench.Predict().Problems);
        Assert.Equal("machine-impossible", problem.Code);
        Assert.Contains("friction by radius is known from 50", problem.Expected);
    }

    [Fact]
    public void A_friction_solved_from_a_run_is_said_and_leaves_smaller_residuals()
    {
        var bench = new Bench();
        double[] ratios = [.. bench.Predicted().Curve.Select(p => p.Ratio)];
        Bench other = bench with { Belt = bench.Belt with { Friction = 0.33 } };
        Prediction truth = other.Predicted(r => r with { Anchor = false });
        var run = new Baseline(
            bench.Fitted, truth.EngagementRpm,
            [new(ratios[0], truth.Curve[0].Upshift!.Rpm), new(ratios[4], truth.Curve[4].Upshift!.Rpm), new(ratios[8], truth.Curve[8].Upshift!.Rpm)],
            null, default);

        Anchoring factor = bench.Predicted(r => r with { Baseline = run }).Anchoring!;
        Anchoring solved = bench.Predicted(r => r with { Baseline = run with { SolveFriction = true } }).Anchoring!;
        Assert.Null(factor.Friction);
        Assert.Equal(0.33, solved.Friction!.Value, 1e-4);
        Assert.Equal(1, solved.ThrustFactor, 1e-3);
        Assert.All(solved.Residuals, r => Assert.Equal(0, r.Rpm, 0.01));
        Assert.Contains(factor.Residuals, r => Math.Abs(r.Rpm) > 10);
    }

    [Fact]
    public void A_friction_is_not_solved_from_points_close_together_nor_for_a_measured_one()
    {
        var bench = new Bench();
        var near = new Baseline(bench.Fitted, 2000, [new(2.0, 7900), new(1.8, 7950)], null, default) { SolveFriction = true };
        RequestProblem problem = Assert.Single(bench.Predict(r => r with { Baseline = near }).Problems);
        Assert.Equal(("baseline/solveFriction", "baseline-unusable"), (problem.Place, problem.Code));
        Assert.Contains("1.11 times", problem.Expected);

        bench = bench with { Belt = bench.Belt with { FrictionByRadius = Curve((0.02, 0.3), (0.2, 0.4)) } };
        Assert.Contains("frictionByRadius", Assert.Single(
            bench.Predict(r => r with { Baseline = near with { Shift = [], FlatShiftRpm = 8000 } }).Problems).Expected);
    }

    [Fact]
    public void A_friction_beyond_what_belts_have_is_refused()
    {
        var bench = new Bench();
        var steep = new Baseline(bench.Fitted, 2000, [new(2.9, 8990), new(0.9, 5200)], null, default) { SolveFriction = true };
        RequestProblem problem = Assert.Single(bench.Predict(r => r with { Baseline = steep }).Problems);
        Assert.Equal(("baseline/solveFriction", "baseline-unusable"), (problem.Place, problem.Code));
    }

    // With a soft spring and a flat helix the belt of friction 0.2 slips in low gear; what it read there fits any friction.
    [Fact]
    public void A_run_in_which_the_belt_slips_tells_no_friction()
    {
        var bench = new Bench();
        bench = bench with
        {
            DrivenSpring = bench.DrivenSpring with { Rate = ForcePerLength.FromNewtonsPerMillimeter(4), TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(4) },
            Helix = bench.Helix with { HelixDeg = 60, FinishDeg = 60 },
        };
        Prediction truth = (bench with { Belt = bench.Belt with { Friction = 0.2 } }).Predicted(r => r with { Anchor = false });
        ShiftPoint[] read = [truth.Curve[0], truth.Curve[4], truth.Curve[8]];
        Assert.Contains(read, p => p.Upshift!.Slips);
        var run = new Baseline(bench.Fitted, truth.EngagementRpm, [.. read.Select(p => new RatioRpm(p.Ratio, p.Upshift!.Rpm))], null, default);

        RequestProblem problem = Assert.Single(bench.Predict(r => r with { Baseline = run with { SolveFriction = true } }).Problems);
        Assert.Equal(("baseline/solveFriction", "baseline-unusable"), (problem.Place, problem.Code));
        Assert.Contains("the belt slips at ratio ", problem.Expected, StringComparison.Ordinal);
        Assert.EndsWith("or leave solveFriction out", problem.Expected, StringComparison.Ordinal);
        Assert.NotNull(bench.Predict(r => r with { Baseline = run }).Answer);
    }

    [Fact]
    public void A_prediction_allocates_little()
    {
        var bench = new Bench();
        MachineModel machine = bench.Model();
        SetUp set = new SetUpReader(bench.Snapshot(), bench.Profile(), []).Find(bench.Fitted, "fitted")!;
        Predictor predictor = PredictorBuilder.Build(
            bench.Snapshot(), machine, null, "", default, AirLaw.SaeJ1349, 9, [])!;
        for (int warm = 0; warm < 3; warm++)
            predictor.Predict(set);

        long before = GC.GetAllocatedBytesForCurrentThread();
        predictor.Predict(set);
        long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        output.WriteLine($"{bytes} bytes");
        Assert.InRange(bytes, 1, BytesOfOnePrediction);
    }
}
