using PartPicker.Mechanics;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>Springs against worked examples and tables of books and standards; keys as in docs/sources.md.</summary>
public sealed class PublishedSpringTests
{
    // SPR-1, [BHA] ex. 10.1: P 1250 N, d 7, D 42, 8 active coils, G 81 370 MPa. The book's free length of
    // 109.337611 mm is 70 solid, 9 of gaps and this deflection.
    [Fact]
    [Trait("Outside", "SPR-1")]
    public void A_designed_spring_deflects_as_in_Bhandari_10_1() =>
        Relative.Equal(30.337611, 1250 / Rate(81_370, 7, 42, 8), 1e-7);

    // SPR-2, [BHA] ex. 10.19: d 6, D 36, 10 coils around d 5, D 30, 8 coils, the inner 15 mm shorter, P 1000
    // N, G 81 370 MPa. The load is shared so that the outer one is deflected 15 mm more.
    [Fact]
    [Trait("Outside", "SPR-2")]
    public void Two_nested_springs_share_a_load_as_in_Bhandari_10_19()
    {
        double outer = Rate(81_370, 6, 36, 10);
        double inner = Rate(81_370, 5, 30, 8);
        double outerDeflection = (1000 + inner * 15) / (outer + inner);

        Relative.Equal(706.021471, outer * outerDeflection, 1e-7);
        Relative.Equal(293.978529, inner * (outerDeflection - 15), 1e-7);
        Relative.Equal(24.988839, outerDeflection, 1e-7);
        Relative.Equal(9.988839, outerDeflection - 15, 1e-7);
    }

    // SPR-3, [SAD] ex. 8.3, p. 229: d 3, C 6, 15 coils, G 84 GPa; printed 9.72 N/mm.
    [Fact]
    [Trait("Outside", "SPR-3")]
    public void Rate_is_that_of_Sadhu_Singh_8_3() => Relative.Equal(9.72222, Rate(84_000, 3, 18, 15), 1e-6);

    // [SAD] ex. 8.12, p. 236: d 6, outside diameter 75, G 84 GPa: 412.3 N bend one turn by 9.954 mm, 382.5 N
    // by 9.234 mm. The forces are the book's, rounded to four figures.
    [Theory]
    [InlineData(412.3, 9.954)]
    [InlineData(382.5, 9.234)]
    [Trait("Outside", "SAD 8.12/1")]
    [Trait("Outside", "SAD 8.12/2")]
    public void One_turn_deflects_as_in_Sadhu_Singh_8_12(double force, double deflectionPerTurn) =>
        Assert.Equal(deflectionPerTurn, force / Rate(84_000, 6, 75 - 6, 1), 1.5e-3);

    // SPR-4, [SHI] ex. 10-1 (from memory, recomputed): music wire d 0.037 in, outside diameter 7/16 in,
    // squared ends, 12.5 turns, G 11.85 Mpsi.
    [Fact]
    [Trait("Outside", "SPR-4")]
    public void Rate_and_solid_length_are_those_of_Shigley_10_1()
    {
        Length wire = Length.FromInches(0.037);

        Relative.Equal(4.11565, RateInchPounds(11.85e6, 0.037, 7 / 16.0 - 0.037, 10.5), 2e-6);

        // The book rounds D from 0.4005 to 0.400 in and so prints 4.13 lbf/in.
        Assert.Equal(4.13, RateInchPounds(11.85e6, 0.037, 0.400, 10.5), 5e-3);
        Relative.Equal(0.4995, HelicalSpring.SolidLength(wire, 12.5, groundEnds: false).Inches, 1e-12);
    }

    // [WEN] ex. 8.2, p. 163: d 0.105, D 0.620 in, 35 lb at 0.5 in, G 11.85 Mpsi, closed ends; printed 70.0
    // lb/in and 12.79 turns, two of which are closed.
    [Fact]
    [Trait("Outside", "WEN 8.2")]
    public void Coils_are_those_of_Wentzell_8_2() =>
        Assert.Equal(12.79, RateInchPounds(11.85e6, 0.105, 0.620, 1) / 70.0 + 2, 5e-3);

    // [JIN] ex. 8-7, p. 228: music wire d 1.016, outside diameter 12.6 mm, 16 turns of which 14 act, G 81
    // GPa.
    [Fact]
    [Trait("Outside", "JIN 8-7")]
    public void Rate_is_that_of_Jindal_8_7() => Assert.Equal(0.496, Rate(81_000, 1.016, 12.6 - 1.016, 14), 5e-4);

    // SPR-7, [MOT] p. 751: d 0.0625, D 0.60 in, G 11.2 Mpsi, 8 lb/in, free length 2.75 in, squared and
    // ground; printed solid length 0.898 in and 14.8 lb there. Recomputed: 12.3624 active coils, 0.89765 in,
    // 14.8188 lb.
    [Fact]
    [Trait("Outside", "SPR-7")]
    public void Coils_solid_length_and_solid_load_are_those_of_Mott()
    {
        double activeCoils = RateInchPounds(11.2e6, 0.0625, 0.60, 1) / 8;
        double solid = HelicalSpring.SolidLength(Length.FromInches(0.0625), activeCoils + 2, groundEnds: true).Inches;

        Relative.Equal(12.3624, activeCoils, 5e-6);
        Relative.Equal(0.89765, solid, 5e-6);
        Relative.Equal(14.8188, 8 * (2.75 - solid), 5e-6);
    }

