namespace PartPicker.Selection;

/// <summary>Sets that were seen to be refused, counted by the rule of the request or of the model.</summary>
internal sealed class Refusals
{
    private readonly SortedDictionary<string, long> byRule = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<string, long> ByRule => byRule;

    public void Add(string rule, long count = 1) => byRule[rule] = byRule.GetValueOrDefault(rule) + count;

    public void Clear() => byRule.Clear();
}
