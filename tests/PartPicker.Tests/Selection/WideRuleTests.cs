using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;
using Xunit;
using static PartPicker.Tests.Selection.Bench;

namespace PartPicker.Tests.Selection;

/// <summary>Rules that compare words, counts and twists, and those of shims and belts.</summary>
public sealed class WideRuleTests
{
    private readonly Bench bench = new();

    [Theory]
    [InlineData(SpringSeat.Flat, SpringEnds.ClosedGround, true)]
    [InlineData(SpringSeat.Flat, SpringEnds.OpenGround, true)]
    [InlineData(SpringSeat.Flat, SpringEnds.Closed, false)]
    [InlineData(SpringSeat.Stepped, SpringEnds.Closed, true)]
    [InlineData(SpringSeat.Stepped, SpringEnds.OpenGround, false)]
    public void Ground_ends_sit_on_a_flat_seat_and_others_on_a_stepped_one(SpringSeat seat, SpringEnds ends, bool kept) =>
        Verdict(kept, "drive-spring-seat", bench with
        {
            DriveClutch = bench.DriveClutch with { SpringSeat = seat },
            DriveSpring = bench.DriveSpring with { Ends = ends },
        });

    [Fact]
    public void An_arm_known_in_grams_against_another_has_no_absolute_rpm()
    {
        Bench relative = bench with
        {
            Flyweight = new() { Id = "fw", ReferenceArmId = "other", MassOverReference = Mass.FromGrams(2) },
        };
        FitCheck check = FitRules.Check("flyweight-known", relative);
        Assert.Equal(FitVerdict.Broken, check.Verdict);
        Assert.Contains("only in grams against other", check.Sentence);
    }

    [Fact]
    public void Ramps_arms_and_rollers_each_belong_in_a_clutch_of_their_family()
    {
        Flyweight arm = bench.Flyweight;
        Flyweight roller = arm with { ArmLength = null, RollerDiameter = Mm(20) };
        Flyweight ramp = arm with { AdjusterCurves = [new("1", arm.RadiusCurve)], RadiusCurve = [] };
        (DriveFamily Family, Flyweight Body, bool Kept)[] cases =
        [
            (DriveFamily.ArmOnRoller, arm, true), (DriveFamily.ArmOnRoller, roller, false), (DriveFamily.ArmOnRoller, ramp, false),
            (DriveFamily.SlidingRoller, arm, false), (DriveFamily.SlidingRoller, roller, true), (DriveFamily.SlidingRoller, ramp, false),
            (DriveFamily.RollerOnAdjustableRamp, arm, false), (DriveFamily.RollerOnAdjustableRamp, roller, false),
            (DriveFamily.RollerOnAdjustableRamp, ramp, true),
        ];
        foreach ((DriveFamily family, Flyweight body, bool kept) in cases)
            Verdict(kept, "flyweight-family", bench with { DriveClutch = bench.DriveClutch with { Family = family }, Flyweight = body });
    }

    [Theory]
    [InlineData(3, true)]
    [InlineData(2, false)]
    [InlineData(4, false)]
    public void A_set_has_as_many_arms_as_the_clutch(int count, bool kept) =>
        Verdict(kept, "flyweight-set-count", bench with { Flyweight = bench.Flyweight with { SetCount = count } });

    [Fact]
    public void Winding_hand_legs_and_mount_are_compared_by_word()
    {
        Verdict(false, "driven-spring-winding-hand", bench with { DrivenSpring = bench.DrivenSpring with { WindingHand = WindingHand.Left } });
        Verdict(false, "driven-spring-legs", bench with { DrivenSpring = bench.DrivenSpring with { Legs = SpringLegs.Hooked } });
        Verdict(false, "helix-mount", bench with { Helix = bench.Helix with { Mount = "bolted" } });
        Verdict(true, "helix-mount", bench with { Helix = bench.Helix with { Mount = "Splined" } });
    }

    [Theory]
    [InlineData(0.001, true)]
    [InlineData(-0.001, false)]
    public void Full_shift_must_not_twist_a_spring_beyond_its_limit(double moreDeg, bool kept)
    {
        double full = 70 + HelixRules.Cam(bench.Helix, bench.Model()).Turn(LengthRule.OpeningMm / 1000) * 180 / Math.PI;
        Verdict(kept, "driven-spring-twist-limit", bench with { DrivenSpring = bench.DrivenSpring with { TwistLimitDeg = full + moreDeg } });
    }

