using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What a request must keep beyond its form: a measured profile, and kept parts that fit.</summary>
internal static class RequestCheck
{
    public static void CheckProfile(PickRequest request, List<RequestProblem> problems)
    {
        string[] guessed = [.. CautionWriter.ClassDefaults(request.Machine)];
        if (guessed.Length > 0)
        {
            problems.Add(new RequestProblem(
                "machine", RequestProblemCodes.ProfileNotMeasured, request.Machine.Machine.Id,
                $"a profile that is measured or drawn; these values are only usual for the class: {string.Join(", ", guessed)}. "
                + "Measure them on the clutch and put them into the catalog"));
        }
    }

    /// <summary>A kept part must keep every rule, also those that the model could do without.</summary>
    public static void CheckKept(
        IReadOnlySet<Slot> keep, SetUp fitted, MachineModel machine, List<RequestProblem> problems)
    {
        Check(Slot.DriveSpring, DriveSpringRules.All, fitted.DriveSpring, fitted.DriveSpring.Id);
        Check(Slot.Flyweight, FlyweightRules.All, fitted.Flyweight.Body, fitted.Flyweight.Body.Id);
        Check(Slot.DrivenSpring, DrivenSpringRules.All, fitted.Driven.Spring, fitted.Driven.Spring.Id);
        Check(Slot.Helix, HelixRules.All, fitted.Driven.Helix, fitted.Driven.Helix.Id);

        // With a hole or a helix open there may be one that the spring fits.
        if (keep.Contains(Slot.Hole) && keep.Contains(Slot.Helix))
            Check(Slot.DrivenSpring, DrivenSideRules.All, fitted.Driven, fitted.Driven.Label);

        void Check<T>(Slot slot, IReadOnlyList<FitRule<T>> rules, T part, string label)
        {
            foreach (FitRule<T> rule in keep.Contains(slot) ? rules : [])
            {
                FitCheck check = rule.Check(part, machine);
                if (check.Verdict == FitVerdict.Broken)
                {
                    problems.Add(new RequestProblem(
                        "keep", RequestProblemCodes.KeptPartDoesNotFit, $"{Words.Camel(slot.ToString())}: {label}",
                        $"a kept part that fits; by rule {rule.Name} {check.Sentence}. Leave this slot open, or correct the part's "
                        + "numbers in the catalog"));
                }
            }
        }
    }
}
