using PartPicker.Mechanics;
using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;
using Xunit;
using static PartPicker.Tests.Selection.Bench;

namespace PartPicker.Tests.Selection;

/// <summary>However a spring is known it predicts the same; where it is known in several ways the most direct counts.</summary>
public sealed class SpringKnowledgeTests
{
    // k = G d⁴/(8 D³ Nₐ) with G = 77.2 GPa, d = 5.4 mm, D = 52 mm, Nₐ = 3.05.
    private static readonly double DriveRate = 77.2e9 * Math.Pow(5.4e-3, 4) / (8 * Math.Pow(52e-3, 3) * 3.05);

    // The same with G = 77.2 GPa, d = 5.3 mm, D = 55 mm, Nₐ = 5.1; κ = E d⁴/(64 D Nₐ) with E = 203.4 GPa.
    private static readonly double AxialRate = 77.2e9 * Math.Pow(5.3e-3, 4) / (8 * Math.Pow(55e-3, 3) * 5.1);
    private static readonly double TwistRate = 203.4e9 * Math.Pow(5.3e-3, 4) / (64 * 55e-3 * 5.1);

    private static readonly DriveSpring DriveGeometry = new()
    {
        Id = "ds",
        WireDiameter = Mm(5.4),
        OutsideDiameter = Mm(57.4),
        ActiveCoils = 3.05,
        Material = "oil-tempered-a229",
        FreeLength = Mm(94.5),
    };

    private static readonly DrivenSpring DrivenGeometry = new()
    {
        Id = "vs",
        WireDiameter = Mm(5.3),
        OutsideDiameter = Mm(60.3),
        ActiveCoils = 5.1,
        Material = "chrome-silicon-a401",
        FreeLength = Mm(100),
    };

    [Fact]
    public void A_drive_spring_known_in_four_ways_predicts_the_same()
    {
        DriveSpring free = new() { Id = "ds", FreeLength = Mm(94.5) };
        DriveSpring rate = free with { Rate = ForcePerLength.FromNewtonsPerMeter(DriveRate) };
        DriveSpring loads = new()
        {
            Id = "ds",
            FirstLength = Mm(50), FirstLoad = Force.FromNewtons(DriveRate * 0.0445),
            SecondLength = Mm(80), SecondLoad = Force.FromNewtons(DriveRate * 0.0145),
        };
        DriveSpring table = new()
        {
            Id = "ds",
            LoadTable = [.. new[] { 40.0, 51, 63, 72, 85 }.Select(l => new CurvePoint(l / 1000, DriveRate * (94.5 - l) / 1000))],
        };
        double[] expected = Numbers(new Bench() with { DriveSpring = DriveGeometry });
        Assert.All(new[] { rate, loads, table }, spring => Same(expected, new Bench() with { DriveSpring = spring }));
    }

    [Fact]
    public void A_driven_spring_known_in_four_ways_predicts_the_same()
    {
        DrivenSpring rates = new()
        {
            Id = "vs",
            FreeLength = Mm(100),
            Rate = ForcePerLength.FromNewtonsPerMeter(AxialRate),
            TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(TwistRate),
        };
        DrivenSpring loads = new()
        {
            Id = "vs",
            FreeLength = Mm(100),
            LoadLength = Mm(60), Load = Force.FromNewtons(AxialRate * 0.04),
            FirstTwistDeg = 180, FirstTorque = Torque.FromNewtonMeters(TwistRate * Math.PI),
            SecondTwistDeg = 60, SecondTorque = Torque.FromNewtonMeters(TwistRate * Math.PI / 3),
        };
        DrivenSpring tables = new()
        {
            Id = "vs",
            LoadTable = [.. new[] { 20.0, 45, 60, 80 }.Select(l => new CurvePoint(l / 1000, AxialRate * (100 - l) / 1000))],
            TorqueTable = [.. new[] { 0.5, 1.5, 2, 4 }.Select(t => new CurvePoint(t, TwistRate * t))],
        };
        double[] expected = Numbers(new Bench() with { DrivenSpring = DrivenGeometry });
        Assert.All(new[] { rates, loads, tables }, spring => Same(expected, new Bench() with { DrivenSpring = spring }));
    }

    [Fact]
    public void Of_what_is_known_of_a_drive_spring_the_most_direct_counts()
    {
        // At 60 mm: 500 N by the table, 400 N by the loads, 300 N by the rate, and the geometry's own.
        DriveSpring all = DriveGeometry with
        {
            LoadTable = Curve((0.04, 700), (0.08, 300)),
            FirstLength = Mm(50),
            FirstLoad = Force.FromNewtons(600),
            SecondLength = Mm(70),
            SecondLoad = Force.FromNewtons(200),
            Rate = ForcePerLength.FromNewtonsPerMeter(300 / 0.0345),
        };
        DriveSpring noTable = all with { LoadTable = null };
        DriveSpring noLoads = noTable with { SecondLoad = null };
        Assert.Equal(500, SpringModels.Force(all)!.At(0.06), 1e-9);
        Assert.Equal(400, SpringModels.Force(noTable)!.At(0.06), 1e-9);
        Assert.Equal(300, SpringModels.Force(noLoads)!.At(0.06), 1e-9);
        Assert.Equal(DriveRate * 0.0345, SpringModels.Force(noLoads with { Rate = null })!.At(0.06), 1e-9);
    }

