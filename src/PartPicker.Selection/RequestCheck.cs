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
        // With the hole or the helix open there may be one in which the driven spring fits.
        bool wholeDrivenSide = keep.Contains(Slot.Hole) && keep.Contains(Slot.Helix);
        problems.AddRange(
            from broken in SetRules.Broken(fitted, machine)
            where keep.Contains(broken.Slot) && (wholeDrivenSide || DrivenSideRules.All.All(r => r.Name != broken.Rule))
            select new RequestProblem(
                "keep", RequestProblemCodes.KeptPartDoesNotFit, $"{Words.Camel($"{broken.Slot}")}: {broken.Part}",
                $"a kept part that fits; by rule {broken.Rule} {broken.Check.Sentence}. Leave this slot open, or correct the "
                + "part's numbers in the catalog"));
    }
}
