using System.Text;

namespace PartPicker.Selection;

/// <summary>
/// Writes the page of fit rules from the rules themselves, so that the page cannot say another thing.
/// </summary>
public static class FitDocs
{
    /// <summary>The page, as Markdown.</summary>
    public static string Markdown()
    {
        StringBuilder page = new();
        page.Append($"""
            # What a part must keep to fit

            This page is written by `docs fit` from the lists of rules that the service asks.

            A rule measures one part against one machine.
            A part that breaks a rule is never ranked; the answer names part, rule and both numbers, in a sentence too.
            Every rule is asked, so that an answer shows all reasons at once.

            ## How a length is compared

            Two lengths that differ by less than {Words.Length(FitTolerance.LengthM)} are the same.
            A thousandth of an inch or a hundredth of a millimetre, lost by rounding, never decides whether a part fits.
            Angles are the same within {FitTolerance.AngleRad * 1e6:0.#} µrad.
            Stresses are the same within {FitTolerance.StressPa / 1e3:0.#} kPa.
            A load of less than {FitTolerance.ForceN:0.#} N is none.
            A torque of less than {FitTolerance.TorqueNm:0.#} N·m below zero is zero.
            Pitch lengths of belts are the same within {Words.Length(BeltRules.PitchLengthM)}: new belts of one size vary.
            Top widths of belts are the same within {Words.Length(BeltRules.TopWidthM)}, for the same reason.

            ## How a rule is told

            *Needed to compute*: a part that breaks the rule cannot be predicted either; the model has no answer for it.
            Such a rule is never waived. Any other part that does not fit can be predicted, and carries a caution.
            *A gap* is a check that cannot be made because a number is missing.
            It is not a pass: each pick lists its gaps with their ground, and a request may demand that there be none.
            A gap that may break something is *named* part by part beside the refusals; others are *counted* by rule.

            ## What a judgement stands on

            | ground | means |
            |---|---|

            """);
        foreach (FitGround ground in Enum.GetValues<FitGround>())
            page.Append($"| {Words.Camel(ground.ToString())} | {Meaning(ground)} |\n");
        page.Append("\nA part that is listed but breaks a rule is refused all the same.\n\n");
        Append(page, "Drive spring", DriveSpringRules.All);
        Append(page, "Shim under the drive spring", ShimRules.All);
        Append(page, "Flyweight", FlyweightRules.All);
        Append(page, "Flyweight with its station masses", StationRules.All);
        Append(page, "Driven spring", DrivenSpringRules.All);
        Append(page, "Driven spring in one hole with one helix", DrivenSideRules.All);
        Append(page, "Helix", HelixRules.All);
        Append(page, "Belt in place of the machine's own", BeltRules.All);
        page.Append("""
            ## Stress and buckling

            Stress is taken at full shift, where it is worst, and compared with a share of the tensile strength S_ut = A/dᵐ of
            [SHI] Table 10-4; outside the diameters of that table nothing is extrapolated, and the rule is not checked.
            Shares of shear stress are 0.45, 0.50 and 0.35 of drawn, tempered and austenitic wire with the factor of Bergsträsser,
            and 0.60, 0.65 and 0.55 with direct shear only where the set was removed.
            Where nobody said whether it was, a spring is refused or kept only if both agree.
            Combined stress is √(σ² + 3τ²) at the coil diameter at rest; its shares are 0.78, 0.87 and 0.61.
            Buckling is that of [EN 13906-1] with the ends held as the clutch states in `springFixing`.
            These are limits of static load. How many cycles a spring lasts is not computed.

            ## What a request adds

            These rules are no matter of fit; they stand among the refusals and the obstacles under these names.

            | rule | what must hold |
            |---|---|

            """);
        Append(page, RuleNames.OfRequest);
        page.Append("""

            ## What else stands in the way

            Where no listed set is within tolerance, `inTheWay` says why: what follows here, the rules of the request above, and, where a slot is left without a part, the rules of fit that emptied it.

            | name | what it says |
            |---|---|

            """);
        Append(page, RuleNames.OfTarget);
        return page.ToString();
    }

    private static void Append(StringBuilder page, IReadOnlyList<RuleName> names)
    {
        foreach (RuleName name in names)
            page.Append($"| `{name.Name}` | {name.Meaning} |\n");
    }

    private static string Meaning(FitGround ground) => ground switch
    {
        FitGround.Checked => "Both numbers are known and were compared.",
        FitGround.Listed => "A number is missing; the supplier lists the part for this clutch in every year of the machine.",
        FitGround.Unknown => "A number is missing, and no list stands in.",
        _ => throw new ArgumentOutOfRangeException(nameof(ground), ground, "No such ground."),
    };

    private static void Append<T>(StringBuilder page, string part, IReadOnlyList<FitRule<T>> rules)
    {
        page.Append($"## {part}\n\n| rule | what must hold | needed to compute | a gap is |\n|---|---|---|---|\n");
        foreach (FitRule<T> rule in rules)
        {
            string needed = rule.NeededToCompute ? "yes" : "no";
            string gap = rule.NamedWhenUnknown ? "named" : "counted";
            page.Append($"| `{rule.Name}` | {rule.Meaning} | {needed} | {gap} |\n");
        }

        page.Append('\n');
    }
}
