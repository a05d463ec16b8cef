using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Finds the parts of a set in the catalog.</summary>
internal static class SetUpReader
{
    // A mass written in grams and one written in grains shall name the same weight.
    private const double MassToleranceKg = 1e-6;

    /// <summary>The set in hand, or null with a problem for each id that leads nowhere.</summary>
    /// <param name="place">Where the set stands in the request, as in "fitted".</param>
    public static SetUp? Find(
        CatalogSnapshot catalog, MachineProfile machine, PartSet set, string place, List<RequestProblem> problems)
    {
        int before = problems.Count;
        DriveSpring? driveSpring = Part<DriveSpring>(set.DriveSpring, "driveSpring");
        Flyweight? flyweight = Part<Flyweight>(set.Flyweight, "flyweight");
        DrivenSpring? drivenSpring = Part<DrivenSpring>(set.DrivenSpring, "drivenSpring");
        Helix? helix = Part<Helix>(set.Helix, "helix");
        SpringHole? hole = machine.DrivenClutch.Holes.FirstOrDefault(h => h.Name == set.Hole);
        if (hole is null)
        {
            problems.Add(new RequestProblem(
                $"{place}/hole", RequestProblemCodes.UnknownHole, set.Hole,
                $"one of the holes of this machine: {string.Join(", ", machine.DrivenClutch.Holes.Select(h => h.Name))}"));
        }

        FlyweightChoice? choice = flyweight is null ? null : Masses(flyweight);
        return problems.Count == before
            ? new SetUp(driveSpring!, choice!, new DrivenChoice(drivenSpring!, hole!, helix!))
            : null;

        T? Part<T>(string id, string slot) where T : Part
        {
            switch (catalog.FindPart(id))
            {
                case T part:
                    return part;
                case null:
                    problems.Add(new RequestProblem(
                        $"{place}/{slot}", RequestProblemCodes.UnknownPart, id, "the id of a part of the catalog"));
                    return null;
                case Part other:
                    problems.Add(new RequestProblem(
                        $"{place}/{slot}", RequestProblemCodes.WrongKind, id,
                        $"a part of kind {Words.Of(slot)}; this one is a {Words.Of(other.Kind)}"));
                    return null;
            }
        }

        FlyweightChoice? Masses(Flyweight body)
        {
            var stations = body.Stations().ToDictionary(s => s.Name);
            var masses = new Dictionary<StationName, double>();
            foreach ((StationName name, double mass) in set.StationMasses)
            {
                if (stations.TryGetValue(name, out MassStation? station) is false)
                {
                    if (mass != 0)
                        Report(name, mass, "no mass there: this body has no such station");
                    continue;
                }

                double nearest = station.Masses.Append(0).MinBy(m => Math.Abs(m - mass));
                if (Math.Abs(nearest - mass) > MassToleranceKg)
                    Report(name, mass, $"one of {string.Join(", ", station.Masses.Select(Words.Grams))}");
                masses[name] = nearest;
            }

            foreach (StationName empty in stations.Keys.Except(masses.Keys))
                masses[empty] = 0;
            return problems.Count == before ? new FlyweightChoice(body, masses) : null;
        }

        void Report(StationName station, double mass, string expected) => problems.Add(new RequestProblem(
            $"{place}/stationMasses/{Words.Camel($"{station}")}", RequestProblemCodes.StationMass, Words.Grams(mass),
            expected));
    }
}
