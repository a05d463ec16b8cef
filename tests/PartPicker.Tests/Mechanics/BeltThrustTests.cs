using CsCheck;
using PartPicker.Mechanics;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>The belt's axial thrust against the capstan equation integrated step by step, and its limits.</summary>
public sealed class BeltThrustTests
{
    private static readonly Gen<Belt> Belts =
        from halfAngle in Gen.Double[8, 20]
        from friction in Gen.Double[0.1, 0.6]
        from driven in Gen.Frequency((1, Gen.Const(1.0)), (2, Gen.Double[0.4, 2.5]))
        from driveWrap in Gen.Double[2.2, 4.0]
        from locked in Gen.Bool
        select new Belt(
            halfAngle * Math.PI / 180, friction, Math.Min(0.9, driven * friction), driveWrap, 2 * Math.PI - driveWrap,
            locked ? DriveThrustForm.Locked : DriveThrustForm.TwoArc);

    private static readonly Gen<double> Tensions = Gen.Double[1, 3000];

    // From hardly more than slip to a clamp that hardly notices the torque.
    private static readonly Gen<double> ClampOverSlip =
        Gen.Double[0.001, 3].Select(exponent => Math.Pow(10, exponent));

    // AX-1: derived from the classical equations and integrated numerically, not published. T₁ and T₂ are totals.
    [Trait("Outside", "AX-1")]
    [Theory]
    [InlineData(0.30, 13, 200, 1500, 300, 50, 75.521947, 1948.740, 8771.248, 3125.035)]
    [InlineData(0.35, 13, 150, 1200, 300, 0, 51.050, 1252.76, 5741.03, 2374.83)]
    [InlineData(0.25, 14, 180, 1000, 400, 20, 52.527, 1164.35, 5536.76, 2859.78)]
    [InlineData(0.50, 12, 160, 2000, 250, 100, 60.491, 1711.76, 9474.04, 2324.57)]
    public void A_driven_clamp_gives_tensions_arc_and_drive_thrust(
        double friction, double halfAngle, double wrap, double tight, double slack, double centrifugal,
        double arc, double active, double driver, double driven)
    {
        double radians = wrap * Math.PI / 180;
        var belt = new BeltThrust(halfAngle * Math.PI / 180, friction, radians, radians);
        BeltLoad load = belt.Load(driven, tight - slack);

        // The rows have six to seven figures; a digit of the clamp comes back as a digit of the tension.
        Relative.Equal(tight - centrifugal, load.TightNet, 5e-6);
        Relative.Equal(slack - centrifugal, load.SlackNet, 5e-6);
        Relative.Equal(arc, load.ActiveArc * 180 / Math.PI, 1e-5);
        Relative.Equal(driver, load.DriveThrust, 5e-6);

        // Without clamp the belt slips over the whole wrap, and what pushes is the active arc alone.
        Relative.Equal(active, belt.DriveThrust(drivenClamp: 0, tight - slack), 5e-6);
        Assert.False(load.DrivenSlips);
    }

    // The locked drive of AX-1's first row: entry tension over the whole wrap.
    [Fact]
    public void A_locked_drive_carries_entry_tension_over_its_wrap() =>
        Relative.Equal(
            10_961.78,
            new BeltThrust(13 * Math.PI / 180, 0.3, 200 * Math.PI / 180, 200 * Math.PI / 180, DriveThrustForm.Locked)
                .DriveThrust(3125.035, 1200),
            1e-6);

    // AX-2, derived: T′ 800 N all round, β 13°, radii 34.5 and 103.5 mm, shafts 254 mm apart.
    [Trait("Outside", "AX-2")]
    [Fact]
    public void Without_torque_one_tension_loads_both_sheaves()
    {
        double slant = 2 * Math.Asin((0.1035 - 0.0345) / 0.254);
        var belt = new BeltThrust(13 * Math.PI / 180, 0.3, Math.PI - slant, Math.PI + slant);
        BeltLoad load = belt.Load(6396.402, 0);

        Relative.Equal(800, load.TightNet, 1e-7);
        Relative.Equal(800, load.SlackNet, 1e-7);
        Relative.Equal(4489.785, load.DriveThrust, 2e-7);
        Assert.Equal(0, load.ActiveArc);
        Assert.True(double.IsNaN(load.SlipMargin));
    }

