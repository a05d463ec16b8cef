using System.Globalization;
using System.Runtime.CompilerServices;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>The pools of a request with what the rules said of them, ready to be searched.</summary>
internal sealed record Prepared(SearchIndex Index, FitReport Report);

/// <summary>Keeps what was prepared for a catalog revision, for requests that ask for the same pools.</summary>
/// <remarks>
/// It lives as long as its revision does. The first request of a kind prepares, others of that kind wait for it; the
/// ones not used for longest go when there are too many.
/// </remarks>
internal sealed class PreparedPools
{
    /// <summary>Most kinds of request kept for one revision.</summary>
    public const int MaxKept = 32;

    /// <summary>Most bytes kept for one revision; the newest is kept whatever its size.</summary>
    public const long MaxBytes = 256L * 1024 * 1024;

    private static readonly ConditionalWeakTable<CatalogSnapshot, PreparedPools> OfRevision = [];

    // Most recently used last.
    private readonly List<Entry> entries = [];
    private readonly Lock gate = new();

    public static PreparedPools Of(CatalogSnapshot catalog) => OfRevision.GetOrCreateValue(catalog);

    /// <summary>What was prepared for this key, or what <paramref name="prepare"/> gives now; null is not kept.</summary>
    public Prepared? Get(PoolKey key, Func<Prepared?> prepare)
    {
        Entry entry = Find(key);
        lock (entry)
        {
            if (entry.Prepared is { } known)
                return known;
            entry.Prepared = prepare();
            Trim();
            return entry.Prepared;
        }
    }

    private Entry Find(PoolKey key)
    {
        lock (gate)
        {
            int at = entries.FindIndex(e => e.Key == key);
            Entry entry = at < 0 ? new Entry(key) : entries[at];
            if (at >= 0)
                entries.RemoveAt(at);
            entries.Add(entry);
            return entry;
        }
    }

    private void Trim()
    {
        lock (gate)
        {
            while (entries.Count > 1
                && (entries.Count > MaxKept || entries.Sum(e => e.Prepared?.Index.Bytes ?? 0) > MaxBytes))
            {
                entries.RemoveAt(0);
            }
        }
    }

    private sealed class Entry(PoolKey key)
    {
        public PoolKey Key { get; } = key;

        public Prepared? Prepared { get; set; }
    }
}

/// <summary>Everything of a request that <see cref="PoolBuilder"/> and <see cref="SearchIndex"/> look at.</summary>
internal sealed record PoolKey(
    MachineProfile Machine, string Fitted, string Keep, string Exclude, Outlet? InStockAt, bool DemandChecked, int PointCount)
{
    public static PoolKey Of(PickRequest request, SetUp fitted)
    {
        PartSet set = fitted.Ids;
        string masses = string.Join(' ', set.StationMasses.OrderBy(m => m.Key)
            .Select(m => string.Create(CultureInfo.InvariantCulture, $"{m.Key}={m.Value:R}")));
        return new PoolKey(
            request.Machine,
            string.Join('\n', set.DriveSpring, set.Shims, set.Flyweight, set.AdjusterStep, masses, set.DrivenSpring, set.Hole, set.Helix),
            string.Join('\n', request.Keep.Order()),
            string.Join('\n', request.Exclude.Order(StringComparer.Ordinal)),
            request.InStockOnly ? request.Outlet : null,
            request.DemandChecked,
            request.PointCount);
    }
}
