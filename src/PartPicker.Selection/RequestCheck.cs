using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What a request must keep beyond its form: targets within the engine, a measured profile, kept parts that fit.</summary>
internal static class RequestCheck
{
    public static void Check(PickRequest request, MachineModel machine, List<RequestProblem> problems)
    {
        string[] guessed = [.. CautionWriter.ClassDefaults(request.Machine)];
        if (guessed.Length > 0)
        {
            problems.Add(new RequestProblem(
                "machine", RequestProblemCodes.ProfileNotMeasured, request.Machine.Machine.Id,
                $"a profile that is measured or drawn; these values are only usual for the class: {string.Join(", ", guessed)}. "
                + "Measure them on the clutch and put them into the catalog"));
        }

        double limit = machine.Drivetrain.RevLimitRpm;
        Below(request.Target.EngagementRpm, "targets/engagementRpm");
        for (int i = 0; i < request.Target.Shift.Count; i++)
            Below(request.Target.Shift[i].Rpm, request.Target.Shift.Count == 1 ? "targets/shiftRpm" : $"targets/shiftCurve/{i}/rpm");

        void Below(double rpm, string place)
        {
            if (rpm > limit)
            {
                problems.Add(new RequestProblem(
                    place, RequestProblemCodes.TargetBeyondRevLimit, Words.Rpm(rpm),
                    $"at most the rev limit of this engine, {Words.Rpm(limit)}"));
            }
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
