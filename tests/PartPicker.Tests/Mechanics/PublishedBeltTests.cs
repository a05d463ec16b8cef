using PartPicker.Mechanics;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>Belt tensions and lengths against worked examples of textbooks; keys as in docs/sources.md.</summary>
public sealed class PublishedBeltTests
{
    private const double Flat = Math.PI / 2;

    // BLT-1, [KG] ex. 11.17, p. 362: two V-belts of 750 mm² and 1200 kg/m³, groove 30°, friction 0.12, 7 MPa,
    // half a turn on 0.3 m at 1500 rpm; printed 171.690 kW and 2807 rpm for the greatest power.
    [Fact]
    [Trait("Outside", "BLT-1")]
    public void Tensions_power_and_best_speed_are_those_of_Khurmi_11_17()
    {
        LinearDensity mass = LinearDensity.FromKilogramsPerMeter(1200 * 750e-6);
        double v = Rotation.ToRadiansPerSecond(1500) * 0.15;
        double centrifugal = Centrifugal(mass, v);
        double tightNet = 7 * 750 - centrifugal;
        double slackNet = tightNet / TensionRatio(Degrees(15), 0.12, Math.PI);

        Relative.Equal(499.649, centrifugal, 1e-6);
        Relative.Equal(4750.35, tightNet, 1e-6);
        Relative.Equal(1106.98, slackNet, 5e-6);
        Relative.Equal(171.690e3, 2 * (tightNet - slackNet) * v, 3e-6);

        // Power is greatest where the belt's own pull takes a third of what it may carry.
        double best = v * Math.Sqrt(7 * 750 / (3 * centrifugal));
        Relative.Equal(2807.2, Rotation.ToRpm(best / 0.15), 2e-5);
        Relative.Equal(7 * 750 / 3.0, Centrifugal(mass, best), 1e-12);
    }

    // [KG] ex. 11.18, p. 363: groove 30°, 20 × 20 mm, 0.35 kg/m, 1.4 MPa, 140°, friction 0.15; printed 6.53
    // kW at the best speed, 23.094 m/s.
    [Fact]
    [Trait("Outside", "KG 11.18")]
    public void Power_at_the_best_speed_is_that_of_Khurmi_11_18()
    {
        const double allowed = 1.4 * 400;
        double v = Math.Sqrt(allowed / (3 * 0.35));
        double tightNet = allowed - Centrifugal(LinearDensity.FromKilogramsPerMeter(0.35), v);

        Relative.Equal(23.094, v, 5e-6);
        Relative.Equal(6529.7, tightNet * (1 - 1 / TensionRatio(Degrees(15), 0.15, Degrees(140))) * v, 1e-5);
    }

    // [KG] ex. 11.19, p. 363: 750 to 250 rpm on 1 m at 26.667 m/s, shafts 1.75 m apart, 375 mm² of 1000
    // kg/m³, groove 35°, friction 0.25, 2.5 MPa; printed 16.086 kW a belt and 5.66 m. The book's small sheave
    // is 0.333 m.
    [Fact]
    [Trait("Outside", "KG 11.19")]
    public void Power_and_length_are_those_of_Khurmi_11_19()
    {
        const double v = 26.667;
        double tightNet = 2.5 * 375 - Centrifugal(LinearDensity.FromKilogramsPerMeter(1000 * 375e-6), v);
        double lap = Math.PI - 2 * Math.Asin((0.5 - 1 / 6.0) / 1.75);

        Relative.Equal(158.04, lap * 180 / Math.PI, 3e-5);
        Relative.Equal(16.0831e3, tightNet * (1 - 1 / TensionRatio(Degrees(17.5), 0.25, lap)) * v, 3e-5);
        Relative.Equal(5.65808, BeltPath.Length(1 / 6.0, 0.5, 1.75), 1e-6);
    }

