namespace PartPicker.Selection;

/// <summary>What was made for one request and serves the next of its kind; the ones not used for longest go when there are too many.</summary>
/// <remarks>The first request of a kind makes it, others of that kind wait for it.</remarks>
/// <param name="most">Most kinds kept.</param>
/// <param name="mostBytes">Most bytes kept; the newest is kept whatever its size.</param>
/// <param name="bytes">The size of one; null where sizes do not matter.</param>
internal sealed class Kept<TKey, TValue>(int most, long mostBytes = long.MaxValue, Func<TValue, long>? bytes = null)
    where TKey : IEquatable<TKey>
    where TValue : class
{
    // Most recently used last.
    private readonly List<Entry> entries = [];
    private readonly Lock gate = new();

    /// <summary>What was made for this key, or what <paramref name="make"/> gives now; null is not kept.</summary>
    public TValue? Get(TKey key, Func<TValue?> make)
    {
        Entry entry = Find(key);
        lock (entry)
        {
            if (entry.Value is { } known)
                return known;
            entry.Value = make();
            Trim(entry);
            return entry.Value;
        }
    }

    private Entry Find(TKey key)
    {
        lock (gate)
        {
            int at = entries.FindIndex(e => e.Key.Equals(key));
            Entry entry = at < 0 ? new Entry(key) : entries[at];
            if (at >= 0)
                entries.RemoveAt(at);
            entries.Add(entry);
            return entry;
        }
    }

    private void Trim(Entry made)
    {
        lock (gate)
        {
            if (made.Value is null)
                entries.Remove(made);
            while (entries.Count > 1
                && (entries.Count > most || (bytes is not null && entries.Sum(e => e.Value is { } value ? bytes(value) : 0) > mostBytes)))
            {
                entries.RemoveAt(0);
            }
        }
    }

    private sealed class Entry(TKey key)
    {
        public TKey Key { get; } = key;

        public TValue? Value { get; set; }
    }
}
