using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Collects what the rules said: every refusal, and every check that could not be made.</summary>
/// <param name="demandChecked">True: what cannot be checked by dimension is refused as well.</param>
internal sealed class FitReport(bool demandChecked = false)
{
    /// <summary>Longest list that an answer carries; what is left out is counted.</summary>
    public const int MaxListed = PickRequest.MaxRefusalCount;

    /// <summary>Longest list that is kept, for whoever looks up why a part was refused.</summary>
    private const int MaxKept = 20_000;

    private readonly List<Refusal> refusals = [];
    private readonly List<NotChecked> notChecked = [];
    private readonly Dictionary<(string Rule, Slot Slot), RuleCount> byRule = [];
    private readonly SortedDictionary<string, long> unknownByRule = new(StringComparer.Ordinal);
    private readonly HashSet<(string Rule, string Part)> noted = [];

    public IReadOnlyList<Refusal> Refusals => refusals;

    /// <summary>Gaps that may break something, part by part.</summary>
    public IReadOnlyList<NotChecked> Unknowns => notChecked;

    /// <summary>How often each rule could not be checked, the named ones included.</summary>
    public IReadOnlyDictionary<string, long> UnknownByRule => unknownByRule;

    /// <summary>Named gaps beyond the longest list.</summary>
    public long UnknownsLeftOut { get; private set; }

    /// <summary>How many candidates of these slots each rule refused, and what the rule asks for; by name of the rule.</summary>
    public IReadOnlyList<RuleCount> ByRule(Func<Slot, bool> slots) =>
    [
        .. byRule.Where(r => slots(r.Key.Slot)).Select(r => r.Value).GroupBy(r => r.Rule)
            .Select(same => same.First() with { Count = same.Sum(r => r.Count) })
            .OrderBy(r => r.Rule, StringComparer.Ordinal),
    ];

    /// <summary>True when the candidate keeps every rule that can be checked; a waived rule is passed over.</summary>
    /// <param name="part">How a refusal names it.</param>
    /// <param name="owner">Whose missing number a gap is, where a candidate is made of several parts.</param>
    public bool Accepts<T>(
        IReadOnlyList<FitRule<T>> rules, T candidate, MachineModel machine, Slot slot, Func<T, string> part, string? waived = null,
        string? owner = null)
    {
        bool fits = true;
        foreach (FitRule<T> rule in rules)
        {
            if (rule.Name == waived)
                continue;
            FitCheck check = rule.Check(candidate, machine);
            if (check.Verdict == FitVerdict.Broken)
            {
                fits = false;
                Refuse(new Refusal(slot, part(candidate), rule.Name, check.Measured, check.Limit, check.Sentence), rule.Meaning);
            }
            else if (check.Verdict == FitVerdict.NotChecked)
            {
                Note(rule, slot, owner ?? part(candidate), check);
                if (demandChecked && waived != CheckedDemand)
                {
                    fits = false;
                    Refuse(
                        new Refusal(slot, part(candidate), CheckedDemand, default, default, $"rule {rule.Name} cannot be checked: {check.Sentence} is not known{(check.Remedy.Length > 0 ? $"; {check.Remedy}" : "")}"),
                        "Every rule must be checked by dimension, as the request demands.");
                }
            }
        }

        return fits;
    }

    /// <summary>Refuses a part for what the request wants rather than for how it fits.</summary>
    public void Refuse(Slot slot, string part, string rule, string meaning, string sentence) =>
        Refuse(new Refusal(slot, part, rule, default, default, sentence), meaning);

    /// <summary>The rule that stands for a request's demand of checked fit.</summary>
    public const string CheckedDemand = "checked-fit";

    private void Refuse(Refusal refusal, string meaning)
    {
        (string, Slot) key = (refusal.Rule, refusal.Slot);
        long before = byRule.GetValueOrDefault(key)?.Count ?? 0;
        byRule[key] = new RuleCount(refusal.Rule, before + 1, meaning);
        if (refusals.Count < MaxKept)
            refusals.Add(refusal);
    }

    // A number that a part lacks is lacking in every set: it is said once.
    private void Note<T>(FitRule<T> rule, Slot slot, string part, in FitCheck check)
    {
        if (!noted.Add((rule.Name, part)))
            return;
        unknownByRule[rule.Name] = unknownByRule.GetValueOrDefault(rule.Name) + 1;
        if (!rule.NamedWhenUnknown)
            return;
        if (notChecked.Count < MaxListed)
            notChecked.Add(new NotChecked(slot, part, rule.Name, check.Sentence));
        else
            UnknownsLeftOut++;
    }
}

/// <summary>How many candidates a rule refused, and what it asks for.</summary>
internal sealed record RuleCount(string Rule, long Count, string Meaning);