    // [KG] ex. 11.20, p. 367: ropes in grooves of 45°, friction 0.28, 160°, 1.5 kg/m, 2400 N, 4 m at 90 rpm,
    // 600 kW; printed 20 ropes.
    [Fact]
    [Trait("Outside", "KG 11.20")]
    public void Power_of_a_rope_is_that_of_Khurmi_11_20()
    {
        double v = Rotation.ToRadiansPerSecond(90) * 2;
        double tightNet = 2400 - Centrifugal(LinearDensity.FromKilogramsPerMeter(1.5), v);
        double power = tightNet * (1 - 1 / TensionRatio(Degrees(22.5), 0.28, Degrees(160))) * v;

        Relative.Equal(30.6315e3, power, 2e-6);
        Relative.Equal(19.588, 600e3 / power, 2e-5);
    }

    // BLT-2, [JIN] ex. 21-3, p. 580: 0.35 kg/m on 0.25 m at 1000 rpm and 0.625 m, shafts 1 m apart, groove
    // 38°, friction 0.28, 2.2 MPa on 236.66 mm²; T₁ and T₂ are totals. Printed 59.97, 520.7 and 102.7 N.
    [Fact]
    [Trait("Outside", "BLT-2")]
    public void Tensions_are_those_of_Jindal_21_3()
    {
        double centrifugal = Centrifugal(
            LinearDensity.FromKilogramsPerMeter(0.35), Rotation.ToRadiansPerSecond(1000) * 0.125);
        const double tight = 2.2 * 236.66;
        double lap = Math.PI - 2 * Math.Asin((0.625 - 0.25) / 2);
        double slack = centrifugal + (tight - centrifugal) / TensionRatio(Degrees(19), 0.28, lap);

        Relative.Equal(59.972, centrifugal, 1e-5);
        Relative.Equal(520.656, tight, 1e-5);
        Relative.Equal(102.717, slack, 1e-5);
    }

    // [BEV] ex. 7.1 and 7.2(a), p. 228: flat belt, 500 lb initially, friction 0.3, 165°, 60 ft/s: 44.40 hp;
    // with 1.2 lb/ft of belt 32.5 hp.
    [Theory]
    [InlineData(0, 44.40)]
    [InlineData(1.2, 32.484)]
    [Trait("Outside", "BEV 7.1/1")]
    [Trait("Outside", "BEV 7.1/2")]
    public void Power_of_a_flat_belt_is_that_of_Bevan_7(double poundsPerFoot, double horsepower)
    {
        // Both centrifugal parts come off twice the initial tension, in pounds, feet and 32.2 ft/s².
        double netSum = 2 * (500 - poundsPerFoot * 60 * 60 / 32.2);
        double ratio = TensionRatio(Flat, 0.3, Degrees(165));

        Relative.Equal(horsepower, netSum * (ratio - 1) / (ratio + 1) * 60 / 550, 1e-4);
    }

    // BLT-5, [SHI] ex. 17-4 (from memory, recomputed): 7.4 and 11 in, shafts 42.4 in apart, 1750 rpm, 13 hp
    // on three belts, design friction 0.5123 with the wedge in it, K_c 0.965. Book 11.1, 42.2, 64.4, 22.2 and
    // 32.2 lbf.
    [Fact]
    [Trait("Outside", "BLT-5")]
    public void Tensions_are_those_of_Shigley_17_4()
    {
        double centrifugal = 0.965 * Math.Pow(Math.PI * 7.4 * 1750 / 12 / 1000, 2);
        double difference = 63_025 * 13 / (3 * 1750 * 7.4 / 2);
        double lap = Math.PI - 2 * Math.Asin((11 - 7.4) / (2 * 42.4));
        BeltLoad belt = new BeltThrust(Flat, 0.5123, lap, lap).Load(drivenClamp: 0, difference);

        Relative.Equal(11.092, centrifugal, 3e-5);
        Relative.Equal(42.179, difference, 1e-5);
        Relative.Equal(3.05666, lap, 2e-6);
        Relative.Equal(4.7871, belt.TightNet / belt.SlackNet, 1e-5);
        Relative.Equal(64.408, belt.TightNet + centrifugal, 1e-5);
        Relative.Equal(22.229, belt.SlackNet + centrifugal, 2e-5);
        Relative.Equal(32.227, (belt.TightNet + belt.SlackNet) / 2, 1e-5);
    }

