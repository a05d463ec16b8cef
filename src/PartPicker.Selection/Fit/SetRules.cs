using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>How one rule came out for one part of a set.</summary>
internal readonly record struct RuleOutcome(Slot Slot, string Part, string Rule, bool NeededToCompute, FitCheck Check);

/// <summary>Every rule, asked of a set that is in hand.</summary>
internal static class SetRules
{
    public static IEnumerable<RuleOutcome> Of(SetUp set, MachineModel machine)
    {
        return
        [
            .. Outcomes(Slot.DriveSpring, DriveSpringRules.All, set.DriveSpring, set.DriveSpring.Id),
            .. Outcomes(Slot.Flyweight, FlyweightRules.All, set.Flyweight.Body, set.Flyweight.Body.Id),
            .. Outcomes(Slot.DrivenSpring, DrivenSpringRules.All, set.Driven.Spring, set.Driven.Spring.Id),
            .. Outcomes(Slot.DrivenSpring, DrivenSideRules.All, set.Driven, set.Driven.Spring.Id),
            .. Outcomes(Slot.Helix, HelixRules.All, set.Driven.Helix, set.Driven.Helix.Id),
        ];

        IEnumerable<RuleOutcome> Outcomes<T>(Slot slot, IReadOnlyList<FitRule<T>> rules, T part, string id) =>
            rules.Select(rule => new RuleOutcome(slot, id, rule.Name, rule.NeededToCompute, rule.Check(part, machine)));
    }

    /// <summary>The outcomes of the rules that the set breaks.</summary>
    public static IEnumerable<RuleOutcome> Broken(SetUp set, MachineModel machine) =>
        Of(set, machine).Where(o => o.Check.Verdict == FitVerdict.Broken);
}
