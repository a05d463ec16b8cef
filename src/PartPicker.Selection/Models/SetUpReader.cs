using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>
/// Finds the parts of a set in the catalog. A replaced number of which enough is known is itself what lies in the
/// clutch; of which too little is known leads on to what replaced it.
/// </summary>
internal sealed class SetUpReader(
    CatalogSnapshot catalog, MachineProfile machine, List<RequestProblem> problems, List<Supersession>? superseded = null)
{
    /// <summary>The set in hand, or null with a problem for each id that leads nowhere.</summary>
    /// <param name="place">Where the set stands in the request, as in "fitted".</param>
    public SetUp? Find(PartSet set, string place)
    {
        int before = problems.Count;
        DriveSpring? driveSpring = Part<DriveSpring>(set.DriveSpring, $"{place}/driveSpring");
        SpringChoice? spring = driveSpring is null ? null : Shims(driveSpring, set.Shims, place);
        FlyweightChoice? flyweight = Part<Flyweight>(set.Flyweight, $"{place}/flyweight") is { } body
            ? Choice(body, set, place)
            : null;
        DrivenSpring? drivenSpring = Part<DrivenSpring>(set.DrivenSpring, $"{place}/drivenSpring");
        SpringHole? hole = Hole(set.Hole, place);
        Helix? helix = Part<Helix>(set.Helix, $"{place}/helix");
        return problems.Count == before
            ? new SetUp(spring!, flyweight!, new DrivenChoice(drivenSpring!, hole!, helix!))
            : null;
    }

    private T? Part<T>(string id, string place) where T : Part
    {
        switch (catalog.FindPart(id, Known))
        {
            case T part:
                if (catalog.FindCurrentPart(id) is { } today && today.Id != id)
                    superseded?.Add(new Supersession(place, id, part.Id, today.Id));
                return part;
            case null:
                problems.Add(new RequestProblem(
                    place, RequestProblemCodes.UnknownPart, id, "the id of a part of the catalog"));
                return null;
            case Part other:
                problems.Add(new RequestProblem(
                    place, RequestProblemCodes.WrongKind, id,
                    $"a part of kind {Words.Of(typeof(T).Name)}; this one is a {Words.Of(other.Kind)}"));
                return null;
        }
    }

    private bool Known(Part part) => part switch
    {
        DriveSpring spring => SpringModels.Force(spring) is not null,
        Flyweight body => FlyweightRules.PathKnown(body),
        DrivenSpring spring => DrivenSpringRules.ForceAndTwistKnown(spring, machine.DrivenClutch.Family),
        Helix helix => helix.HelixDeg is not null || helix.AnglePoints is not null,
        _ => true,
    };

    private SpringChoice? Shims(DriveSpring spring, FittedShims? shims, string place)
    {
        if (shims is null || shims.Count == 0)
            return new SpringChoice(spring, null, 0);
        if (shims.Count > (machine.DriveClutch.ShimLimit ?? 0))
        {
            problems.Add(new RequestProblem(
                $"{place}/shims/count", RequestProblemCodes.TooManyShims, $"{shims.Count}",
                $"at most {machine.DriveClutch.ShimLimit ?? 0} shims: this clutch takes no more"));
            return null;
        }

        return Part<Shim>(shims.ShimId, $"{place}/shims/shim") is { } shim ? new SpringChoice(spring, shim, shims.Count) : null;
    }

    private SpringHole? Hole(string name, string place)
    {
        IReadOnlyList<SpringHole> holes = machine.DrivenClutch.TwistChoices();
        SpringHole? hole = holes.FirstOrDefault(h => h.Name == name);
        if (hole is null)
        {
            problems.Add(new RequestProblem(
                $"{place}/hole", RequestProblemCodes.UnknownHole, name,
                $"one of the holes or settings of this machine: {string.Join(", ", holes.Select(h => h.Name))}"));
        }

        return hole;
    }

    private FlyweightChoice? Choice(Flyweight body, PartSet set, string place)
    {
        int before = problems.Count;
        string[] steps = [.. (body.AdjusterCurves ?? []).Select(c => c.Name)];
        if (steps.Length > 0 ? !steps.Contains(set.AdjusterStep) : set.AdjusterStep is not null)
        {
            problems.Add(new RequestProblem(
                $"{place}/adjusterStep", RequestProblemCodes.UnknownAdjusterStep, set.AdjusterStep,
                steps.Length > 0
                    ? $"one of the steps of this ramp: {string.Join(", ", steps)}"
                    : "no step: this flyweight has no adjuster"));
        }

        Dictionary<StationName, double> masses = Masses(body, set, place);
        return problems.Count == before ? new FlyweightChoice(body, masses, set.AdjusterStep) : null;
    }

    private Dictionary<StationName, double> Masses(Flyweight body, PartSet set, string place)
    {
        var masses = new Dictionary<StationName, double>();
        foreach (MassStation station in body.Stations())
        {
            double wanted = set.StationMasses.GetValueOrDefault(station.Name);
            double? listed = station.Takes(wanted);
            if (listed is null)
                Report(station.Name, wanted, $"one of {string.Join(", ", station.Masses.Select(Words.Grams))}");
            masses[station.Name] = listed ?? 0;
        }

        foreach ((StationName name, double mass) in set.StationMasses.Where(m => m.Value != 0 && !masses.ContainsKey(m.Key)))
            Report(name, mass, "no mass there: this body has no such station");
        return masses;

        void Report(StationName station, double mass, string expected) => problems.Add(new RequestProblem(
            $"{place}/stationMasses/{Words.Camel($"{station}")}", RequestProblemCodes.StationMass, Words.Grams(mass),
            expected));
    }
}