    // [EN 13906-1], cold-coiled springs under static load, by hand for d 5, D 40 mm and 6 coils:
    // 6 (0.0015 · 1600 / 5 + 0.1 · 5) = 6 · 0.98 mm.
    [Fact]
    [Trait("Outside", "EN 13906-1")]
    public void Coil_clearance_is_that_of_the_standard() =>
        Relative.Equal(
            5.88,
            HelicalSpring.CoilClearance(Length.FromMillimeters(5), Length.FromMillimeters(40), 6).Millimeters,
            1e-12);

    // [EN 13906-1], by hand for d 5, D 40 and a pitch of 12 mm: 0.1 (144 − 0.8 · 12 · 5 − 0.2 · 25)/40.
    [Fact]
    public void Growth_to_solid_is_that_of_the_standard() =>
        Relative.Equal(0.2275, HelicalSpring.GreatestGrowth(Mm(5), Mm(40), Mm(12)).Millimeters, 1e-12);

    // [JIN] ch. 8, by hand: 4.25 coils of 1.5 mm, wound up by a quarter turn: 1.5 (4.25 + 1 + 0.25).
    [Fact]
    public void A_wound_body_is_longer_by_its_twist() =>
        Relative.Equal(8.25, TorsionSpring.WoundSolidLength(Mm(1.5), 4.25, 0.25).Millimeters, 1e-12);

