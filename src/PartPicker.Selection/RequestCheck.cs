using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What a request must keep beyond its form: a measured profile, and kept parts that fit.</summary>
internal static class RequestCheck
{
    private const string AskForChanges =
        "ask for changes against what is fitted: targets of nothing but engagementChangeRpm and shiftChangeRpm";

    /// <summary>
    /// The run that ties the model to the machine; null where there is none or the profile only guesses: then no absolute
    /// rpm can be trusted, and the answer is relative to what is fitted.
    /// </summary>
    public static Baseline? Run(PickRequest request) =>
        request.Anchor && !request.Machine.ClassDefaults.Any() ? request.Baseline ?? request.Machine.OwnBaseline : null;

    /// <summary>A relative answer is for changes alone.</summary>
    public static void CheckRelative(PickRequest request, List<RequestProblem> problems)
    {
        if (Run(request) is not null)
            return;
        string[] guessed = [.. request.Machine.ClassDefaults];
        bool measured = request.Anchor && (request.Baseline ?? request.Machine.OwnBaseline) is not null;
        if (!request.Target.IsChange && guessed.Length > 0)
        {
            problems.Add(new RequestProblem(
                "machine", RequestProblemCodes.ProfileNotMeasured, request.Machine.Machine.Id,
                $"a profile that is measured or drawn; these values are only usual for the class: {string.Join(", ", guessed)}. "
                + $"Measure them on the clutch and put them into the catalog, or {AskForChanges}"));
        }

        if (!request.Target.IsChange && !measured)
        {
            problems.Add(new RequestProblem(
                "baseline", RequestProblemCodes.BaselineNeeded, null,
                "a measured run, since without one an absolute rpm cannot be trusted. Anyone can make it: with the parts that are "
                + "fitted now, note the rpm at which the belt takes hold and the rpm held at full throttle, and send them as "
                + $"engagementRpm and shiftRpm, with altitude and temperature if they are known. Or {AskForChanges}"));
        }

        if (request.Target.IsChange && request.LaunchRpm is { } launch)
        {
            problems.Add(new RequestProblem(
                "launchRpm", measured ? RequestProblemCodes.ProfileNotMeasured : RequestProblemCodes.BaselineNeeded, Words.Rpm(launch),
                "no launch rpm: it is compared with an absolute engagement, which a relative answer does not know. Leave it out, "
                + "or have a measured profile and a measured run"));
        }
    }

    /// <summary>An engagement is asked exactly where the belt starts the machine; stock and price need an outlet.</summary>
    public static void CheckWishes(PickRequest request, MachineModel machine, List<RequestProblem> problems)
    {
        if (machine.StartsByBelt && (request.Target.EngagementRpm ?? request.Target.EngagementChangeRpm) is null)
        {
            problems.Add(new RequestProblem(
                "targets/engagementRpm", RequestProblemCodes.EngagementNeeded, null, "the rpm at which the belt shall take hold, or engagementChangeRpm"));
        }

        if (!machine.StartsByBelt && (request.Target.EngagementRpm ?? request.Target.EngagementChangeRpm) is { } rpm)
        {
            problems.Add(new RequestProblem(
                request.Target.EngagementRpm is null ? "targets/engagementChangeRpm" : "targets/engagementRpm", RequestProblemCodes.EngagementNotByBelt, Words.Rpm(rpm),
                $"no engagement: a {Words.Of(request.Machine.DriveClutch.StartDevice.ToString())} starts this machine, and its own "
                + "springs and shoes decide when. Leave it out: the shift curve alone is answered"));
        }

        if (!machine.StartsByBelt && request.LaunchRpm is { } launch)
        {
            problems.Add(new RequestProblem(
                "launchRpm", RequestProblemCodes.EngagementNotByBelt, Words.Rpm(launch),
                "no launch rpm: it is compared with an engagement, and the belt does not start this machine"));
        }

        if (!machine.StartsByBelt && request.Tolerances.EngagementRpm != Tolerances.Standard.EngagementRpm)
        {
            problems.Add(new RequestProblem(
                "tolerances/engagementRpm", RequestProblemCodes.EngagementNotByBelt, Words.Rpm(request.Tolerances.EngagementRpm),
                "no tolerance of an engagement: the belt does not start this machine. Leave it out"));
        }

        if (!machine.StartsByBelt && request.Weights != ScoreWeights.Standard)
        {
            problems.Add(new RequestProblem(
                "weights", RequestProblemCodes.EngagementNotByBelt, $"{request.Weights.Engagement:0.###} and {request.Weights.Shift:0.###}",
                "no weights: the belt does not start this machine, and the shift curve alone counts. Leave them out"));
        }

        if (request.Outlet is null && (request.InStockOnly || request.PriceCeilingMinor is not null))
        {
            problems.Add(new RequestProblem(
                "outlet", RequestProblemCodes.OutletNeeded, null, "the outlet whose stock and prices count"));
        }
    }

    /// <summary>A part that is kept cannot be excluded.</summary>
    public static void CheckExcluded(PickRequest request, SetUp fitted, List<RequestProblem> problems)
    {
        (Slot Slot, string? Part)[] parts =
        [
            (Slot.DriveSpring, fitted.DriveSpring.Id),
            (Slot.DriveSpring, fitted.Spring.Shims?.ShimId),
            (Slot.Flyweight, fitted.Flyweight.Body.Id),
            (Slot.DrivenSpring, fitted.Driven.Spring.Id),
            (Slot.Helix, fitted.Driven.Helix.Id),
        ];
        problems.AddRange(
            from fit in parts
            where fit.Part is not null && request.Keep.Contains(fit.Slot) && request.Exclude.Contains(fit.Part)
            let slot = Words.Camel($"{fit.Slot}")
            select new RequestProblem(
                "exclude", RequestProblemCodes.Contradiction, fit.Part,
                $"either {slot} in keep or {fit.Part} in exclude, since {fit.Part} is what is fitted there: take {slot} out of "
                + $"keep to have it replaced, or {fit.Part} out of exclude to have it stay"));
    }

    /// <summary>A kept part must keep every rule, also those that the model could do without.</summary>
    public static void CheckKept(
        IReadOnlySet<Slot> keep, SetUp fitted, MachineModel machine, List<RequestProblem> problems)
    {
        if (keep.Count == 0)
            return;

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