    [Theory]
    [InlineData(-69.9, true)]
    [InlineData(-70.1, false)]
    public void A_hole_and_legs_that_unwind_the_spring_are_refused(double offsetDeg, bool kept)
    {
        Bench legs = bench with { DrivenSpring = bench.DrivenSpring with { LegOffsetDeg = offsetDeg } };
        Verdict(kept, "driven-spring-preload", legs);
        Assert.Equal(kept, legs.Pick().Answer is not null);
    }

    [Fact]
    public void A_spring_that_is_only_compressed_may_have_any_legs()
    {
        Bench compressed = bench with
        {
            DrivenClutch = bench.DrivenClutch with { Family = DrivenFamily.CompressionOnly, Holes = [] },
            DrivenSpring = bench.DrivenSpring with { TwistRate = null, LegOffsetDeg = -5, WindingHand = WindingHand.Left },
        };
        PartSet fitted = bench.Fitted with { Hole = "none" };
        PickAnswer answer = compressed.Answer(r => r with
        {
            Fitted = fitted,
            Baseline = new Baseline(fitted, 2000, [], 8000, default),
        });
        Assert.NotEmpty(answer.Picks);
        Assert.DoesNotContain(answer.Refusals, r => r.Slot == Slot.DrivenSpring);
    }

    [Theory]
    [InlineData("shim-outside-diameter", 62.04, 40, true)]
    [InlineData("shim-outside-diameter", 62.06, 40, false)]
    [InlineData("shim-inside-diameter", 60, 37.96, true)]
    [InlineData("shim-inside-diameter", 60, 37.94, false)]
    public void A_shim_goes_into_the_cup_and_over_the_post(string rule, double outsideMm, double insideMm, bool kept)
    {
        foreach (Func<double, Length> unit in new[] { Mm, millimetres => Length.FromInches(millimetres / 25.4) })
        {
            var shim = new Shim { Id = "sh", Thickness = Mm(1), OutsideDiameter = unit(outsideMm), InsideDiameter = unit(insideMm) };
            FitCheck check = ShimRules.All.Single(r => r.Name == rule).Check(shim, bench.Model());
            Assert.Equal(kept ? FitVerdict.Kept : FitVerdict.Broken, check.Verdict);
        }
    }

    [Fact]
    public void Shims_shorten_the_spring_and_are_judged_at_the_shorter_length()
    {
        var shim = new Shim { Id = "sh", Thickness = Mm(5), OutsideDiameter = Mm(60), InsideDiameter = Mm(40) };
        PickAnswer answer = (bench with { DriveClutch = bench.DriveClutch with { ShimLimit = 3 }, Shelf = [shim] }).Answer(r => r with
        {
            Count = 50,
            Keep = new HashSet<Slot> { Slot.Flyweight, Slot.DrivenSpring, Slot.Hole, Slot.Helix },
        });

        // 47.5 mm are left at full shift; the spring with its clearance is solid at 31.2 mm: three shims fit.
        Assert.Equal([null, 1, 2, 3], answer.Picks.Select(p => p.Parts.Shims?.Count).Order());
        double[] engagements = [.. answer.Picks.OrderBy(p => p.Parts.Shims?.Count ?? 0).Select(p => p.Prediction.EngagementRpm!.Value)];
        Assert.Equal(engagements.Order(), engagements);
        Assert.All(answer.Picks.Where(p => p.Parts.Shims is not null), p => Assert.Contains(Slot.DriveSpring, p.Changes));
    }

    [Theory]
    [InlineData("belt-pitch-length", 993, 30, true)]
    [InlineData("belt-pitch-length", 993.1, 30, false)]
    [InlineData("belt-top-width", 992, 30.3, true)]
    [InlineData("belt-top-width", 992, 30.4, false)]
    public void A_belt_has_the_length_and_width_of_the_machines_own(string rule, double lengthMm, double widthMm, bool kept)
    {
        MachineModel machine = (bench with { Belt = bench.Belt with { TopWidth = Mm(30) } }).Model();
        Belt belt = bench.Belt with { PitchLength = Mm(lengthMm), TopWidth = Mm(widthMm) };
        FitCheck check = BeltRules.All.Single(r => r.Name == rule).Check(belt, machine);
        Assert.Equal(kept ? FitVerdict.Kept : FitVerdict.Broken, check.Verdict);
    }

    private static void Verdict(bool kept, string rule, Bench bench)
    {
        FitCheck check = FitRules.Check(rule, bench);
        Assert.Equal((rule, kept ? FitVerdict.Kept : FitVerdict.Broken), (rule, check.Verdict));
        if (!kept)
            Assert.NotEmpty(check.Sentence);
    }
}
