using CsCheck;
using PartPicker.Selection;
using UnitsNet;
using Xunit;
using static PartPicker.Tests.Selection.Bench;

namespace PartPicker.Tests.Selection;

/// <summary>Every rule that compares lengths, at its limit, in inches and in millimetres.</summary>
public sealed class LengthRuleTests
{
    // The tolerance is a twentieth of a millimetre.
    private const double InsideMm = 0.04;
    private const double OutsideMm = 0.06;

    public static TheoryData<string> LengthRules => [.. LengthRule.All.Select(r => r.Name)];

    [Theory]
    [MemberData(nameof(LengthRules))]
    public void A_length_is_kept_just_inside_its_limit_and_refused_just_outside(string name)
    {
        LengthRule rule = LengthRule.All.Single(r => r.Name == name);
        double outward = rule.Side is Side.AtLeast or Side.Same or Side.Above ? -1 : 1;
        (double inside, double outside) = rule.Side == Side.Above
            ? (rule.LimitMm + OutsideMm, rule.LimitMm + InsideMm)
            : (rule.LimitMm + outward * InsideMm, rule.LimitMm + outward * OutsideMm);

        foreach (Func<double, Length> unit in new[] { Mm, millimetres => Length.FromInches(millimetres / 25.4) })
        {
            FitCheck kept = rule.Check(rule.Part(new Bench(), unit(Math.Max(0, inside))));
            Assert.Equal(FitVerdict.Kept, kept.Verdict);
            Assert.Empty(kept.Sentence);

            FitCheck broken = rule.Check(rule.Part(new Bench(), unit(outside)));
            Assert.Equal(FitVerdict.Broken, broken.Verdict);
            Assert.Equal(Length.Info.Name, broken.Measured.Dimension!.Name);
            Assert.Equal(outside, broken.Measured.Value * 1000, 1e-9);
            Assert.Equal(rule.LimitMm, broken.Limit.Value * 1000, 1e-9);
            Assert.Contains(Words.Length(broken.Measured.Value), broken.Sentence);
        }
    }

    [Theory]
    [MemberData(nameof(LengthRules))]
    public void The_same_length_in_inches_and_in_millimetres_never_disagrees(string name)
    {
        LengthRule rule = LengthRule.All.Single(r => r.Name == name);
        if (rule.Machine is not { } machine)
            return;

        // Tenths of a thousandth of an inch are decimals in both systems.
        int nominal = (int)Math.Round(rule.LimitMm / 0.00254);
        Gen.Select(Gen.Int[-400, 400], Gen.Int[-30, 30]).Sample((limitOff, partOff) =>
        {
            int limit = nominal + limitOff;
            var verdicts = new HashSet<FitVerdict>();
            foreach (Length of in Both(limit))
            {
                Bench bench = machine(new Bench(), of);
                foreach (Length has in Both(limit + partOff))
                    verdicts.Add(rule.Check(rule.Part(bench, has)).Verdict);
            }

            Assert.Single(verdicts);
        }, iter: 150);

        static Length[] Both(int count) => [Length.FromInches(count / 10_000.0), Mm(count * 254 / 100_000.0)];
    }

    [Fact]
    public void Each_length_that_the_rules_compare_is_among_those_tried()
    {
        string[] others =
        [
            "drive-spring-known", "drive-spring-stress", "drive-spring-buckling", "driven-spring-combined-stress", "drive-spring-coil-clearance", "flyweight-outward", "helix-self-lock", "driven-spring-known",
            "driven-spring-twist-range", "driven-spring-wound", "driven-spring-wound-diameter", "drive-spring-seat",
            "flyweight-known", "flyweight-family", "flyweight-set-count", "driven-spring-winding-hand", "driven-spring-legs",
            "driven-spring-twist-limit", "driven-spring-preload", "helix-mount",
        ];
        Assert.Equal(FitRules.Names.Order(), LengthRule.All.Select(r => r.Rule).Concat(others).Distinct().Order());
    }
}
