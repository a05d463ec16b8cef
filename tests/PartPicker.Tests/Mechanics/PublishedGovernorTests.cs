using PartPicker.Mechanics;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>
/// Flyweights against centrifugal governors and clutches of textbooks: a bell-crank lever is a radius that rises by
/// its arm ratio with the sleeve, a clutch shoe is one that rises by 1. Keys as in docs/sources.md.
/// </summary>
public sealed class PublishedGovernorTests
{
    // The books in pounds and inches take 32.2 ft/s².
    private const double GravityFeet = 32.2;

    // CEN-1, [SAR] ex. 7.7, p. 203: two balls of 3 kg, ball arm 0.12, sleeve arm 0.08 m, 0.12 m at 320 rpm,
    // spring 20 N/mm, lift 15 mm. Printed 1217.0 N because the book takes π as 3.147 there; 327.9 rpm.
    [Fact]
    [Trait("Outside", "CEN-1")]
    public void Spring_load_and_speed_at_full_lift_are_those_of_Sarkar_7_7()
    {
        FlyweightSet balls = Governor(3, 0.12, 0.12 / 0.08, 0.015);
        double load = balls.Thrust(0, Rotation.ToRadiansPerSecond(320));
        LinearCurve spring = LinearCurve.Line(x0: 0.1, y0: load, slope: -20_000, from: 0.05, to: 0.1);

        Relative.Equal(1212.777, load, 1e-6);

        // The load rises faster than the centrifugal force, so full lift decides.
        Engagement fullLift = Engagement.Of(spring, 0.1, balls, 0.015, frictionShare: 0);
        Relative.Equal(327.967, fullLift.Rpm, 2e-6);
        Assert.Equal(0.015, fullLift.Travel);
    }

    // [SAR] ex. 7.8, p. 204: 3 kg at 0.2 m and 240 rpm, arms 0.11 and 0.15 m, 7.5 % more speed for 4 mm of
    // lift. Printed 557.8 N and 24.1 N/mm with π 3.147.
    [Fact]
    [Trait("Outside", "SAR 7.8")]
    public void Spring_load_and_stiffness_are_those_of_Sarkar_7_8()
    {
        FlyweightSet balls = Governor(3, 0.2, 0.11 / 0.15, 0.004);
        double low = balls.Thrust(0, Rotation.ToRadiansPerSecond(240));
        double high = balls.Thrust(0.004, Rotation.ToRadiansPerSecond(240 * 1.075));

        Relative.Equal(555.86, low, 1e-5);
        Relative.Equal(23.98, (high - low) / 4, 2e-4);
    }

    // CEN-2, [SAR] ex. 7.9, p. 204: 5 kg, pivot at 0.14 m, 0.11 m at 240 rpm, arms 0.12 and 0.10 m, lift 50
    // mm, 41/39 of the speed at full lift, 30 N of friction; printed 6.8 cm and 6.7 rpm. With both arms at
    // one angle their obliquity cancels and the radius is a line of slope 1.2. The weight of the leaning
    // balls loads the sleeve by 2 m g 0.03/(0.10 cos): the book takes it off at both ends, though at full
    // lift the balls lean outwards and help.
    [Fact]
    [Trait("Outside", "CEN-2")]
    public void Initial_compression_and_insensitive_band_are_those_of_Sarkar_7_9()
    {
        FlyweightSet balls = Governor(5, 0.11, 1.2, 0.05);
        double weight = 2 * 5 * 9.81 * 0.03 / (0.10 * Math.Sqrt(1 - 0.25 * 0.25));
        double low = balls.Thrust(0, Rotation.ToRadiansPerSecond(240)) - weight;
        double high = balls.Thrust(0.05, Rotation.ToRadiansPerSecond(240 * 41.0 / 39)) - weight;
        double stiffness = (high - low) / 50;
        double middle = low + stiffness * 25;

        Relative.Equal(803.389, low, 1e-6);
        Relative.Equal(1393.731, high, 1e-6);
        Relative.Equal(6.80444, low / stiffness / 10, 1e-6);
        Relative.Equal(
            6.72271,
            240 * (1 + 41.0 / 39) / 2 * (Math.Sqrt(1 + 30 / middle) - Math.Sqrt(1 - 30 / middle)),
            1e-6);
    }

    // CEN-3, [BEV] ex. 13.5, p. 470: balls of 3 lb 2.5 in out at 240 rpm, arms 4.5 and 2 in, lift 0.5 in, 5 %
    // more speed at full lift, sleeve 15 lb; the balls' own weight acts 2 in outside the pivot at no lift.
    // Printed 59.3.
    [Fact]
    [Trait("Outside", "CEN-3")]
    public void Stiffness_with_weights_is_that_of_Bevan_13_5()
    {
        FlyweightSet balls = Governor(3 / GravityFeet, 2.5 / 12, 4.5 / 2, 0.5 / 12);
        double low = balls.Thrust(0, Rotation.ToRadiansPerSecond(240)) - 15 - 2 * 3;
        double high = balls.Thrust(0.5 / 12, Rotation.ToRadiansPerSecond(252))
            - 15 - 2 * 3 * (2 + 0.5 * 4.5 / 2) / 2;

        Relative.Equal(34.1717, low, 2e-6);
        Relative.Equal(63.8239, high, 2e-6);
        Relative.Equal(59.3043, (high - low) / 0.5, 2e-6);

        // One ball's force F₂: the sleeve feels both, through the arms.
        Relative.Equal(12.2604, balls.Thrust(0, Rotation.ToRadiansPerSecond(240)) / (2 * 4.5 / 2), 5e-6);
    }

