using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What a request must keep beyond its form: a measured profile, kept parts that fit, a size that can be searched.</summary>
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

    /// <summary>A kept slot whose pool came out empty holds a part that does not fit.</summary>
    public static void CheckKept(PickRequest request, CandidatePools pools, FitReport report, List<RequestProblem> problems)
    {
        foreach (Slot slot in request.Keep.Order())
        {
            foreach (Refusal refusal in report.Refusals.Where(r => r.Slot == slot && IsEmpty(slot, pools)))
            {
                problems.Add(new RequestProblem(
                    "keep", RequestProblemCodes.KeptPartDoesNotFit, $"{Words.Camel(slot.ToString())}: {refusal.Part}",
                    $"a kept part that fits; by rule {refusal.Rule} {refusal.Sentence}. Leave this slot open, or correct the part's "
                    + "numbers in the catalog"));
            }
        }
    }

    public static void CheckSize(CandidatePools pools, List<RequestProblem> problems)
    {
        if (pools.Combinations > PartSelection.MaxCombinations)
        {
            problems.Add(new RequestProblem(
                "keep", RequestProblemCodes.TooManyCombinations, Words.Invariant($"{pools.Combinations} sets"),
                Words.Invariant($"at most {PartSelection.MaxCombinations} sets: keep one or more slots as fitted")));
        }
    }

    private static bool IsEmpty(Slot slot, CandidatePools pools) => slot switch
    {
        Slot.DriveSpring => pools.DriveSprings.Count == 0,
        Slot.Flyweight => pools.Flyweights.Count == 0,
        _ => pools.Driven.Count == 0,
    };
}
