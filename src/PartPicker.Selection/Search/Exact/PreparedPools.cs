using System.Globalization;
using System.Runtime.CompilerServices;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>The pools of a request with what the rules said of them, ready to be searched.</summary>
internal sealed record Prepared(SearchIndex Index, FitReport Report);

/// <summary>Keeps what was prepared for a catalog revision, for requests that ask for the same pools.</summary>
/// <remarks>It lives as long as its revision does; see <see cref="Kept{TKey, TValue}"/>.</remarks>
internal sealed class PreparedPools
{
    /// <summary>Most kinds of request kept for one revision.</summary>
    public const int MaxKept = 32;

    /// <summary>Most bytes kept for one revision; the newest is kept whatever its size.</summary>
    public const long MaxBytes = 256L * 1024 * 1024;

    private static readonly ConditionalWeakTable<CatalogSnapshot, PreparedPools> OfRevision = [];

    private readonly Kept<PoolKey, Prepared> kept = new(MaxKept, MaxBytes, prepared => prepared.Index.Bytes);

    public static PreparedPools Of(CatalogSnapshot catalog) => OfRevision.GetOrCreateValue(catalog);

    /// <summary>What was prepared for this key, or what <paramref name="prepare"/> gives now; null is not kept.</summary>
    public Prepared? Get(PoolKey key, Func<Prepared?> prepare) => kept.Get(key, prepare);
}

/// <summary>Everything of a request that <see cref="PoolBuilder"/> and <see cref="SearchIndex"/> look at.</summary>
internal sealed record PoolKey(
    MachineProfile Machine, string Fitted, string Keep, string Exclude, Outlet? InStockAt, bool DemandChecked, int PointCount)
{
    public static PoolKey Of(PickRequest request, SetUp fitted) => new(
        request.Machine,
        TextOf(fitted.Ids),
        string.Join('\n', request.Keep.Order()),
        string.Join('\n', request.Exclude.Order(StringComparer.Ordinal)),
        request.InStockOnly ? request.Outlet : null,
        request.DemandChecked,
        request.PointCount);

    /// <summary>The same for sets of the same parts.</summary>
    public static string TextOf(PartSet set)
    {
        string masses = string.Join(' ', set.StationMasses.OrderBy(m => m.Key)
            .Select(m => string.Create(CultureInfo.InvariantCulture, $"{m.Key}={m.Value:R}")));
        return string.Join(
            '\n', set.DriveSpring, set.Shims, set.Flyweight, set.AdjusterStep, masses, set.DrivenSpring, set.Hole, set.Helix);
    }
}