    [Theory]
    [InlineData(0, 40, 6)]
    [InlineData(5, 0, 6)]
    [InlineData(5, 40, 0)]
    public void A_spring_of_nothing_has_no_rate(double wire, double mean, double coils)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Rate(80_000, wire, mean, coils));
        Assert.Throws<ArgumentOutOfRangeException>(() => MomentPerTurn(200_000, wire, mean, coils));
    }

    // [SHI] Table 10-5 prints each modulus twice, in Mpsi and in GPa to one decimal: a slip in copying one column
    // shows against the other. The table's own rounding is below 0.15 %. The Mpsi of A227, and of E of A228, are
    // from memory.
    [Theory]
    [InlineData("music-wire-a228", 0.030, 29.5, 12.0)]
    [InlineData("music-wire-a228", 0.045, 29.0, 11.85)]
    [InlineData("music-wire-a228", 0.100, 28.5, 11.75)]
    [InlineData("music-wire-a228", 0.180, 28.0, 11.6)]
    [InlineData("hard-drawn-a227", 0.030, 28.8, 11.7)]
    [InlineData("hard-drawn-a227", 0.045, 28.7, 11.6)]
    [InlineData("hard-drawn-a227", 0.100, 28.6, 11.5)]
    [InlineData("hard-drawn-a227", 0.180, 28.5, 11.4)]
    [InlineData("oil-tempered-a229", 0.100, 28.5, 11.2)]
    [InlineData("chrome-vanadium-a232", 0.100, 29.5, 11.2)]
    [InlineData("chrome-silicon-a401", 0.100, 29.5, 11.2)]
    [InlineData("stainless-302-a313", 0.100, 28.0, 10.0)]
    [Trait("Outside", "SHI Table 10-5/1")]
    [Trait("Outside", "SHI Table 10-5/2")]
    [Trait("Outside", "SHI Table 10-5/3")]
    [Trait("Outside", "SHI Table 10-5/4")]
    [Trait("Outside", "SHI Table 10-5/5")]
    [Trait("Outside", "SHI Table 10-5/6")]
    [Trait("Outside", "SHI Table 10-5/7")]
    [Trait("Outside", "SHI Table 10-5/8")]
    [Trait("Outside", "SHI Table 10-5/9")]
    [Trait("Outside", "SHI Table 10-5/10")]
    [Trait("Outside", "SHI Table 10-5/11")]
    [Trait("Outside", "SHI Table 10-5/12")]
    public void Moduli_agree_with_the_inch_column_of_the_table(
        string material, double wireInches, double elasticMpsi, double shearMpsi)
    {
        WireMaterial wire = WireMaterial.Find(material)!;
        Length diameter = Length.FromInches(wireInches);

        Relative.Equal(elasticMpsi * 1e6, wire.ElasticModulus(diameter).PoundsForcePerSquareInch, 1.5e-3);
        Relative.Equal(shearMpsi * 1e6, wire.ShearModulus(diameter).PoundsForcePerSquareInch, 1.5e-3);
    }

    // TOR-1, [JIN] ex. 8-9, p. 230: music wire d 1.5, D 14.5, 4.25 coils, two legs of 20 mm, E 200 GPa, 0.78
    // S_ut with S_ut = 2211/d^0.145 ([SHI] Table 10-4), rod 11.5 mm. The book allows for coil friction by
    // 10.8 per turn where the plain form has 64 per radian. Printed .327, .0225, 13.46, .23; recomputed here.
    [Fact]
    [Trait("Outside", "TOR-1")]
    public void A_twisted_spring_turns_and_closes_as_in_Jindal_8_9()
    {
        const double index = 14.5 / 1.5;
        double curvature = (4 * index * index - index - 1) / (4 * index * (index - 1));
        double moment = 0.78 * 2211 / Math.Pow(1.5, 0.145) * Math.PI * Math.Pow(1.5, 3) / (32 * curvature);
        double endCoils = 40 / (3 * Math.PI * 14.5);
        double bodyTurns = moment / MomentPerTurn(200_000, 1.5, 14.5, 4.25);
        double wound = TorsionSpring.WoundMeanDiameter(Length.FromMillimeters(14.5), 4.25, bodyTurns).Millimeters;

        Relative.Equal(497.248, moment, 1e-5);
        Relative.Equal(0.29270, endCoils, 2e-5);
        Relative.Equal(1423.28, MomentPerTurn(200_000, 1.5, 14.5, 4.25 + endCoils), 5e-6);
        Relative.Equal(0.32686, bodyTurns, 2e-5);
        Relative.Equal(0.022511, moment / MomentPerTurn(200_000, 1.5, 14.5, endCoils), 3e-5);
        Relative.Equal(13.4645, wound, 5e-6);
        Assert.Equal(0.23224, (wound - 1.5 - 11.5) / 2, 2e-5);
    }

    // TOR-2, [SHI] ex. 10-8 (answers from memory, recomputed): music wire d 0.072, outside diameter 19/32 in,
    // 4.25 coils, legs of 1 in, E 28.5 Mpsi, 0.78 S_ut with S_ut = 201/d^0.145 kpsi, pin 0.400 in.
    [Fact]
    [Trait("Outside", "TOR-2")]
    public void A_twisted_spring_turns_and_closes_as_in_Shigley_10_8()
    {
        const double mean = 19 / 32.0 - 0.072;
        const double index = mean / 0.072;
        double curvature = (4 * index * index - index - 1) / (4 * index * (index - 1));
        double moment = 0.78 * 201e3 / Math.Pow(0.072, 0.145) * Math.PI * Math.Pow(0.072, 3) / (32 * curvature);
        double coils = 4.25 + 2 / (3 * Math.PI * mean);
        double bodyTurns = moment / MomentPerTurnInchPounds(28.5e6, 0.072, mean, 4.25);
        double inside = TorsionSpring.WoundMeanDiameter(Length.FromInches(mean), 4.25, bodyTurns).Inches - 0.072;

        Relative.Equal(7.5488, moment, 1e-5);
        Relative.Equal(4.65672, coils, 2e-6);
        Relative.Equal(29.188, MomentPerTurnInchPounds(28.5e6, 0.072, mean, coils), 1e-5);
        Relative.Equal(93.105, 360 * moment / MomentPerTurnInchPounds(28.5e6, 0.072, mean, coils), 1e-4);
        Assert.Equal(0.42230, inside, 5e-6);
        Assert.Equal(0.0223, inside - 0.400, 5e-5);
    }

    // [EN 13906-3], recomputed: d 3, D 24 mm, 5 coils, E 206 GPa: 37.920 N·mm per degree.
    [Fact]
    public void Twist_rate_is_that_of_the_standard() =>
        Relative.Equal(
            37.920,
            TorsionSpring.TwistRate(
                Pressure.FromMegapascals(206_000), Length.FromMillimeters(3), Length.FromMillimeters(24), 5)
                .NewtonMetersPerRadian * 1000 * Math.PI / 180,
            1e-5);

    private static double Rate(double shearMPa, double wireMm, double meanMm, double coils) =>
        HelicalSpring.Rate(Pressure.FromMegapascals(shearMPa), Mm(wireMm), Mm(meanMm), coils).NewtonsPerMillimeter;

    private static double RateInchPounds(double shearPsi, double wireIn, double meanIn, double coils) =>
        HelicalSpring.Rate(Pressure.FromPoundsForcePerSquareInch(shearPsi), Inch(wireIn), Inch(meanIn), coils)
            .PoundsForcePerInch;

    // N·mm per turn in the form that allows for coil friction: 10.8 per turn against 64 per radian.
    private static double MomentPerTurn(double elasticMPa, double wireMm, double meanMm, double coils) =>
        TorsionSpring.TwistRate(Pressure.FromMegapascals(elasticMPa), Mm(wireMm), Mm(meanMm), coils)
            .NewtonMetersPerRadian * 1000 * 64 / 10.8;

    private static double MomentPerTurnInchPounds(double elasticPsi, double wireIn, double meanIn, double coils) =>
        TorsionSpring.TwistRate(Pressure.FromPoundsForcePerSquareInch(elasticPsi), Inch(wireIn), Inch(meanIn), coils)
            .NewtonMetersPerRadian / Torque.FromPoundForceInches(1).NewtonMeters * 64 / 10.8;

    private static Length Mm(double millimetres) => Length.FromMillimeters(millimetres);

    private static Length Inch(double inches) => Length.FromInches(inches);
}