    // BLT-4, abstract of a paper on run-in V-belts ([CHI]): the largest useful tension ratio falls from 21 at a radius of
    // 51 mm to 5 at 21 mm. Over half a turn that is a groove friction of 0.9691 and 0.5123, which these two give back.
    [Trait("Outside", "BLT-4")]
    [Theory]
    [InlineData(0.9691, 21)]
    [InlineData(0.5123, 5)]
    public void Traction_limits_of_measured_belts_are_those_of_their_groove_friction(double groove, double ratio)
    {
        const double halfAngle = 13 * Math.PI / 180;
        Relative.Equal(ratio, TensionRatio(halfAngle, groove * Math.Sin(halfAngle), Math.PI), 2e-4);
    }

    // BLT-3: [JIN] ex. 21-2 (0.3, 0.6, 0.9 m: 3.239 m) and ex. 21-3 (0.25, 0.625, 1 m: 3.410 m), [KG] ex.
    // 11.15 (0.24, 0.6, 3 m: 7.33 m). The first two books take the exact length. The third takes the short
    // form, which gives 7.330269 m; the exact length is 3 µm more.
    [Theory]
    [InlineData(0.3, 0.6, 0.9, 3.238775)]
    [InlineData(0.25, 0.625, 1, 3.409707)]
    [InlineData(0.24, 0.6, 3, 7.330272)]
    [Trait("Outside", "BLT-3/1")]
    [Trait("Outside", "BLT-3/2")]
    [Trait("Outside", "BLT-3/3")]
    public void Belt_length_is_that_of_the_example(double small, double large, double centres, double length) =>
        Assert.Equal(length, BeltPath.Length(small / 2, large / 2, centres), 5e-7);

    // The length that the short form leaves out, for the third row above.
    [Fact]
    public void Short_form_of_Khurmi_11_15_falls_short_of_the_exact_length()
    {
        double shortForm = Math.PI / 2 * (0.6 + 0.24) + 2 * 3 + Math.Pow(0.6 - 0.24, 2) / (4 * 3);

        Assert.Equal(7.330269, shortForm, 5e-7);
        Assert.InRange(BeltPath.Length(0.12, 0.3, 3) - shortForm, 3e-6, 3.5e-6);
    }

    // Not published, recomputed: shafts 254 mm apart, pitch length 960.38899 mm.
    [Theory]
    [InlineData(3, 34.4991, 103.4972)]
    [InlineData(2, 47.0717, 94.1434)]
    [InlineData(1, 71.9999, 71.9999)]
    [InlineData(0.75, 81.9847, 61.4885)]
    public void A_belt_of_constant_length_runs_at_these_radii(double ratio, double driveMm, double drivenMm)
    {
        var belt = new BeltPath(0.254, 0.96038899, contactRadius: 0.03, contactTravel: 0, Degrees(13));
        BeltPosition position = belt.AtRatio(ratio);

        Assert.Equal(driveMm, position.DriveRadius * 1000, 1e-4);
        Assert.Equal(drivenMm, position.DrivenRadius * 1000, 1e-4);
    }

    [Fact]
    public void Laps_at_two_to_one_are_those_recomputed()
    {
        BeltPosition position = new BeltPath(0.254, 0.96038899, 0.03, 0, Degrees(13)).AtRatio(2);

        Assert.Equal(158.640, position.DriveWrap * 180 / Math.PI, 5e-4);
        Assert.Equal(201.360, position.DrivenWrap * 180 / Math.PI, 5e-4);
    }

    // T₁′/T₂′ of a belt that slips on its whole wrap: without clamp it always does.
    private static double TensionRatio(double halfAngle, double friction, double wrap)
    {
        BeltLoad load = new BeltThrust(halfAngle, friction, wrap, wrap).Load(drivenClamp: 0, effectiveTension: 1);
        return load.TightNet / load.SlackNet;
    }

    private static double Centrifugal(LinearDensity mass, double metresPerSecond) =>
        BeltThrust.CentrifugalTension(mass, Speed.FromMetersPerSecond(metresPerSecond)).Newtons;

    private static double Degrees(double degrees) => degrees * Math.PI / 180;
}
