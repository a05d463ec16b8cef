using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;
using Xunit;
using static PartPicker.Tests.Selection.Bench;

namespace PartPicker.Tests.Selection;

/// <summary>What each rule says just inside and just outside its limit, and without its numbers.</summary>
public sealed class FitRuleTests
{
    // The tolerance is a twentieth of a millimetre.
    private const double InsideMm = 0.04;
    private const double OutsideMm = 0.06;

    public static TheoryData<string> Names => [.. FitRules.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_parts_on_the_bench_keep_every_rule(string rule) =>
        Assert.Equal(FitVerdict.Kept, FitRules.Check(rule, new Bench()).Verdict);

    [Theory]
    [InlineData("drive-spring-known", "nothing whole is known of its force")]
    [InlineData("driven-spring-known", "its compression or its twist is not known")]
    public void A_spring_of_which_nothing_whole_is_known_is_refused(string rule, string sentence)
    {
        Bench bench = new Bench() with { DriveSpring = new() { Id = "ds" }, DrivenSpring = new() { Id = "vs" } };
        FitCheck check = FitRules.Check(rule, bench);
        Assert.Equal(FitVerdict.Broken, check.Verdict);
        Assert.StartsWith(sentence, check.Sentence);
    }

    [Fact]
    public void A_driven_spring_whose_twist_alone_is_known_is_refused() =>
        Assert.Equal(FitVerdict.Broken, FitRules.Check("driven-spring-known", new Bench() with
        {
            DrivenSpring = new() { Id = "vs", TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(9) },
        }).Verdict);

    [Fact]
    public void Solid_length_with_coil_clearance_is_what_must_fit()
    {
        // D = 57.4 − 5.4 = 52 mm, Nₐ = 3.05: S_a = 3.05 (0.0015·52²/5.4 + 0.1·5.4) = 3.937889 mm.
        const double clearance = 3.05 * (0.0015 * 52 * 52 / 5.4 + 0.54);
        FitCheck check = FitRules.Check("drive-spring-solid-length", With(Mm(47.5 - clearance + OutsideMm)));
        Assert.Equal(FitVerdict.Broken, check.Verdict);
        Assert.Equal(47.5 + OutsideMm, check.Measured.Value * 1000, 1e-9);
        Assert.Equal(FitVerdict.Kept, FitRules.Check("drive-spring-solid-length", With(Mm(47.5 - clearance + InsideMm))).Verdict);

        static Bench With(Length solid)
        {
            var bench = new Bench();
            return bench with { DriveSpring = bench.DriveSpring with { SolidLength = solid } };
        }
    }

    [Fact]
    public void Without_a_stated_solid_length_the_coils_give_it()
    {
        var bench = new Bench();
        DriveSpring coils = bench.DriveSpring with { SolidLength = null, TotalCoils = 8.5, ActiveCoils = null };

        // d (N_t + 1) = 51.3 mm with ends as cut, d N_t = 45.9 mm with ground ones; 47.5 mm are left.
        FitCheck cut = FitRules.Check("drive-spring-solid-length", bench with { DriveSpring = coils with { Ends = SpringEnds.Closed } });
        Assert.Equal(FitVerdict.Broken, cut.Verdict);
        Assert.Equal(51.3, cut.Measured.Value * 1000, 1e-9);
        FitCheck ground = FitRules.Check(
            "drive-spring-solid-length", bench with { DriveSpring = coils with { Ends = SpringEnds.ClosedGround } });
        Assert.Equal(FitVerdict.Kept, ground.Verdict);
        Assert.Equal(45.9, ground.Measured.Value * 1000, 1e-9);
    }

    [Theory]
    [InlineData(0, false)]
    [InlineData(0.09, false)]
    [InlineData(0.11, true)]
    public void A_measured_drive_spring_must_push_at_rest(double restLoad, bool kept)
    {
        var bench = new Bench();
        FitCheck check = FitRules.Check("drive-spring-free-length", bench with
        {
            DriveSpring = bench.DriveSpring with { LoadTable = Curve((0.04, 900), (0.072, restLoad), (0.08, 0)) },
        });
        Assert.Equal(Verdict(kept), check.Verdict);
        Assert.Equal(Force.Info.Name, check.Measured.Dimension!.Name);
        Assert.Equal(restLoad, check.Measured.Value, 1e-9);
    }

    [Fact]
    public void A_measured_table_that_ends_before_the_installed_length_is_not_called_loose()
    {
        var bench = new Bench();
        bench = bench with { DriveSpring = bench.DriveSpring with { LoadTable = Curve((0.04, 900), (0.06, 600)) } };
        Assert.Equal(FitVerdict.NotChecked, FitRules.Check("drive-spring-free-length", bench).Verdict);
        FitCheck range = FitRules.Check("drive-spring-measured-range", bench);
        Assert.Equal(FitVerdict.Broken, range.Verdict);
        Assert.Contains("its table ends at 60.0 mm", range.Sentence);
    }

    [Theory]
    [InlineData("body")]
    [InlineData("heel station")]
    [InlineData("middle station")]
    [InlineData("tip station")]
    public void A_mass_that_does_not_move_outward_everywhere_is_refused(string what)
    {
        var bench = new Bench();
        CurvePoint[] stands = MmCurve((0, 40), (10, 50), (20, 50), (28, 60));
        Flyweight body = what switch
        {
            "body" => bench.Flyweight with { RadiusCurve = stands },
            "heel station" => bench.Flyweight with { HeelCurve = stands },
            "middle station" => bench.Flyweight with { MiddleCurve = stands, MiddleMasses = [0.005] },
            _ => bench.Flyweight with { TipCurve = stands },
        };
        FitCheck check = FitRules.Check("flyweight-outward", bench with { Flyweight = body });
        Assert.Equal(FitVerdict.Broken, check.Verdict);
        Assert.Equal(0, check.Measured.Value, 1e-12);
        Assert.Equal($"the radius of its {what} does not grow with travel everywhere", check.Sentence);
    }

    [Fact]
    public void A_curve_that_turns_back_beyond_full_shift_is_kept()
    {
        var bench = new Bench();
        Bench beyond = bench with
        {
            Flyweight = bench.Flyweight with { RadiusCurve = MmCurve((0, 40), (12, 50), (24.5, 60), (28, 58)) },
        };
        Assert.Equal(FitVerdict.Broken, FitRules.Check("flyweight-outward", beyond).Verdict);
        Bench later = bench with
        {
            Flyweight = bench.Flyweight with { RadiusCurve = MmCurve((0, 40), (12, 50), (24.5, 60), (26, 61), (28, 58)) },
        };
        Assert.Equal(FitVerdict.Kept, FitRules.Check("flyweight-outward", later).Verdict);
    }

    [Theory]
    [InlineData(10.1, true)]
    [InlineData(9.9, false)]
    public void A_helix_must_be_steeper_than_the_friction_of_the_cam(double finishDeg, bool kept)
    {
        var bench = new Bench();
        FitCheck check = FitRules.Check("helix-self-lock", bench with
        {
            DrivenClutch = bench.DrivenClutch with { CamFrictionDeg = 10 },
            Helix = bench.Helix with { FinishDeg = finishDeg, FinishTravel = Mm(5) },
        });
        Assert.Equal(Verdict(kept), check.Verdict);
        Assert.Equal(finishDeg, check.Measured.Value * 180 / Math.PI, 1e-9);
        Assert.Equal(10, check.Limit.Value * 180 / Math.PI, 1e-9);
        Assert.Equal(
            kept ? "" : "angle 9.9° does not exceed the friction angle 10°: it locks itself", check.Sentence);
    }

    [Theory]
    [InlineData(69.9, true)]
    [InlineData(70.1, false)]
    public void A_helix_with_the_friction_of_the_cam_must_stay_below_a_right_angle(double startDeg, bool kept)
    {
        var bench = new Bench();
        FitCheck check = FitRules.Check("helix-self-lock", bench with
        {
            DrivenClutch = bench.DrivenClutch with { CamFrictionDeg = 20 },
            Helix = bench.Helix with { HelixDeg = startDeg },
        });
        Assert.Equal(Verdict(kept), check.Verdict);
        if (!kept)
            Assert.Equal("angle with friction 90.1° reaches 90°", check.Sentence);
    }

    [Fact]
    public void A_measured_torque_must_reach_from_the_hole_to_full_shift()
    {
        var bench = new Bench();
        double hole = Degrees(70);
        double full = hole + HelixRules.Cam(bench.Helix, bench.Model()).Turn(LengthRule.OpeningMm / 1000);
        Assert.Equal(FitVerdict.Kept, Check(hole + 0.5e-6, full - 0.5e-6).Verdict);

        FitCheck late = Check(hole + 2e-6, full);
        Assert.Equal(FitVerdict.Broken, late.Verdict);
        Assert.Equal(hole, late.Measured.Value, 1e-12);
        Assert.Equal("its torque is known from 70°; hole 2 gives 70°", late.Sentence);

        FitCheck early = Check(hole, full - 2e-6);
        Assert.Equal(FitVerdict.Broken, early.Verdict);
        Assert.Equal(full, early.Measured.Value, 1e-12);

        // The far end counts also where the near one is short by less than the tolerance.
        Assert.Equal(FitVerdict.Broken, Check(hole + 0.5e-6, full - 0.1).Verdict);

        FitCheck Check(double from, double to) => FitRules.Check("driven-spring-twist-range", bench with
        {
            DrivenSpring = bench.DrivenSpring with { TorqueTable = Curve((from, 10), (to, 25)) },
        });
    }

    [Theory]
    [InlineData(-0.09, true)]
    [InlineData(-0.11, false)]
    public void The_line_through_two_torques_must_not_unwind_the_spring(double torqueInHole, bool kept)
    {
        var bench = new Bench();
        FitCheck check = FitRules.Check("driven-spring-wound", bench with
        {
            DrivenSpring = bench.DrivenSpring with
            {
                FirstTwistDeg = 90,
                FirstTorque = Torque.FromNewtonMeters(torqueInHole + 2),
                SecondTwistDeg = 130,
                SecondTorque = Torque.FromNewtonMeters(torqueInHole + 6),
            },
        });
        Assert.Equal(Verdict(kept), check.Verdict);
        Assert.Equal(torqueInHole, check.Measured.Value, 1e-9);
        Assert.Equal(Torque.Info.Name, check.Measured.Dimension!.Name);
    }

    [Theory]
    [InlineData(InsideMm, true)]
    [InlineData(OutsideMm, false)]
    public void Wound_up_the_inside_diameter_shrinks_by_the_turns_of_the_body(double shortMm, bool kept)
    {
        // D′ = N_b D/(N_b + θ_b), θ_b = θ N_b/N_a: with N_b = 4.5, N_a = 5 and θ from the hole and the cam.
        var bench = new Bench();
        double turns = (Degrees(70) + HelixRules.Cam(bench.Helix, bench.Model()).Turn(LengthRule.OpeningMm / 1000)) / (2 * Math.PI);
        double mean = (44 - shortMm + 5.9) * (4.5 + turns * 4.5 / 5) / 4.5;
        FitCheck check = FitRules.Check("driven-spring-wound-diameter", bench with
        {
            DrivenSpring = bench.DrivenSpring with { InsideDiameter = Mm(mean - 5.9), BodyCoils = 4.5 },
        });
        Assert.Equal(Verdict(kept), check.Verdict);
        Assert.Equal(44 - shortMm, check.Measured.Value * 1000, 1e-9);
        Assert.Equal(44, check.Limit.Value * 1000, 1e-9);
    }

    [Fact]
    public void A_rule_without_its_numbers_is_not_checked_and_says_what_is_missing()
    {
        var bench = new Bench();
        DriveSpring spring = bench.DriveSpring;
        DrivenSpring driven = bench.DrivenSpring;
        Missing("drive-spring-free-length", bench with { DriveSpring = new() { Id = "ds" } }, "its force");
        Missing("drive-spring-solid-length", bench with { DriveSpring = spring with { SolidLength = null } }, "solid length");
        Missing("drive-spring-coil-clearance", bench with { DriveSpring = spring with { ActiveCoils = null } }, "active coils");
        Missing("drive-spring-outside-diameter", bench with { DriveSpring = spring with { OutsideDiameter = null } }, "outside diameter");
        Missing("drive-spring-outside-diameter", bench with { DriveClutch = bench.DriveClutch with { CupBore = null } }, "cup bore of the clutch");
        Missing("drive-spring-inside-diameter", bench with { DriveSpring = spring with { WireDiameter = null } }, "wire diameter");
        Missing("drive-spring-inside-diameter", bench with { DriveClutch = bench.DriveClutch with { PostDiameter = null } }, "post diameter");
        Missing("flyweight-outward", bench with { Flyweight = bench.Flyweight with { TipCurve = MmCurve((0, 44), (20, 70)) } }, "radius curve");
        Missing("flyweight-arm-length", bench with { Flyweight = bench.Flyweight with { ArmLength = null } }, "arm length");
        Missing("flyweight-arm-length", bench with { DriveClutch = bench.DriveClutch with { ArmLength = null } }, "arm length of the clutch");
        Missing("helix-cam-radius", bench with { Helix = bench.Helix with { CamRadius = null } }, "cam radius");
        Missing("driven-spring-free-length", bench with { DrivenSpring = new() { Id = "vs" } }, "its compression");
        Missing("driven-spring-inside-diameter", bench with { DrivenSpring = driven with { InsideDiameter = null } }, "inside diameter");
        Missing("driven-spring-inside-diameter", bench with { DrivenClutch = bench.DrivenClutch with { HubDiameter = null } }, "hub diameter");
        Missing("driven-spring-wound-diameter", bench with { DrivenSpring = driven with { ActiveCoils = null } }, "active coils");
        Missing("driven-spring-wound-diameter", bench with { DrivenClutch = bench.DrivenClutch with { HubDiameter = null } }, "hub diameter");

        static void Missing(string rule, Bench bench, string what)
        {
            FitCheck check = FitRules.Check(rule, bench);
            Assert.Equal((rule, FitVerdict.NotChecked), (rule, check.Verdict));
            Assert.Contains(what, check.Sentence);
        }
    }

    [Fact]
    public void A_check_that_needs_several_numbers_names_those_that_are_missing_alone()
    {
        var bench = new Bench();
        DriveSpring spring = bench.DriveSpring;
        DrivenSpring driven = bench.DrivenSpring with { TwistLimitDeg = null };
        Assert.Equal("material", Lacking("drive-spring-stress", spring with { Material = null }));
        Assert.Equal("wire diameter and material", Lacking("drive-spring-stress", spring with { WireDiameter = null, Material = null }));
        Assert.Equal("outside diameter", Lacking("drive-spring-buckling", spring with { OutsideDiameter = null }));
        Assert.Equal("active coils", Lacking("drive-spring-coil-clearance", spring with { ActiveCoils = null }));
        Assert.Equal("wire diameter", Lacking("drive-spring-inside-diameter", spring with { WireDiameter = null }));
        Assert.Equal("material", LackingDriven("driven-spring-combined-stress", driven with { Material = null }));
        Assert.Equal("twist limit, or wire diameter", LackingDriven("driven-spring-twist-limit", driven with { WireDiameter = null }));
        Assert.Equal("solid length or body coils", LackingDriven("driven-spring-solid-length", driven with { ActiveCoils = null }));
        Assert.Equal(
            "wire diameter and active coils",
            LackingDriven("driven-spring-wound-diameter", driven with { WireDiameter = null, ActiveCoils = null }));
        Assert.Equal(
            "wire diameter, coil diameter and material",
            LackingDriven("driven-spring-combined-stress", driven with { WireDiameter = null, InsideDiameter = null, Material = null }));

        string Lacking(string rule, DriveSpring part) => FitRules.Check(rule, bench with { DriveSpring = part }).Sentence;
        string LackingDriven(string rule, DrivenSpring part) => FitRules.Check(rule, bench with { DrivenSpring = part }).Sentence;
    }

    [Fact]
    public void A_stated_solid_length_of_a_driven_spring_needs_no_count_of_its_coils()
    {
        var bench = new Bench();
        bench = bench with { DrivenSpring = bench.DrivenSpring with { ActiveCoils = null, SolidLength = Mm(20) } };
        FitCheck check = FitRules.Check("driven-spring-solid-length", bench);
        double turns = (Degrees(70) + HelixRules.Cam(bench.Helix, bench.Model()).Turn(LengthRule.OpeningMm / 1000)) / (2 * Math.PI);
        Assert.Equal(FitVerdict.Kept, check.Verdict);
        Assert.Equal(20 + 5.9 * turns, check.Measured.Value * 1000, 1e-9);
    }

    [Fact]
    public void What_is_not_checked_is_reported_and_never_counted_as_kept()
    {
        var bench = new Bench();
        PickAnswer answer = (bench with
        {
            Helix = bench.Helix with { CamRadius = null },
            DrivenSpring = bench.DrivenSpring with { TwistLimitDeg = null, Material = null },
        }).Answer();

        // A gap that may break something is named once for its part; every gap is counted.
        Assert.Equal(
            ["driven-spring-combined-stress", "driven-spring-twist-limit"], answer.NotChecked.Select(n => n.Rule).Order());
        Assert.All(answer.NotChecked, n => Assert.Equal((Slot.DrivenSpring, "vs"), (n.Slot, n.Part)));
        Assert.Equal(1, answer.UnknownByRule["helix-cam-radius"]);
        Assert.Equal(1, answer.UnknownByRule["driven-spring-twist-limit"]);
        Assert.DoesNotContain(answer.Picks[0].FitMargins, m => m.Rule == "helix-cam-radius");
        Assert.Contains(
            new FitGap(Slot.Helix, "hx", "helix-cam-radius", FitGround.Unknown, "cam radius"), answer.Picks[0].FitGaps);
    }

    private static FitVerdict Verdict(bool kept) => kept ? FitVerdict.Kept : FitVerdict.Broken;

    private static double Degrees(double degrees) => degrees * Math.PI / 180;
}
