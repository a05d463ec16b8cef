using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>One for each rule that a set breaks, though the model can compute it; it names what would have to be another.</summary>
/// <remarks>
/// The cause is what mends the break by itself, the cheapest first: other masses, fewer shims, another hole or setting,
/// another helix. Where none of these does, it is the part.
/// </remarks>
/// <param name="helices">What the catalog has in place of the helix.</param>
internal sealed class MisfitCautions(MachineModel machine, IReadOnlyList<Helix> helices)
{
    private const int MostNamed = 5;

    public IEnumerable<Caution> For(SetUp set) =>
        from broken in SetRules.Broken(set, machine)
        select new Caution(CautionWriter.Careful, $"{Cause(set, broken)} by rule {broken.Rule}: {broken.Check.Sentence}. {Remedy(set, broken)}");

    private string Cause(SetUp set, RuleOutcome broken)
    {
        string part = $"The {Words.Of(broken.Slot)} {broken.Part}";
        if (broken.Part == set.Spring.Shim?.Id)
            return $"The shim {broken.Part} does not fit this machine";
        if (IsOf(StationRules.All, broken))
            return $"The masses in the flyweight {broken.Part} are too heavy for it";
        if (FewerShims(set, broken) is not null)
            return $"The shims under the drive spring {set.DriveSpring.Id} leave it no room";
        if (!IsOf(DrivenSideRules.All, broken))
            return $"{part} does not fit this machine";
        string hole = Words.Of(set.Driven.Hole, machine);
        if (OtherHoles(set).Count > 0)
            return $"{Capital(hole)} does not suit the driven spring {broken.Part} with the helix {set.Driven.Helix.Id}";
        return OtherHelices(set).Count > 0
            ? $"The helix {set.Driven.Helix.Id} does not suit the driven spring {broken.Part} in {hole}"
            : $"{part} with the helix {set.Driven.Helix.Id} fits this machine in no {(machine.Profile.DrivenClutch.HasAdjuster ? "setting" : "hole")}";
    }

    private string Remedy(SetUp set, RuleOutcome broken)
    {
        if (IsOf(StationRules.All, broken))
            return "Fit lighter ones.";
        if (FewerShims(set, broken) is { } count)
            return count == 0 ? "Leave them out." : $"Fit {count} at most.";
        if (IsOf(DrivenSideRules.All, broken))
        {
            if (OtherHoles(set) is { Count: > 0 } holes)
                return $"It fits in {Named(holes.Select(h => Words.Of(h, machine)))}.";
            if (OtherHelices(set) is { Count: > 0 } others)
                return $"There it fits with {Named(others.Select(h => $"helix {h.Id}"))}.";
        }

        return "Do not fit it.";
    }

    /// <summary>The most shims below those of the set on which the drive spring keeps the rule; null where shims are not the cause.</summary>
    private int? FewerShims(SetUp set, RuleOutcome broken)
    {
        if (DriveSpringRules.All.FirstOrDefault(r => r.Name == broken.Rule) is not { } rule)
            return null;
        for (int count = set.Spring.Count - 1; count >= 0; count--)
        {
            MachineModel on = machine.OnShims(new SpringChoice(set.DriveSpring, set.Spring.Shim, count).ShimThickness);
            if (rule.Check(set.DriveSpring, on).Verdict != FitVerdict.Broken)
                return count;
        }

        return null;
    }

    private IReadOnlyList<SpringHole> OtherHoles(SetUp set) => DrivenSideRules.Holes(set.Driven, machine);

    private IReadOnlyList<Helix> OtherHelices(SetUp set) =>
    [
        .. helices.Where(h => h.SupersededBy is null
            && HelixRules.All.All(r => r.Check(h, machine).Verdict != FitVerdict.Broken)
            && DrivenSideRules.Fits(set.Driven with { Helix = h }, machine)),
    ];

    private static bool IsOf<T>(IReadOnlyList<FitRule<T>> rules, RuleOutcome outcome) => rules.Any(r => r.Name == outcome.Rule);

    private static string Named(IEnumerable<string> all)
    {
        string[] names = [.. all];
        return names.Length > MostNamed
            ? $"{string.Join(", ", names.Take(MostNamed))} and {names.Length - MostNamed} more"
            : Words.List(names);
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
