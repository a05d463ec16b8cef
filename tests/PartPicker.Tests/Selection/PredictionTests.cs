using System.Text.Json;
using PartPicker.Mechanics;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.Tests.Mechanics;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>What one set does, through the nouns of the catalog: the numbers of the agreement cases.</summary>
public sealed class PredictionTests
{
    private const double RpmTolerance = 0.01;

    // The body of this one stands still at rest: the formula has an answer, the fit rules refuse it.
    private const string StandsStill = "A-notch-inside";

    public static TheoryData<string> Ids => [.. AgreementCase.All.Select(c => c.Id).Where(id => id != StandsStill)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_machine_of_catalog_nouns_predicts_the_numbers_of_the_case(string id)
    {
        AgreementCase c = AgreementCase.Of(id);
        AgreementNouns nouns = AgreementNouns.Of(id);
        Outcome<PredictionAnswer> outcome = SetPrediction.Predict(nouns.Snapshot, nouns.Request);
        Prediction actual = outcome.Answer?.Prediction ?? throw new InvalidOperationException(string.Join("; ", outcome.Problems));

        Assert.Equal(Number("engagement_rpm"), actual.EngagementRpm!.Value, RpmTolerance);
        Assert.Equal(Number("torque_factor"), actual.TorqueFactor, 1e-9);
        Assert.Equal(Number("peak_power_rpm"), actual.PeakPowerRpm, RpmTolerance);
        Assert.Equal(Number("peak_power"), (double)actual.PeakPower.Watts, 1e-6 * Number("peak_power"));
        foreach ((JsonElement expected, ShiftPoint point) in c.Expected.GetProperty("points").EnumerateArray().Zip(actual.Curve))
        {
            Relative(expected, "ratio", point.Ratio);
            Relative(expected, "x", point.Travel.Meters);
            Relative(expected, "R1", point.DriveRadius.Meters);
            Relative(expected, "R2", point.DrivenRadius.Meters);
            Relative(expected, "wrap1", point.DriveWrap.Radians);
            Relative(expected, "helix_angle", point.HelixAngle.Radians);
            Relative(expected, "cam_turn", point.CamTurn.Radians);
            Same(expected.GetProperty("upshift"), point.Upshift);
            Same(expected.GetProperty("backshift"), point.Backshift);
        }

        double Number(string name) => AgreementCase.Number(c.Expected, name);
    }

    [Fact]
    public void A_body_that_stands_still_at_rest_is_refused_before_it_is_predicted()
    {
        AgreementNouns nouns = AgreementNouns.Of(StandsStill);
        RequestProblem problem = Assert.Single(SetPrediction.Predict(nouns.Snapshot, nouns.Request).Problems);
        Assert.Equal(("machine/fitted/flyweight", "part-unusable"), (problem.Place, problem.Code));
        Assert.Contains("the radius of its body does not grow with travel everywhere", problem.Expected);
    }

    [Theory]
    [InlineData("A-stock")]
    [InlineData("B-stock")]
    public void The_nouns_lose_nothing_on_the_way_to_the_model(string id)
    {
        AgreementCase c = AgreementCase.Of(id);
        Drivetrain machine = c.Drivetrain();
        var model = new ShiftModel(
            machine, machine.Belt.EvenlyByRatio(machine.ContactTravel, machine.FullShiftTravel, 9), c.TorqueFactor, AnchorFactors.None);
        DriveSide drive = model.Drive(c.DriveSpring(), c.Flyweights());
        DrivenSide driven = model.Driven(c.DrivenAxial(), c.DrivenTwist(), c.PreloadTwist, c.Helix());
        AgreementNouns nouns = AgreementNouns.Of(id);
        Prediction actual = SetPrediction.Predict(nouns.Snapshot, nouns.Request).Answer!.Prediction;

        Assert.Equal(drive.Engagement.Rpm, actual.EngagementRpm!.Value, 1e-9 * drive.Engagement.Rpm);
        for (int j = 0; j < 9; j++)
        {
            double up = model.BalanceRpm(drive, driven, j, ShiftDirection.Upshift)!.Value;
            double back = model.BalanceRpm(drive, driven, j, ShiftDirection.Backshift)!.Value;
            Assert.Equal(up, actual.Curve[j].Upshift!.Rpm, 1e-9 * up);
            Assert.Equal(back, actual.Curve[j].Backshift!.Rpm, 1e-9 * back);
        }

        Assert.Equal(actual.Curve[^1].Upshift!.Rpm, actual.ShiftOutRpm);
    }

    [Fact]
    public void The_parts_default_to_those_fitted_and_the_run_to_that_of_the_machine()
    {
        var bench = new Bench();
        PredictionAnswer answer = bench.Predict().Answer!;
        Assert.Equal(bench.Fitted.StationMasses, answer.Parts.StationMasses);
        Assert.Equal(bench.Fitted with { StationMasses = answer.Parts.StationMasses }, answer.Parts);
        Assert.Equal(2000, answer.Prediction.EngagementRpm!.Value, 1e-9);
        Assert.Equal("3", bench.Predict(r => r with { Parts = bench.Fitted with { Hole = "3" } }).Answer!.Parts.Hole);
    }

    [Fact]
    public void Every_run_is_left_aside_where_that_is_asked()
    {
        var bench = new Bench();
        var run = new Baseline(bench.Fitted, 1700, [], 7000, default);
        Prediction bare = (bench with { Run = _ => null }).Predicted();
        Prediction aside = bench.Predicted(r => r with { Anchor = false, Baseline = run });
        Assert.Null(aside.Anchoring);
        Assert.Equal(bare.EngagementRpm, aside.EngagementRpm);
        Assert.Equal(bare.Curve.Select(p => p.Upshift!.Rpm), aside.Curve.Select(p => p.Upshift!.Rpm));
        Assert.NotEqual(bare.EngagementRpm!.Value, bench.Predicted().EngagementRpm!.Value, 1.0);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(15)]
    public void The_curve_has_as_many_points_as_were_asked_for(int count)
    {
        Prediction prediction = new Bench().Predicted(r => r with { PointCount = count });
        Assert.Equal(count, prediction.Curve.Count);
        Assert.Equal(new Bench().Predicted().Curve[0].Upshift!.Rpm, prediction.Curve[0].Upshift!.Rpm);
        Assert.Equal(new Bench().Predicted().ShiftOutRpm, prediction.ShiftOutRpm);
    }

    private static void Same(JsonElement expected, Balance? actual)
    {
        Assert.Equal(expected.ValueKind == JsonValueKind.Null, actual is null);
        if (actual is null)
            return;
        Assert.Equal(AgreementCase.Number(expected, "rpm"), actual.Rpm, RpmTolerance);
        Relative(expected, "torque", actual.EngineTorque.NewtonMeters);
        Relative(expected, "power", (double)actual.Power.Watts);
        Relative(expected, "driven_clamp", actual.DrivenClamp.Newtons);
        Relative(expected, "drive_thrust", actual.DriveThrust.Newtons);
        Relative(expected, "flyweight_thrust", actual.FlyweightThrust.Newtons);
        Relative(expected, "spring_force", actual.SpringForce.Newtons);
        Relative(expected, "T1", actual.TightTension.Newtons);
        Relative(expected, "T2", actual.SlackTension.Newtons);
        Relative(expected, "T1_net", actual.TightTensionNet.Newtons);
        Relative(expected, "T2_net", actual.SlackTensionNet.Newtons);
        Relative(expected, "active_arc", actual.ActiveArc.Radians);
        Relative(expected, "belt_speed", actual.BeltSpeed.MetersPerSecond);
        Relative(expected, "vehicle_speed", actual.VehicleSpeed.MetersPerSecond);
        Assert.Equal(expected.GetProperty("slips").GetBoolean(), actual.Slips);
        Assert.Equal(expected.GetProperty("slip_margin").ValueKind == JsonValueKind.Null, actual.SlipMargin is null);
        if (actual.SlipMargin is { } margin)
            Relative(expected, "slip_margin", margin);
    }

    private static void Relative(JsonElement expected, string name, double actual)
    {
        double value = AgreementCase.Number(expected, name);
        Assert.Equal(value, actual, 1e-6 * (value == 0 ? 1e-3 : Math.Abs(value)));
    }
}