    [Fact]
    public void Clamp_and_thrust_are_integrals_of_the_capstan_equation() =>
        Gen.Select(Belts, Tensions, ClampOverSlip).Sample((belt, effective, overSlip) =>
        {
            BeltLoad load = belt.Thrust.Load(overSlip * belt.SlipClamp(effective), effective);

            // The driven sheave takes the belt in at T₂′ and lets it go at T₁′.
            Arc driven = Arc.Along(
                load.SlackNet, belt.DrivenWrap - load.ActiveArc, load.ActiveArc, +belt.DrivenGroove);
            Relative.Equal(load.TightNet, driven.Leaving, 1e-8);
            Relative.Equal(overSlip * belt.SlipClamp(effective), driven.Sum / belt.TwiceTan, 1e-8);

            // The drive sheave takes it in at T₁′. Where its wrap is too short the belt leaves early.
            double active = Math.Min(belt.DriveWrap, load.DriveActiveArc);
            Arc drive = Arc.Along(load.TightNet, belt.DriveWrap - active, active, -belt.DriveGroove);
            if (belt.Form == DriveThrustForm.Locked)
                Relative.Equal(load.TightNet * belt.DriveWrap / belt.TwiceTan, load.DriveThrust, 1e-12);
            else if (active == load.DriveActiveArc)
                Relative.Equal(drive.Sum / belt.TwiceTan, load.DriveThrust, 1e-8);
            Assert.Equal(load.DriveThrust, belt.Thrust.DriveThrust(overSlip * belt.SlipClamp(effective), effective));
        });

    [Fact]
    public void Tensions_carry_the_clamp_to_the_last_digits() =>
        Gen.Select(Belts, Tensions, ClampOverSlip).Sample((belt, effective, overSlip) =>
        {
            double clamp = overSlip * belt.SlipClamp(effective);
            BeltLoad load = belt.Thrust.Load(clamp, effective);

            double carried = load.SlackNet * (belt.DrivenWrap - load.ActiveArc) + effective / belt.DrivenGroove;
            Relative.Equal(clamp, carried / belt.TwiceTan, 1e-12);
            Relative.Equal(Math.Log(load.TightNet / load.SlackNet), load.ActiveArc * belt.DrivenGroove, 1e-12);
            Relative.Equal(Math.Log(load.TightNet / load.SlackNet), load.DriveActiveArc * belt.DriveGroove, 1e-12);
        });

    [Fact]
    public void Load_continues_through_slip_without_a_jump() =>
        Gen.Select(Belts, Tensions).Sample((belt, effective) =>
        {
            double edge = belt.SlipClamp(effective);
            BeltLoad below = belt.Thrust.Load(edge * (1 - 1e-9), effective);
            BeltLoad above = belt.Thrust.Load(edge * (1 + 1e-9), effective);

            Assert.True(below.DrivenSlips);
            Assert.False(above.DrivenSlips);

            // Around slip the slack tension answers the clamp in the ratio of the tensions, and the rest follows.
            double tolerance = 1e-8 * below.TightNet / below.SlackNet;
            Relative.Equal(below.DriveThrust, above.DriveThrust, tolerance);
            Relative.Equal(below.SlackNet, above.SlackNet, tolerance);
            Relative.Equal(below.SlipMargin, above.SlipMargin, tolerance);
            Relative.Equal(belt.DrivenWrap, below.ActiveArc, 1e-12);
        });

    // Around slip the margin answers the load steeply: the load that it asks for is told on both its sides.
    [Fact]
    public void A_slip_margin_is_kept_up_to_its_load_and_not_beyond() =>
        Gen.Select(Belts, Tensions, Gen.Double[0.05, 5]).Sample((belt, effective, margin) =>
        {
            double load = belt.Thrust.LoadAtSlipMargin(margin);
            Assert.True(belt.Thrust.Load(effective / (load * (1 - 1e-9)), effective).SlipMargin >= margin);
            Assert.True(belt.Thrust.Load(effective / (load * (1 + 1e-9)), effective).SlipMargin <= margin);
            Assert.Equal(double.PositiveInfinity, belt.Thrust.LoadAtSlipMargin(0));
        });

    [Fact]
    public void Drive_thrust_never_falls_as_the_clamp_rises() =>
        Gen.Select(Belts, Tensions, Gen.Double[0, 20_000], Gen.Double[0, 5_000])
            .Sample((belt, effective, clamp, more) => Assert.True(
                belt.Thrust.DriveThrust(clamp + more, effective)
                    >= belt.Thrust.DriveThrust(clamp, effective) * (1 - 1e-12)));

    [Fact]
    public void Drive_thrust_rises_with_a_clamp_that_leaves_an_idle_arc() =>
        Gen.Select(Belts, Tensions, Gen.Double[1, 100]).Sample((belt, effective, overSlip) =>
        {
            BeltThrust thrust = belt.Thrust;
            double clamp = overSlip * belt.SlipClamp(effective);
            if (thrust.Load(clamp, effective).DriveActiveArc < belt.DriveWrap)
                Assert.True(thrust.DriveThrust(clamp * 1.01, effective) > thrust.DriveThrust(clamp, effective));
        });

    [Fact]
    public void Least_drive_thrust_is_never_above_drive_thrust() =>
        Gen.Select(Belts, Gen.Double[0, 3000], Gen.Double[-1_000, 20_000]).Sample((belt, effective, clamp) =>
            Assert.True(
                new BeltThrustFloor(belt.Thrust).Least(clamp, effective)
                    <= belt.Thrust.DriveThrust(clamp, effective) * (1 + 1e-12)));

