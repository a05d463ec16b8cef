using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;
using Xunit;
using static PartPicker.Tests.Selection.Bench;

namespace PartPicker.Tests.Selection;

/// <summary>Stress, buckling and growth of springs just inside and just outside, in inches and in millimetres.</summary>
public sealed class SpringStressRuleTests
{
    // 8 F D/(π d³) with F = 19 (94.5 − 47.5) = 893 N, D 52, d 5.4 mm.
    private const double PlainMPa = 8 * 893 * 52.0 / (Math.PI * 5.4 * 5.4 * 5.4);
    private const double Index = 52 / 5.4;
    private static readonly double StrengthMPa = 1974 / Math.Pow(5.4, 0.108);

    [Theory]
    [InlineData(YesNo.Yes)]
    [InlineData(YesNo.No)]
    public void Shear_stress_is_kept_just_inside_its_share_and_refused_just_outside(YesNo setRemoved)
    {
        double share = setRemoved == YesNo.Yes ? 0.65 : 0.50;
        double factor = setRemoved == YesNo.Yes ? 1 + 0.5 / Index : (4 * Index + 2) / (4 * Index - 3);
        double rate = 19 * share * StrengthMPa / (factor * PlainMPa);
        foreach ((double off, FitVerdict verdict) in new[] { (-1e-4, FitVerdict.Kept), (1e-4, FitVerdict.Broken) })
        {
            Bench metric = Drive(s => s with
            {
                SetRemoved = setRemoved,
                Rate = ForcePerLength.FromNewtonsPerMillimeter(rate * (1 + off)),
            });
            Bench inch = Drive(s => s with
            {
                SetRemoved = setRemoved,
                WireDiameter = Length.FromInches(5.4 / 25.4),
                OutsideDiameter = Length.FromInches(57.4 / 25.4),
                Rate = ForcePerLength.FromPoundsForcePerInch(rate * (1 + off) / 0.17512683524647636),
            });
            foreach (FitCheck check in new[] { metric, inch }.Select(b => FitRules.Check("drive-spring-stress", b)))
            {
                Assert.Equal(verdict, check.Verdict);
                Assert.Equal(share * StrengthMPa * (1 + off), check.Measured.Value / 1e6, 1e-5);
                Assert.Equal(share * StrengthMPa, check.Limit.Value / 1e6, 1e-6);
            }
        }
    }

    [Theory]
    [InlineData(10, nameof(FitVerdict.Kept))]
    [InlineData(19, nameof(FitVerdict.NotChecked))]
    [InlineData(30, nameof(FitVerdict.Broken))]
    public void Where_nobody_said_whether_the_set_was_removed_both_must_agree(double rate, string verdict)
    {
        FitCheck check = FitRules.Check("drive-spring-stress", Drive(s => s with
        {
            SetRemoved = null,
            Rate = ForcePerLength.FromNewtonsPerMillimeter(rate),
        }));
        Assert.Equal(verdict, check.Verdict.ToString());
        if (check.Verdict == FitVerdict.NotChecked)
            Assert.StartsWith("whether its set was removed", check.Sentence);
    }

    [Fact]
    public void Shims_press_the_spring_further_and_stress_it_more()
    {
        Bench bench = new();
        MachineModel machine = bench.Model();
        FitRule<DriveSpring> rule = DriveSpringRules.All.Single(r => r.Name == "drive-spring-stress");
        double bare = rule.Check(bench.DriveSpring, machine).Measured.Value;
        double onShim = rule.Check(bench.DriveSpring, machine.OnShims(0.002)).Measured.Value;

        Assert.Equal((94.5 - 47.5 + 2) / (94.5 - 47.5), onShim / bare, 1e-12);
    }

