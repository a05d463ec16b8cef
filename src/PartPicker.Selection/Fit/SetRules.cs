using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>How one rule came out for one part of a set.</summary>
/// <param name="MayBreak">True where a rule that is not kept may break something.</param>
/// <param name="Listed">True where the supplier lists the part for this clutch in every year of the machine.</param>
internal readonly record struct RuleOutcome(
    Slot Slot, string Part, string Rule, bool MayBreak, bool Listed, FitCheck Check);

/// <summary>Every rule, asked of a set that is in hand.</summary>
internal static class SetRules
{
    public static IEnumerable<RuleOutcome> Of(SetUp set, MachineModel machine) => Of(set, machine, onlyNeeded: false);

    private static IEnumerable<RuleOutcome> Of(SetUp set, MachineModel machine, bool onlyNeeded)
    {
        MachineModel onShims = machine.OnShims(set.Spring.ShimThickness);
        return
        [
            .. Outcomes(Slot.DriveSpring, DriveSpringRules.All, set.DriveSpring, set.Spring.Label, set.DriveSpring, onShims, onlyNeeded),
            .. set.Spring.Shim is { } shim ? Outcomes(Slot.DriveSpring, ShimRules.All, shim, shim.Id, shim, machine, onlyNeeded) : [],
            .. Outcomes(Slot.Flyweight, FlyweightRules.All, set.Flyweight.Body, set.Flyweight.Body.Id, set.Flyweight.Body, machine, onlyNeeded),
            .. Outcomes(Slot.Flyweight, StationRules.All, set.Flyweight, set.Flyweight.Body.Id, set.Flyweight.Body, machine, onlyNeeded),
            .. Outcomes(Slot.DrivenSpring, DrivenSpringRules.All, set.Driven.Spring, set.Driven.Spring.Id, set.Driven.Spring, machine, onlyNeeded),
            .. Outcomes(Slot.DrivenSpring, DrivenSideRules.All, set.Driven, set.Driven.Spring.Id, set.Driven.Spring, machine, onlyNeeded),
            .. Outcomes(Slot.Helix, HelixRules.All, set.Driven.Helix, set.Driven.Helix.Id, set.Driven.Helix, machine, onlyNeeded),
        ];
    }

    /// <summary>The outcomes of the rules that the set breaks.</summary>
    public static IEnumerable<RuleOutcome> Broken(SetUp set, MachineModel machine) =>
        Of(set, machine).Where(o => o.Check.Verdict == FitVerdict.Broken);

    /// <summary>The same of the rules that the model cannot do without; no other is asked.</summary>
    public static IEnumerable<RuleOutcome> BrokenToCompute(SetUp set, MachineModel machine) =>
        Of(set, machine, onlyNeeded: true).Where(o => o.Check.Verdict == FitVerdict.Broken);

    /// <summary>By how much each rule that could be measured is kept.</summary>
    public static IEnumerable<FitMargin> Margins(SetUp set, MachineModel machine) =>
        from kept in Of(set, machine)
        let check = kept.Check
        where check.Verdict == FitVerdict.Kept && check.Measured.Dimension is not null
        select new FitMargin(
            kept.Slot, kept.Part, kept.Rule, check.Measured, check.Limit, check.Margin is { } room ? new Measure(room, check.Measured.Dimension) : null);

    /// <summary>The rules that could not be checked, and whether the supplier's list stands in.</summary>
    public static IEnumerable<FitGap> Gaps(SetUp set, MachineModel machine) =>
        from gap in Of(set, machine)
        where gap.Check.Verdict == FitVerdict.NotChecked
        select new FitGap(
            gap.Slot, gap.Part, gap.Rule, gap.Listed ? FitGround.Listed : FitGround.Unknown, gap.Check.Sentence);

    private static IEnumerable<RuleOutcome> Outcomes<T>(
        Slot slot, IReadOnlyList<FitRule<T>> rules, T candidate, string label, Part part, MachineModel machine, bool onlyNeeded)
    {
        MachineProfile profile = machine.Profile;
        string clutch = slot is Slot.DriveSpring or Slot.Flyweight ? profile.DriveClutch.Id : profile.DrivenClutch.Id;
        bool listed = part.ListedFor(clutch, profile.Machine.FromYear, profile.Machine.ToYear);
        return rules.Where(rule => rule.NeededToCompute || !onlyNeeded).Select(rule => new RuleOutcome(
            slot, label, rule.Name, rule.NamedWhenUnknown, listed, rule.Check(candidate, machine)));
    }
}