    [Fact]
    public void Of_what_is_known_of_a_driven_spring_the_most_direct_counts()
    {
        DrivenSpring all = DrivenGeometry with
        {
            LoadTable = Curve((0.04, 700), (0.08, 300)),
            LoadLength = Mm(60),
            Load = Force.FromNewtons(400),
            Rate = ForcePerLength.FromNewtonsPerMeter(300 / 0.04),
            TorqueTable = Curve((0, 0), (2, 30)),
            FirstTwistDeg = 60,
            FirstTorque = Torque.FromNewtonMeters(10),
            SecondTwistDeg = 120,
            SecondTorque = Torque.FromNewtonMeters(20),
            TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(8),
        };
        DrivenSpring noTables = all with { LoadTable = null, TorqueTable = null };
        DrivenSpring noLoads = noTables with { Load = null, FirstTorque = null };
        DrivenSpring geometry = noLoads with { Rate = null, TwistRate = null };
        Assert.Equal(
            [500, 400, 300, AxialRate * 0.04],
            new[] { all, noTables, noLoads, geometry }.Select(s => Math.Round(SpringModels.Axial(s)!.At(0.06), 9)),
            (a, b) => Math.Abs(a - b) < 1e-8);
        Assert.Equal(
            [15, 30 / Math.PI, 8, TwistRate],
            new[] { all, noTables, noLoads, geometry }.Select(s => SpringModels.Twist(s)!.At(1)),
            (a, b) => Math.Abs(a - b) < 1e-9);
    }

    [Theory]
    [InlineData(50, 100, 50, 100)]
    [InlineData(50, 100, 50, 200)]
    [InlineData(50, 100, 70, 100)]
    [InlineData(50, 100, 70, 200)]
    public void Two_loads_or_torques_that_make_no_spring_are_not_known(double first, double load, double second, double otherLoad)
    {
        Assert.Null(SpringModels.Force(new DriveSpring
        {
            FirstLength = Mm(first), FirstLoad = Force.FromNewtons(load),
            SecondLength = Mm(second), SecondLoad = Force.FromNewtons(otherLoad),
        }));
        Assert.Null(SpringModels.Twist(new DrivenSpring
        {
            FirstTwistDeg = second, FirstTorque = Torque.FromNewtonMeters(load),
            SecondTwistDeg = first, SecondTorque = Torque.FromNewtonMeters(otherLoad),
        }));
    }

    [Fact]
    public void A_driven_spring_without_rate_pushes_and_twists_with_nothing()
    {
        var bench = new Bench();
        Prediction helixAlone = (bench with
        {
            DrivenSpring = bench.DrivenSpring with
            {
                Rate = ForcePerLength.FromNewtonsPerMeter(0),
                TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(0),
            },
        }).Predicted(r => r with { Anchor = false });

        // F_s = q η i Q/(r_c tan(α − φ)) alone.
        ShiftPoint low = helixAlone.Curve[0];
        double lever = 0.042 * Math.Tan((43 - 0.8) * Math.PI / 180);
        Assert.Equal(
            0.5 * 0.95 * low.Ratio * low.Upshift!.EngineTorque.NewtonMeters / lever, low.Upshift.DrivenClamp.Newtons, 1e-6);
    }

    [Theory]
    [MemberData(nameof(LengthRuleTests.LengthRules), MemberType = typeof(LengthRuleTests))]
    public void A_part_that_is_short_by_less_than_the_tolerance_is_predicted(string name)
    {
        LengthRule rule = LengthRule.All.Single(r => r.Name == name);
        double inside = rule.Side switch { Side.Above => 0.06, Side.AtMost => 0.04, _ => -0.04 };
        Bench bench = rule.Part(new Bench(), Mm(rule.LimitMm + inside));
        Assert.Equal(FitVerdict.Kept, rule.Check(bench).Verdict);
        Prediction prediction = bench.Predicted(r => r with { Anchor = false });
        Assert.Null(FiniteNumbers.FirstBad(prediction));
        Assert.NotNull(prediction.ShiftOutRpm);
    }

    [Fact]
    public void An_end_that_is_short_by_less_than_the_tolerance_keeps_its_value()
    {
        LinearCurve table = LinearCurve.Table([(0.04, 900), (0.06, 500), (0.0719, 400)]);
        LinearCurve reaching = SpringModels.Reaching(table, 0.03996, 0.07194, FitTolerance.LengthM);
        Assert.Equal(900, reaching.At(0.03996), 1e-9);
        Assert.Equal(500, reaching.At(0.06), 1e-9);
        Assert.Equal(400, reaching.At(0.07194), 1e-9);
        Assert.Same(table, SpringModels.Reaching(table, 0.03990, 0.07, FitTolerance.LengthM));
        Assert.Same(table, SpringModels.Reaching(table, 0.04, 0.0719, FitTolerance.LengthM));
    }

    private static double[] Numbers(Bench bench)
    {
        Prediction prediction = bench.Predicted(r => r with { Anchor = false });
        return
        [
            prediction.EngagementRpm,
            .. prediction.Curve.SelectMany(p => new[] { p.Upshift!.Rpm, p.Upshift.DrivenClamp.Newtons, p.Backshift!.Rpm }),
        ];
    }

    private static void Same(double[] expected, Bench bench) =>
        Assert.Equal(expected, Numbers(bench), (a, b) => Math.Abs(a - b) <= 1e-9 * a);
}