    [Fact]
    public void A_wire_outside_its_table_or_without_a_material_is_not_checked()
    {
        FitCheck thick = FitRules.Check("drive-spring-stress", Drive(s => s with { Material = "music-wire-a228", WireDiameter = Mm(6.6) }));
        Assert.Equal(FitVerdict.NotChecked, thick.Verdict);
        Assert.StartsWith("strength of music-wire-a228 at 6.6 mm", thick.Sentence);
        foreach (string rule in new[] { "drive-spring-stress", "drive-spring-buckling" })
        {
            FitCheck none = FitRules.Check(rule, Drive(s => s with { Material = null }));
            Assert.Equal(FitVerdict.NotChecked, none.Verdict);
            Assert.Contains("material", none.Sentence);
        }

        Bench driven = new();
        FitCheck combined = FitRules.Check(
            "driven-spring-combined-stress", driven with { DrivenSpring = driven.DrivenSpring with { Material = null } });
        Assert.Equal(FitVerdict.NotChecked, combined.Verdict);
        Assert.Contains("material", combined.Sentence);
    }

    // Hinged at both ends, D 26 mm of A401: s_k by the standard's form, and full shift is 47.5 mm.
    [Theory]
    [InlineData(-0.06, nameof(FitVerdict.Kept))]
    [InlineData(0.06, nameof(FitVerdict.Broken))]
    public void A_slender_spring_bows_where_the_standard_says(double offMm, string verdict)
    {
        double free = FreeLengthThatJustBows(26);
        foreach (Func<double, Length> unit in new[] { Mm, mm => Length.FromInches(mm / 25.4) })
        {
            Bench bench = Drive(s => s with { OutsideDiameter = unit(31.4), FreeLength = unit(free + offMm) });
            FitCheck check = FitRules.Check("drive-spring-buckling", bench with
            {
                DriveClutch = bench.DriveClutch with { SpringFixing = SpringFixing.BothHinged },
            });
            Assert.Equal(verdict, check.Verdict.ToString());
            Assert.Equal(free + offMm - 47.5, check.Measured.Value * 1000, 1e-6);
        }
    }

    [Fact]
    public void Between_flat_seats_the_same_spring_does_not_bow() =>
        Assert.Equal(
            FitCheck.Holds,
            FitRules.Check("drive-spring-buckling", Drive(s => s with { OutsideDiameter = Mm(31.4), FreeLength = Mm(80) })));

    // p = (L − 2d)/Nₐ for closed, ground ends.
    [Theory]
    [InlineData(-0.06, nameof(FitVerdict.Broken))]
    [InlineData(-0.04, nameof(FitVerdict.Kept))]
    public void A_spring_grown_at_full_shift_must_run_free_in_the_cup(double boreOffMm, string verdict)
    {
        double climb = (Math.Pow(94.5 - 10.8, 2) - Math.Pow(47.5 - 10.8, 2)) / Math.Pow(5.05 * Math.PI, 2);
        double grown = Math.Sqrt(52 * 52 + climb) + 5.4;
        foreach (Func<double, Length> unit in new[] { Mm, mm => Length.FromInches(mm / 25.4) })
        {
            Bench bench = Drive(s => s with { ActiveCoils = 5.05 });
            FitCheck check = FitRules.Check("drive-spring-outside-diameter", bench with
            {
                DriveClutch = bench.DriveClutch with { CupBore = unit(grown + boreOffMm) },
            });
            Assert.Equal(verdict, check.Verdict.ToString());
            Assert.Equal(grown, check.Measured.Value * 1000, 1e-9);
        }
    }

