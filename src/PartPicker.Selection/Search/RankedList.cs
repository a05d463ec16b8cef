namespace PartPicker.Selection;

/// <summary>The best sets so far, in their order, at most as many as asked for; grouped, the best of each group only.</summary>
/// <remarks>A group is a drive spring with a flyweight body, whatever shims, step and masses.</remarks>
internal sealed class RankedList(int capacity, RankOrder order, bool grouped)
{
    private readonly SortedList<RankKey, RankedSet> list = new(capacity + 1, order);
    private readonly Dictionary<(string, string), RankKey> bestOfGroup = [];

    public IReadOnlyList<RankedSet> Sets => [.. list.Values];

    /// <summary>The last one listed, once the list is full; null before.</summary>
    public RankKey? Last => list.Count == capacity ? list.Keys[^1] : null;

    public void Offer(RankedSet set)
    {
        if (Last is { } last && order.Compare(set.Key, last) > 0)
            return;
        if (grouped)
        {
            (string, string) group = Group(set);
            if (bestOfGroup.TryGetValue(group, out RankKey best))
            {
                if (order.Compare(best, set.Key) <= 0)
                    return;
                list.Remove(best);
            }

            bestOfGroup[group] = set.Key;
        }

        list.Add(set.Key, set);
        if (list.Count > capacity)
        {
            if (grouped)
                bestOfGroup.Remove(Group(list.Values[capacity]));
            list.RemoveAt(capacity);
        }
    }

    private static (string, string) Group(RankedSet set) => (set.Set.DriveSpring.Id, set.Set.Flyweight.Body.Id);
}
