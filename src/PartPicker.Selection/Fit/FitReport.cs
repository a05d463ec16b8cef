using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Collects what the rules said: every refusal, and every check that could not be made.</summary>
internal sealed class FitReport
{
    /// <summary>Longest list that an answer carries; what is left out is counted.</summary>
    public const int MaxListed = 500;

    private readonly List<Refusal> refusals = [];
    private readonly List<NotChecked> notChecked = [];
    private readonly SortedDictionary<string, (long Count, string Sentence)> byRule = new(StringComparer.Ordinal);

    public IReadOnlyList<Refusal> Refusals => refusals;

    public IReadOnlyList<NotChecked> Unknowns => notChecked;

    /// <summary>Refusals beyond the longest list.</summary>
    public long RefusalsLeftOut { get; private set; }

    /// <summary>Checks that could not be made, beyond the longest list.</summary>
    public long UnknownsLeftOut { get; private set; }

    /// <summary>How many candidates each rule refused, and what the rule asks for.</summary>
    public IReadOnlyDictionary<string, (long Count, string Sentence)> ByRule => byRule;

    /// <summary>True when the candidate keeps every rule that can be checked.</summary>
    public bool Accepts<T>(IReadOnlyList<FitRule<T>> rules, T candidate, MachineModel machine, Slot slot, string part)
    {
        bool fits = true;
        foreach (FitRule<T> rule in rules)
        {
            FitCheck check = rule.Check(candidate, machine);
            switch (check.Verdict)
            {
                case FitVerdict.Broken:
                    fits = false;
                    Count(rule.Name, rule.Meaning);
                    if (refusals.Count < MaxListed)
                        refusals.Add(new Refusal(slot, part, rule.Name, check.Measured, check.Limit, check.Sentence));
                    else
                        RefusalsLeftOut++;
                    break;
                case FitVerdict.NotChecked:
                    if (notChecked.Count < MaxListed)
                        notChecked.Add(new NotChecked(slot, part, rule.Name, check.Sentence));
                    else
                        UnknownsLeftOut++;
                    break;
            }
        }

        return fits;
    }

    private void Count(string rule, string sentence)
    {
        (long before, _) = byRule.GetValueOrDefault(rule);
        byRule[rule] = (before + 1, sentence);
    }
}
