using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What fits: the drive side's parts and the driven side's choices, each in the order that breaks ties.</summary>
/// <param name="DriveSprings">By id.</param>
/// <param name="Flyweights">By id, then by masses from heel to tip.</param>
/// <param name="Driven">By spring, hole and helix.</param>
internal sealed record CandidatePools(
    IReadOnlyList<DriveSpring> DriveSprings,
    IReadOnlyList<FlyweightChoice> Flyweights,
    IReadOnlyList<DrivenChoice> Driven)
{
    /// <summary>Sets that these pools make.</summary>
    public long Combinations => DriveSprings.Count * ((long)Flyweights.Count * Driven.Count);

    /// <summary>Every part of the catalog that keeps every rule; a kept slot holds what is fitted and nothing else.</summary>
    /// <param name="report">Receives every refusal and every check that could not be made.</param>
    /// <param name="problems">Receives a problem where there are too many sets to try.</param>
    /// <returns>The pools, or null with a problem.</returns>
    public static CandidatePools? Build(
        CatalogSnapshot catalog,
        MachineModel machine,
        SetUp fitted,
        IReadOnlySet<Slot> keep,
        FitReport report,
        List<RequestProblem> problems,
        CancellationToken cancellation)
    {
        DriveSpring[] driveSprings = Pool(Slot.DriveSpring, DriveSpringRules.All, fitted.DriveSpring);
        Flyweight[] bodies = Pool(Slot.Flyweight, FlyweightRules.All, fitted.Flyweight.Body);
        DrivenSpring[] springs = Pool(Slot.DrivenSpring, DrivenSpringRules.All, fitted.Driven.Spring);
        Helix[] helices = Pool(Slot.Helix, HelixRules.All, fitted.Driven.Helix);
        SpringHole[] holes = keep.Contains(Slot.Hole)
            ? [fitted.Driven.Hole]
            : [.. machine.Profile.DrivenClutch.Holes.OrderBy(h => h.Name, StringComparer.Ordinal)];

        // The masses of one body alone may make millions of choices: count before any of them is made.
        bool flyweightKept = keep.Contains(Slot.Flyweight);
        long flyweightCount = flyweightKept ? bodies.Length : bodies.Sum(FlyweightChoice.CountOf);
        if (TooMany(flyweightCount) || TooMany((long)springs.Length * holes.Length * helices.Length))
            return null;

        IEnumerable<DrivenChoice> driven =
            from spring in springs
            from hole in holes
            from helix in helices
            let choice = new DrivenChoice(spring, hole, helix)
            where Accepts(choice)
            select choice;
        IEnumerable<FlyweightChoice> flyweights =
            flyweightKept ? bodies.Select(_ => fitted.Flyweight) : bodies.SelectMany(FlyweightChoice.AllOf);
        var pools = new CandidatePools(driveSprings, [.. flyweights], [.. driven]);
        return TooMany(pools.Combinations) ? null : pools;

        T[] Pool<T>(Slot slot, IReadOnlyList<FitRule<T>> rules, T fittedPart) where T : Part =>
        [
            .. (keep.Contains(slot) ? [fittedPart] : catalog.All<T>())
                .Where(part => report.Accepts(rules, part, machine, slot, part.Id)),
        ];

        bool Accepts(DrivenChoice choice)
        {
            cancellation.ThrowIfCancellationRequested();
            return report.Accepts(DrivenSideRules.All, choice, machine, Slot.DrivenSpring, choice.Label);
        }

        bool TooMany(long count)
        {
            if (count <= PartSelection.MaxCombinations)
                return false;
            problems.Add(new RequestProblem(
                "keep", RequestProblemCodes.TooManyCombinations, $"{count} sets",
                $"at most {PartSelection.MaxCombinations} sets: keep one or more slots as fitted"));
            return true;
        }
    }
}
