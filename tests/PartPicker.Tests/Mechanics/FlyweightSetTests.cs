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
