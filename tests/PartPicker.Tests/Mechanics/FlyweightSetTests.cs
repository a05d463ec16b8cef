using CsCheck;
using PartPicker.Mechanics;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>Flyweight thrust against the energy that it comes from.</summary>
public sealed class FlyweightSetTests
{
    // ½ ω² J with J = z Σ m r²: what the sheave gains by moving is its derivative over travel.
    [Fact]
    public void Thrust_is_the_derivative_of_kinetic_energy() =>
        Gen.Select(RandomSetUp.Any, Gen.Double[0.0001, 0.0224], Gen.Double[100, 1000]).Sample((setUp, travel, speed) =>
        {
            const double step = 1e-6;

            // The second derivative jumps at a point: a difference across it is good to first order only.
            if (setUp.Flyweights().Knots.Any(x => Math.Abs(x - travel) <= step))
                return;
            var arm = new SmoothCurve(setUp.Radii.Select((r, i) => (RandomSetUp.FullShiftTravel * i / 4, r)));
            double derivative = (Energy(travel + step) - Energy(travel - step)) / (2 * step);

            Relative.Equal(derivative, setUp.Flyweights().Thrust(travel, speed), 1e-6);

            double Energy(double x)
            {
                double tip = 0.045 + 0.03 / RandomSetUp.FullShiftTravel * x;
                double inertia = 3 * (setUp.ArmMass * Math.Pow(arm.At(x), 2) + setUp.TipMass * tip * tip);
                return speed * speed * inertia / 2;
            }
        });

    // A roller in a straight ramp at 40° from the shaft's plane gains cot 40° of radius with travel.
    [Fact]
    public void A_roller_in_a_straight_ramp_pushes_by_the_cotangent()
    {
        double cot = 1 / Math.Tan(40 * Math.PI / 180);
        var rollers = new FlyweightSet(6, [(0.011, new SmoothCurve([(0, 0.02), (0.02, 0.02 + 0.02 * cot)]))]);

        Relative.Equal(6 * 0.011 * 500 * 500 * (0.02 + 0.01 * cot) * cot, rollers.Thrust(0.01, 500), 1e-12);
    }

    // r is a line, and so is r r′: from its one end to its other, whether the arm swings out or in.
    [Theory]
    [InlineData(0.5)]
    [InlineData(-0.5)]
    public void The_range_of_a_straight_arm_is_that_of_its_ends(double slope)
    {
        var arms = new FlyweightSet(3, [(0.04, new SmoothCurve([(0, 0.06), (0.02, 0.06 + 0.02 * slope)]))]);
        double first = 3 * 0.04 * (0.06 + 0.004 * slope) * slope;
        double last = 3 * 0.04 * (0.06 + 0.012 * slope) * slope;

        (double least, double greatest) = arms.ThrustRange(0.004, 0.012);

        Relative.Equal(Math.Min(first, last), least, 1e-12);
        Relative.Equal(Math.Max(first, last), greatest, 1e-12);
    }

    [Fact]
    public void No_thrust_lies_outside_its_range_and_a_short_span_has_a_narrow_one() =>
        Gen.Select(Gen.Double[-0.004, 0.004].Array[5], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0.001, 0.05]).Sample(
            (steps, a, b, mass) =>
            {
                double[] radii = [.. steps.Select((_, i) => 0.05 + steps.Take(i + 1).Sum())];
                var arms = new FlyweightSet(
                    3,
                    [
                        (0.04, new SmoothCurve(radii.Select((r, i) => (0.005 * i, r)))),
                        (mass, new SmoothCurve([(0, 0.03), (0.01, 0.04), (0.02, 0.045)])),
                    ]);
                (double from, double to) = (0.02 * Math.Min(a, b), 0.02 * Math.Max(a, b));
                (double least, double greatest) = arms.ThrustRange(from, to);
                double slack = 1e-12 * Math.Max(Math.Abs(least), Math.Abs(greatest));
                for (int i = 0; i <= 100; i++)
                    Assert.InRange(arms.ThrustPerSpeedSquared(from + (to - from) * i / 100), least - slack, greatest + slack);

                (double low, double high) = arms.ThrustRange(from, from + 1e-9 * (0.02 - from));
                Assert.InRange(high - low, 0, 1e-6);
            });

    [Fact]
    public void A_set_without_arms_or_mass_is_refused()
    {
        var radius = new SmoothCurve([(0, 0.04), (0.02, 0.06)]);

        Assert.Throws<ArgumentOutOfRangeException>(() => new FlyweightSet(0, [(0.05, radius)]));
        Assert.Throws<ArgumentException>(() => new FlyweightSet(3, []));
        Assert.Throws<ArgumentException>(() => new FlyweightSet(3, [(0, radius), (0, radius)]));
        Assert.Throws<ArgumentException>(() => new FlyweightSet(3, [(0.05, radius), (-0.001, radius)]));
        Assert.Throws<ArgumentException>(() => new FlyweightSet(3, [(double.NaN, radius)]));
        Assert.Throws<ArgumentException>(() => new FlyweightSet(3, [(double.PositiveInfinity, radius)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new FlyweightSet(3, [(0.05, radius)]).Thrust(0.021, 500));
    }
}