    // CEN-4, [BEV] ex. 13.3, p. 466: balls of 3 lb from 3 to 4.5 in, 300 to 318 rpm, arms 4 and 2 in; the
    // speed at 3.5 in. Printed 308 rpm, rounded up; the rate is not printed.
    [Fact]
    [Trait("Outside", "CEN-4")]
    public void Rate_and_speed_between_are_those_of_Bevan_13_3()
    {
        FlyweightSet balls = Governor(3 / GravityFeet, 3.0 / 12, 2, 0.75 / 12);
        double low = balls.Thrust(0, Rotation.ToRadiansPerSecond(300));
        double rate = (balls.Thrust(0.75 / 12, Rotation.ToRadiansPerSecond(318)) - low) / 0.75;
        double between = Math.Sqrt((low + rate * 0.25) / balls.ThrustPerSpeedSquared(0.25 / 12));

        Relative.Equal(84.0326, rate, 1e-6);
        Relative.Equal(307.843, Rotation.ToRpm(between), 2e-6);
    }

    // [BEV] ex. 13.4, p. 468: balls of 5 lb from 5 to 7 in, 240 to 252 rpm, arms 6 and 4 in, two ball springs
    // of 1.5 lb/in, each stretched by both balls and so worth 2 · 2 · 1.5 lb/in to one of them; printed 23
    // lb/in.
    [Fact]
    [Trait("Outside", "BEV 13.4")]
    public void Stiffness_beside_ball_springs_is_that_of_Bevan_13_4()
    {
        const double arms = 6.0 / 4;
        const double lift = 2 / arms;
        FlyweightSet balls = Governor(5 / GravityFeet, 5.0 / 12, arms, lift / 12);
        double asked = (balls.Thrust(lift / 12, Rotation.ToRadiansPerSecond(252))
            - balls.Thrust(0, Rotation.ToRadiansPerSecond(240))) / lift;

        Relative.Equal(22.98, asked - 2 * arms * arms * 4 * 1.5, 2e-4);
    }

    // CEN-5, [KG] ex. 10.36, p. 320: four shoes of 8 kg at 0.16 m, gap 5 mm, spring 500 N and 50 N/mm each,
    // drum 0.2 m, friction 0.3, 500 rpm; printed 36.1 kW. The two speeds are recomputed, not printed.
    [Fact]
    [Trait("Outside", "CEN-5")]
    public void A_centrifugal_clutch_lifts_touches_and_drives_as_in_Khurmi_10_36()
    {
        var shoe = new FlyweightSet(1, [(8, Radius(0.16, 1, 0.005))]);
        LinearCurve spring = LinearCurve.Line(x0: 0.1, y0: 500, slope: -50_000, from: 0.05, to: 0.1);
        double speed = Rotation.ToRadiansPerSecond(500);
        double press = shoe.Thrust(0.005, speed) - spring.At(0.1 - 0.005);

        Relative.Equal(188.735, Engagement.Of(spring, 0.1, shoe, contactTravel: 0, frictionShare: 0).Rpm, 3e-6);
        Relative.Equal(227.622, Engagement.Of(spring, 0.1, shoe, contactTravel: 0.005, frictionShare: 0).Rpm, 3e-6);
        Relative.Equal(36_051.1, 4 * 0.3 * press * 0.2 * speed, 2e-6);
    }

    // [KG] ex. 10.35, p. 319: 15 kW at 900 rpm, four shoes, friction 0.25, drum 0.15, shoe 0.12 m, springs
    // that hold to three quarters of the speed; printed 2.28 kg. [JIN] ex. 22-10, p. 596: 40 kW at 1400 rpm,
    // 0.22, 0.16 and 0.13 m, four fifths; printed 1.93 kg. Last an exercise of
    // the open web: 25 kW at 1200 rpm, 0.3, 0.1 and 0.075 m, half the speed; printed 1.866 kg.
    [Theory]
    [InlineData(15e3, 900, 0.25, 0.15, 0.12, 0.75, 2.2752)]
    [InlineData(40e3, 1400, 0.22, 0.16, 0.13, 0.80, 1.9264)]
    [Trait("Outside", "KG 10.35/1")]
    [Trait("Outside", "KG 10.35/2")]
    public void Shoe_mass_carries_the_power_of_the_example(
        double power, double rpm, double friction, double drum, double radius, double engagedShare, double mass)
    {
        var shoes = new FlyweightSet(4, [(mass, Radius(radius, 1, 0.001))]);
        double speed = Rotation.ToRadiansPerSecond(rpm);
        double press = shoes.Thrust(0, speed) - shoes.Thrust(0, engagedShare * speed);

        Relative.Equal(power, friction * press * drum * speed, 3e-5);
    }

    // [KG] ch. 18 (from memory, recomputed): 2.5 kg, arms 120 and 80 mm, 0.12 m at 290 rpm, 310 rpm at 15 mm
    // of lift; printed 831 N, 1128 N and 19.8 N/mm with rounded speeds.
    [Trait("Outside", "KG-18")]
    [Fact]
    public void Sleeve_loads_are_those_of_a_Hartnell_governor_in_Khurmi()
    {
        FlyweightSet balls = Governor(2.5, 0.12, 1.5, 0.015);
        double low = balls.Thrust(0, Rotation.ToRadiansPerSecond(290));
        double high = balls.Thrust(0.015, Rotation.ToRadiansPerSecond(310));

        Relative.Equal(830.03, low, 1e-5);
        Relative.Equal(1126.31, high, 1e-5);
        Relative.Equal(19.75, (high - low) / 15, 3e-4);
    }

    private static FlyweightSet Governor(double mass, double radius, double armRatio, double lift) =>
        new(2, [(mass, Radius(radius, armRatio, lift))]);

    private static SmoothCurve Radius(double radius, double slope, double travel) =>
        new([(0, radius), (travel, radius + slope * travel)]);
}