    [Theory]
    [InlineData(-1e-4, nameof(FitVerdict.Kept))]
    [InlineData(1e-4, nameof(FitVerdict.Broken))]
    public void Twist_and_push_together_must_stay_below_the_share_of_the_wire(double off, string verdict)
    {
        Bench bench = new();
        FitCheck now = FitRules.Check("driven-spring-combined-stress", bench);
        Assert.Equal(0.87 * 1974 / Math.Pow(5.9, 0.108), now.Limit.Value / 1e6, 1e-6);
        Assert.Equal(Stress(bench), now.Measured.Value / 1e6, 1e-6);

        // Both stresses grow with their rates alike.
        double factor = now.Limit.Value / now.Measured.Value * (1 + off);
        Bench harder = bench with
        {
            DrivenSpring = bench.DrivenSpring with
            {
                Rate = ForcePerLength.FromPoundsForcePerInch(9 * factor / 0.17512683524647636),
                TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(9 * factor),
            },
        };
        Assert.Equal(verdict, FitRules.Check("driven-spring-combined-stress", harder).Verdict.ToString());
    }

    [Theory]
    [InlineData(-1e-4, nameof(FitVerdict.Kept))]
    [InlineData(1e-4, nameof(FitVerdict.Broken))]
    public void Without_a_stated_limit_bending_limits_the_twist(double off, string verdict)
    {
        Bench bench = new();
        bench = bench with { DrivenSpring = bench.DrivenSpring with { TwistLimitDeg = null } };
        FitCheck now = FitRules.Check("driven-spring-twist-limit", bench);
        double rate = 9 * now.Limit.Value / now.Measured.Value * (1 + off);
        FitCheck check = FitRules.Check("driven-spring-twist-limit", bench with
        {
            DrivenSpring = bench.DrivenSpring with { TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(rate) },
        });

        Assert.Equal(verdict, check.Verdict.ToString());
        Assert.Equal(Pressure.Info.Name, check.Measured.Dimension!.Name);
    }

    [Fact]
    public void Twist_stiffens_the_push_only_where_the_clutch_says_so()
    {
        Bench bench = new();
        Bench stiff = bench with { DrivenClutch = bench.DrivenClutch with { TwistStiffening = YesNo.Yes }, Run = _ => null };
        Bench plain = bench with { Run = _ => null };
        ShiftPoint with = stiff.Predicted().Curve[0];
        ShiftPoint without = plain.Predicted().Curve[0];
        Assert.True(with.Upshift!.Rpm > without.Upshift!.Rpm);

        Bench unknown = stiff with { DrivenSpring = stiff.DrivenSpring with { ActiveCoils = null } };
        Assert.Equal(without.Upshift.Rpm, unknown.Predicted().Curve[0].Upshift!.Rpm);
    }

    private static double Stress(Bench bench)
    {
        const double mean = 49.7 + 5.9;
        const double index = mean / 5.9;
        double twist = 70 * Math.PI / 180 + HelixRules.Cam(bench.Helix, bench.Model()).Turn(LengthRule.OpeningMm / 1000);
        double inner = (4 * index * index - index - 1) / (4 * index * (index - 1));
        double bending = inner * 32 * 9000 * twist / (Math.PI * Math.Pow(5.9, 3));
        double shear = (4 * index + 2) / (4 * index - 3) * 8 * 9 * (100 - 60 + LengthRule.OpeningMm) * mean
            / (Math.PI * Math.Pow(5.9, 3));
        return Math.Sqrt(bending * bending + 3 * shear * shear);
    }

    // By halving: the longer, the further it is pressed and the sooner it bows.
    private static double FreeLengthThatJustBows(double meanMm)
    {
        const double ratio = 77.2 / 203.4;
        double low = 60;
        double high = 300;
        for (int i = 0; i < 100; i++)
        {
            double free = (low + high) / 2;
            double slenderness = Math.PI * meanMm / free;
            double root = 1 - (1 - ratio) / (0.5 + ratio) * slenderness * slenderness;
            bool bows = root >= 0 && free - 47.5 > free * 0.5 / (1 - ratio) * (1 - Math.Sqrt(root));
            (low, high) = bows ? (low, free) : (free, high);
        }

        return low;
    }

    private static Bench Drive(Func<DriveSpring, DriveSpring> change)
    {
        Bench bench = new();
        return bench with { DriveSpring = change(bench.DriveSpring) };
    }
}
