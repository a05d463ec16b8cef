using System.Text.Json;
using PartPicker.Mechanics;
using Xunit;
using Xunit.Abstractions;

namespace PartPicker.Tests.Mechanics;

/// <summary>Every number of every agreement case: 0.01 rpm for speeds, 1e-6 relative for the rest.</summary>
public sealed class AgreementTests(ITestOutputHelper output, AgreementFigures figures) : IClassFixture<AgreementFigures>
{
    private const double RpmTolerance = 0.01;
    private const double RelativeTolerance = 1e-6;

    private double worstRpm;
    private double worstRelative;

    public static TheoryData<string> Ids => [.. AgreementCase.All.Select(c => c.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_number_of_the_case_agrees(string id)
    {
        AgreementCase c = AgreementCase.Of(id);
        Drivetrain machine = c.Drivetrain();
        var model = new ShiftModel(
            machine, machine.Belt.EvenlyByRatio(machine.ContactTravel, machine.FullShiftTravel, 9), c.TorqueFactor, c.Anchor);
        DriveSide drive = model.Drive(c.DriveSpring(), c.Flyweights());
        DrivenSide driven = model.Driven(c.DrivenAxial(), c.DrivenTwist(), c.PreloadTwist, c.Helix());

        Rpm(c.Expected.GetProperty("engagement_rpm"), drive.Engagement.Rpm);
        Rpm(c.Expected.GetProperty("engagement_rpm_at_contact"), AtContact(machine.FlyweightFrictionShare));
        Rpm(c.Expected.GetProperty("engagement_rpm_no_friction_at_contact"), AtContact(0));
        Relative(c.Expected.GetProperty("torque_factor"), c.TorqueFactor);
        Rpm(c.Expected.GetProperty("peak_power_rpm"), model.PeakPowerRpm);
        Relative(c.Expected.GetProperty("peak_power"), model.PeakPower);

        JsonElement[] points = [.. c.Expected.GetProperty("points").EnumerateArray()];
        Assert.Equal(9, points.Length);
        for (int j = 0; j < points.Length; j++)
        {
            Position(points[j], model.Positions[j], driven, j);
            Balance(points[j].GetProperty("upshift"), model.Balance(drive, driven, j, ShiftDirection.Upshift), model);
            Balance(points[j].GetProperty("backshift"), model.Balance(drive, driven, j, ShiftDirection.Backshift), model);
        }

        JsonElement shiftOut = c.Expected.GetProperty("shift_out_rpm");
        ShiftBalance? last = model.Balance(drive, driven, 8, ShiftDirection.Upshift);
        Assert.Equal(shiftOut.ValueKind == JsonValueKind.Null, last is null);
        if (last is { } shifted)
            Rpm(shiftOut, shifted.Rpm);
        figures.Add(worstRpm, worstRelative);
        output.WriteLine($"worst {worstRpm:E2} rpm, {worstRelative:E2} relative");

        double AtContact(double friction) => Rotation.ToRpm(Math.Sqrt(
            c.DriveSpring().At(machine.DriveSpringLength - machine.ContactTravel)
            / ((1 - friction) * c.Anchor.Flyweight * c.Flyweights().ThrustPerSpeedSquared(machine.ContactTravel))));
    }

    [Theory]
    [InlineData("A-anchored")]
    [InlineData("B-anchored")]
    public void A_measured_run_gives_the_anchor_factors_of_the_case(string id)
    {
        AgreementCase c = AgreementCase.Of(id);
        Drivetrain machine = c.Drivetrain();
        JsonElement baseline = c.Expected.GetProperty("baseline");
        (double Ratio, double Rpm)[] shift =
            [.. baseline.GetProperty("shift").EnumerateArray().Select(p => (p[0].GetDouble(), p[1].GetDouble()))];
        var model = new ShiftModel(
            machine, [.. shift.Select(p => machine.Belt.AtRatio(p.Ratio))], c.TorqueFactor, AnchorFactors.None);

        AnchorFactors factors = Anchor.Solve(
            model,
            model.Drive(c.DriveSpring(), c.Flyweights()),
            model.Driven(c.DrivenAxial(), c.DrivenTwist(), c.PreloadTwist, c.Helix()),
            c.FrictionShare,
            AgreementCase.Number(baseline, "engagement_rpm"),
            [.. shift.Select(p => p.Rpm)]);

        Relative(c.Expected.GetProperty("anchor_factors")[0], factors.Flyweight);
        Relative(c.Expected.GetProperty("anchor_factors")[1], factors.Thrust);
    }

    private void Position(JsonElement expected, BeltPosition actual, DrivenSide driven, int j)
    {
        Relative(expected.GetProperty("x"), actual.Travel);
        Relative(expected.GetProperty("y"), actual.OpeningTravel);
        Relative(expected.GetProperty("ratio"), actual.Ratio);
        Relative(expected.GetProperty("R1"), actual.DriveRadius);
        Relative(expected.GetProperty("R2"), actual.DrivenRadius);
        Relative(expected.GetProperty("wrap1"), actual.DriveWrap);
        Relative(expected.GetProperty("wrap2"), actual.DrivenWrap);
        Relative(expected.GetProperty("helix_angle"), driven.HelixAngle[j]);
        Relative(expected.GetProperty("cam_turn"), driven.CamTurn[j]);
    }

    private void Balance(JsonElement expected, ShiftBalance? actual, ShiftModel model)
    {
        Assert.Equal(expected.ValueKind == JsonValueKind.Null, actual is null);
        if (actual is not { } b)
            return;
        Rpm(expected.GetProperty("rpm"), b.Rpm);
        Relative(expected.GetProperty("torque"), b.EngineTorque);
        Relative(expected.GetProperty("power"), b.Power);
        Assert.Equal(AgreementCase.Number(expected, "power_lost"), b.PowerLost, RelativeTolerance * model.PeakPower);
        Relative(expected.GetProperty("driven_clamp"), b.DrivenClamp);
        Relative(expected.GetProperty("drive_thrust"), b.DriveThrust);
        Relative(expected.GetProperty("T1_net"), b.Belt.TightNet);
        Relative(expected.GetProperty("T2_net"), b.Belt.SlackNet);
        Relative(expected.GetProperty("T1"), b.Belt.TightNet + b.CentrifugalTension);
        Relative(expected.GetProperty("T2"), b.Belt.SlackNet + b.CentrifugalTension);
        Relative(expected.GetProperty("active_arc"), b.Belt.ActiveArc);
        Assert.Equal(expected.GetProperty("slip_margin").ValueKind == JsonValueKind.Null, double.IsNaN(b.Belt.SlipMargin));
        if (!double.IsNaN(b.Belt.SlipMargin))
            Relative(expected.GetProperty("slip_margin"), b.Belt.SlipMargin);
        Assert.Equal(expected.GetProperty("slips").GetBoolean(), b.Slips);
        Assert.Equal(expected.GetProperty("slips_driven").GetBoolean(), b.Belt.DrivenSlips);
        Relative(expected.GetProperty("flyweight_thrust"), b.FlyweightThrust);
        Relative(expected.GetProperty("spring_force"), b.SpringForce);
        Relative(expected.GetProperty("belt_speed"), b.BeltSpeed);
        Relative(expected.GetProperty("vehicle_speed"), b.VehicleSpeed);
    }

    private void Rpm(JsonElement expected, double actual)
    {
        worstRpm = Math.Max(worstRpm, Math.Abs(expected.GetDouble() - actual));
        Assert.Equal(expected.GetDouble(), actual, RpmTolerance);
    }

    private void Relative(JsonElement expected, double actual)
    {
        double value = expected.GetDouble();

        // At low gear the opening travel and the cam turn are 0: the tolerance is then absolute.
        double scale = value == 0 ? 1e-3 : Math.Abs(value);
        worstRelative = Math.Max(worstRelative, Math.Abs(value - actual) / scale);
        Assert.Equal(value, actual, RelativeTolerance * scale);
    }
}
