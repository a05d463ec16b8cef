using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Builds the pools of one request: every part that keeps every rule and that the request allows.</summary>
/// <param name="waived">A rule that is passed over, to see what stands behind it; null: none.</param>
internal sealed class PoolBuilder(
    CatalogSnapshot catalog, MachineModel machine, SetUp fitted, PickRequest request, FitReport report, string? waived = null)
{
    private readonly OutletStock stock = new(catalog, request, machine);

    /// <summary>The pools, or null with a problem where one side has too many choices.</summary>
    public CandidatePools? Build(List<RequestProblem> problems, CancellationToken cancellation)
    {
        SpringChoice[] springs = [.. SpringChoices()];
        Flyweight[] bodies = Pool(Slot.Flyweight, FlyweightRules.All, fitted.Flyweight.Body);
        DrivenSpring[] drivenSprings = Pool(Slot.DrivenSpring, DrivenSpringRules.All, fitted.Driven.Spring);
        Helix[] helices = Pool(Slot.Helix, HelixRules.All, fitted.Driven.Helix);
        SpringHole[] holes = Keeps(Slot.Hole)
            ? [fitted.Driven.Hole]
            : [.. machine.Profile.DrivenClutch.TwistChoices().OrderBy(h => h.Name, StringComparer.Ordinal)];

        // The masses of one body alone may make millions of choices: count before any of them is made.
        long flyweightCount = Keeps(Slot.Flyweight) ? bodies.Length : bodies.Sum(FlyweightChoice.CountOf);
        long drivenCount = (long)drivenSprings.Length * holes.Length * helices.Length;
        if (TooMany(springs.Length, PartSelection.MaxDriveSpringChoices, "drive spring", problems)
            || TooMany(flyweightCount, PartSelection.MaxFlyweightChoices, "flyweight", problems)
            || TooMany(drivenCount, PartSelection.MaxDrivenChoices, "driven side", problems)
            || TooLarge(springs.Length, flyweightCount, drivenCount, helices.Length, problems))
        {
            return null;
        }

        Func<DrivenChoice, string> label = choice => choice.Label(machine);
        DrivenPool driven = DrivenPool.Of(drivenSprings, holes, helices, Accepts);

        // Only the masses that are fitted may lie beyond a limit: those of the choices never do.
        bool mayStay = report.Accepts(StationRules.All, fitted.Flyweight, machine, Slot.Flyweight, f => f.Body.Id, waived);
        IEnumerable<FlyweightChoice> flyweights = Keeps(Slot.Flyweight)
            ? bodies.Where(_ => mayStay).Select(_ => fitted.Flyweight)
            : bodies.SelectMany(FlyweightChoice.AllOf);
        return new CandidatePools(springs, [.. flyweights], driven);

        bool Accepts(DrivenChoice choice)
        {
            cancellation.ThrowIfCancellationRequested();
            return report.Accepts(DrivenSideRules.All, choice, machine, Slot.DrivenSpring, label, waived, choice.Spring.Id);
        }
    }

    // Without shims a spring is judged in full; on shims only what fits otherwise is judged again, at the shorter length.
    private IEnumerable<SpringChoice> SpringChoices()
    {
        Shim[] shims = Keeps(Slot.DriveSpring) ? [] : Shims();
        foreach (DriveSpring spring in Keeps(Slot.DriveSpring) ? [fitted.DriveSpring] : catalog.All<DriveSpring>())
        {
            if (!Allowed(Slot.DriveSpring, spring, fitted.DriveSpring.Id))
                continue;
            SpringChoice bare = Keeps(Slot.DriveSpring) ? fitted.Spring : new SpringChoice(spring, null, 0);
            if (report.Accepts(DriveSpringRules.All, spring, machine.OnShims(bare.ShimThickness), Slot.DriveSpring, _ => bare.Label, waived))
                yield return bare;

            // On shims the spring is judged in silence: what refuses it there was said of the bare spring, or is the shims' doing.
            var silent = new FitReport(request.DemandChecked);
            foreach (Shim shim in shims)
            {
                for (int count = 1; count <= machine.Profile.DriveClutch.ShimLimit; count++)
                {
                    var choice = new SpringChoice(spring, shim, count);
                    MachineModel shorter = machine.OnShims(choice.ShimThickness);
                    int own = shim.Id == fitted.Spring.Shim?.Id ? fitted.Spring.Count : 0;
                    if ((count <= own || stock.HasShims(shim, count - own)) && silent.Accepts(DriveSpringRules.All, spring, shorter, Slot.DriveSpring, _ => choice.Label, waived))
                        yield return choice;
                }
            }
        }
    }

    private Shim[] Shims() => machine.Profile.DriveClutch.ShimLimit is null or 0
        ? []
        : [
            .. catalog.All<Shim>()
                .Where(s => Allowed(Slot.DriveSpring, s, fitted.Spring.Shim?.Id)
                    && report.Accepts(ShimRules.All, s, machine, Slot.DriveSpring, shim => shim.Id, waived)),
        ];

    private T[] Pool<T>(Slot slot, IReadOnlyList<FitRule<T>> rules, T fittedPart) where T : Part =>
    [
        .. (Keeps(slot) ? [fittedPart] : catalog.All<T>())
            .Where(part => Allowed(slot, part, fittedPart.Id) && report.Accepts(rules, part, machine, slot, p => p.Id, waived)),
    ];

    // What is fitted needs no stock and may be a replaced number; the request may still exclude it.
    private bool Allowed(Slot slot, Part part, string? fittedId)
    {
        if (request.Exclude.Contains(part.Id) && waived != PoolRules.Excluded)
        {
            report.Refuse(slot, part.Id, PoolRules.Excluded, "The request excludes these parts.", "the request excludes it");
            return false;
        }

        if (part.Id == fittedId)
            return true;
        if (part.SupersededBy is { } successor)
        {
            report.Refuse(
                slot, part.Id, PoolRules.Superseded, "A replaced part number is not proposed.", $"it was replaced by {successor}");
            return false;
        }

        if (request.InStockOnly && waived != PoolRules.InStock && !stock.Has(part))
        {
            report.Refuse(
                slot, part.Id, PoolRules.InStock, "The request wants only what the outlet has in stock.",
                $"{request.Outlet!.Id} does not have enough of it, alone or in a kit");
            return false;
        }

        return true;
    }

    private bool Keeps(Slot slot) => request.Keep.Contains(slot);

    private static bool TooMany(long count, long limit, string side, List<RequestProblem> problems)
    {
        if (count <= limit)
            return false;
        problems.Add(new RequestProblem(
            "keep", RequestProblemCodes.TooManyCombinations, $"{count} choices of the {side}",
            $"at most {limit} choices of the {side}: keep one or more of its slots as fitted, or exclude parts"));
        return true;
    }

    private bool TooLarge(long springs, long flyweights, long driven, long helices, List<RequestProblem> problems)
    {
        const long Mega = 1_000_000;
        long bytes = SearchIndex.BytesToBuild(springs, flyweights, driven, helices, request.PointCount);
        if (bytes <= PartSelection.MaxPreparationBytes)
            return false;
        problems.Add(new RequestProblem(
            "ratioPoints", RequestProblemCodes.TooManyCombinations,
            $"{springs} drive springs, {flyweights} flyweights and {driven} choices of the driven side at {request.PointCount} "
            + $"points take {bytes / Mega} MB to prepare",
            $"at most {PartSelection.MaxPreparationBytes / Mega} MB: ask for fewer points, keep one or more slots as fitted, or exclude parts"));
        return true;
    }
}

/// <summary>The rules by which a request narrows what fits.</summary>
internal static class PoolRules
{
    public const string Excluded = "excluded";
    public const string Superseded = "superseded";
    public const string InStock = "in-stock";
    public const string PriceCeiling = "price-ceiling";
    public const string LaunchRpm = "launch-rpm";
    public const string SlipMargin = "slip-margin";
    public const string DoesNotShift = "does-not-shift";
}
