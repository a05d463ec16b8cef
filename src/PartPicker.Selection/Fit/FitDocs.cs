using System.Globalization;
using System.Text;

namespace PartPicker.Selection;

/// <summary>The page on fit, written from the rules themselves so that it cannot say anything else than they do.</summary>
public static class FitDocs
{
    /// <summary>The page, in Markdown.</summary>
    public static string Page()
    {
        var page = new StringBuilder($"""
            # Fit

            This page is written by the program from its rules (`docs fit` on the command line); a test holds it so.

            A part is proposed for a machine only when it breaks none of the rules below. Each judgement stands on one of three
            grounds:

            - *checked*: the part was compared with the machine by dimension, count or word;
            - *listed*: a number is missing, but the supplier lists the part for this clutch and these model-years;
            - *unknown*: a number is missing and nothing stands in for it.

            A rule that cannot be checked is never counted as passed. Gaps of rules marked "named" are named part by part, since a
            break there may do harm; the others are counted. A request may demand that every rule be checked. A part that is listed
            but breaks a rule is refused all the same.

            Lengths that differ by less than {(FitTolerance.LengthM * 1000).ToString("0.00", CultureInfo.InvariantCulture)} mm are the same, so that rounding in inches or in millimetres never decides.
            Where "needed" stands, the model has no answer for a part that breaks the rule: it is never waived, and such a part
            cannot even be predicted.

            Rules on stress, buckling and combined stress are not among them yet: the model does not compute stresses.

            """);
        Section(page, "Drive spring", DriveSpringRules.All);
        Section(page, "Shim under the drive spring", ShimRules.All);
        Section(page, "Flyweight", FlyweightRules.All);
        Section(page, "Driven spring", DrivenSpringRules.All);
        Section(page, "Driven spring in a hole, with a helix", DrivenSideRules.All);
        Section(page, "Helix", HelixRules.All);
        Section(page, "Belt, when parts are listed for a machine", BeltRules.All);
        return page.ToString();
    }

    private static void Section<T>(StringBuilder page, string title, IReadOnlyList<FitRule<T>> rules)
    {
        page.Append("\n## ").Append(title).Append("\n\n| rule | what must hold | needed | named |\n|---|---|---|---|\n");
        foreach (FitRule<T> rule in rules)
        {
            page.Append("| `").Append(rule.Name).Append("` | ").Append(rule.Meaning).Append(" | ")
                .Append(rule.NeededToCompute ? "yes" : "").Append(" | ").Append(rule.NamedWhenUnknown ? "yes" : "").Append(" |\n");
        }
    }
}