    [Fact]
    public void Least_drive_thrust_is_never_above_drive_thrust_at_any_margin() =>
        Gen.Select(Belts, Tensions, ClampOverSlip).Sample((belt, effective, overSlip) =>
        {
            double clamp = overSlip * belt.SlipClamp(effective);
            Assert.True(
                new BeltThrustFloor(belt.Thrust).Least(clamp, effective)
                    <= belt.Thrust.DriveThrust(clamp, effective) * (1 + 1e-12));
        });

    [Fact]
    public void Least_drive_thrust_of_a_span_is_never_above_drive_thrust_within_it() =>
        Gen.Select(
            Belts, Gen.OneOf(Gen.Const(0.0), Tensions), Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[-2, 3], Gen.Double[0, 1000])
        .Sample((belt, greatest, width, place, exponent, more) =>
        {
            double least = greatest * (1 - width);
            double clamp = Math.Pow(10, exponent) * belt.SlipClamp(Math.Max(1, greatest));
            foreach (double within in new[] { clamp, clamp + more, 0, -more })
            {
                double floor = new BeltThrustFloor(belt.Thrust).Least(within, least, greatest);
                double truth = belt.Thrust.DriveThrust(within + more * place, least + place * (greatest - least));
                Assert.True(floor <= truth * (1 + 1e-12), $"{floor} > {truth}");
            }
        });

    // It pays only if it is close: away from the slip edge, where the thrust falls steeply, by less than a hundredth.
    [Fact]
    public void Least_drive_thrust_is_close_to_drive_thrust() =>
        Gen.Select(Belts, Tensions, Gen.Double[1.1, 100]).Sample((belt, effective, overSlip) =>
        {
            double clamp = overSlip * belt.SlipClamp(effective);
            Assert.True(
                new BeltThrustFloor(belt.Thrust).Least(clamp, effective) >= belt.Thrust.DriveThrust(clamp, effective) * 0.99);
        });

    [Fact]
    public void Without_torque_thrust_over_clamp_is_the_ratio_of_wraps() =>
        Gen.Select(Belts, Gen.Double[10, 20_000]).Sample((belt, clamp) =>
        {
            double ratio = belt.DriveWrap / belt.DrivenWrap;
            Relative.Equal(ratio, belt.Thrust.DriveThrust(clamp, 0) / clamp, 1e-12);
            Relative.Equal(ratio, belt.Thrust.DriveThrust(clamp, clamp * 1e-9) / clamp, 1e-7);
        });

    [Fact]
    public void A_clamp_below_zero_holds_as_much_as_none() =>
        Gen.Select(Belts, Gen.Double[0, 3000], Gen.Double[-5_000, 0]).Sample((belt, effective, clamp) =>
        {
            Assert.Equal(belt.Thrust.DriveThrust(0, effective), belt.Thrust.DriveThrust(clamp, effective));
            Assert.Equal(belt.Thrust.Load(0, effective), belt.Thrust.Load(clamp, effective));
        });

    /// <summary>The arguments of a belt beside the belt, so that a failure prints them.</summary>
    private sealed record Belt(
        double HalfAngle, double DriveFriction, double DrivenFriction, double DriveWrap, double DrivenWrap, DriveThrustForm Form)
    {
        public BeltThrust Thrust => new(HalfAngle, DriveFriction, DrivenFriction, DriveWrap, DrivenWrap, Form);

        public double TwiceTan => 2 * Math.Tan(HalfAngle);

        public double DriveGroove => DriveFriction / Math.Sin(HalfAngle);

        public double DrivenGroove => DrivenFriction / Math.Sin(HalfAngle);

        /// <summary>Where 2 tan β F_s μ_e = D.</summary>
        public double SlipClamp(double effective) => effective / (TwiceTan * DrivenGroove);
    }

    /// <summary>Tension followed along a wrap: where it leaves, and its integral over the angle.</summary>
    private readonly record struct Arc(double Leaving, double Sum)
    {
        private const int Steps = 1000;

        // An idle arc at entry tension, then dT/dθ = ± μ_e T by the classical Runge-Kutta method.
        public static Arc Along(double entering, double idle, double active, double signedFriction)
        {
            double tension = entering;
            double sum = entering * idle;
            double h = active / Steps;
            for (int i = 0; i < Steps; i++)
            {
                double k1 = signedFriction * tension;
                double k2 = signedFriction * (tension + h / 2 * k1);
                double k3 = signedFriction * (tension + h / 2 * k2);
                double k4 = signedFriction * (tension + h * k3);
                double next = tension + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);

                // Simpson's rule with the step's own middle, a cubic through both ends and their slopes.
                double middle = (tension + next) / 2 + h / 8 * (k1 - signedFriction * next);
                sum += h / 6 * (tension + 4 * middle + next);
                tension = next;
            }

            return new Arc(tension, sum);
        }
    }
}
