using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.TestKit;

/// <summary>The judge: tries every set of a catalog, skips nothing, sorts the whole list, then cuts it.</summary>
/// <remarks>It shares the mechanics and the rules of fit with the service, and nothing of its pools, score, order, prices or lists.</remarks>
public static class PlainSearch
{
    /// <summary>Everything that the service promises of one request.</summary>
    public static PlainAnswer Run(CatalogSnapshot catalog, PickRequest request)
    {
        PartSet fitted = request.Fitted ?? request.Machine.Machine.Fitted!;
        var judge = new PlainJudge(catalog, request, fitted);
        PlainPick[] found = [.. PlainSets.Every(catalog, judge.Machine, request, fitted).Select(judge.Try).OfType<PlainPick>()];
        PlainPick[] byMiss = [.. ByIds(found.OrderBy(p => p.RoundedMiss).ThenBy(p => p.Changes).ThenBy(Price))];
        PlainPick[] wanted = request.RankBy == RankBy.Miss
            ? byMiss
            : [.. ByIds(found.OrderBy(p => !p.WithinTolerance).ThenBy(p => p.Changes).ThenBy(Price).ThenBy(p => p.RoundedMiss))];
        if (request.Group)
            wanted = [.. wanted.DistinctBy(p => (p.Parts.DriveSpring, p.Parts.Flyweight))];
        PlainPick[] within = [.. byMiss.Where(p => p.WithinTolerance)];
        return new PlainAnswer(
            [.. wanted.Take(request.Count)],
            within.Where(p => p.Price is not null).MinBy(p => p.Price),
            within.MinBy(p => p.Changes),
            [.. within.Where((p, i) => !within.Where((q, k) => Beats(q, k, p, i)).Any())]);
    }

    // No worse in all three, and better in one of them or earlier in the order.
    private static bool Beats(PlainPick q, int k, PlainPick p, int i)
    {
        bool noWorse = q.RoundedMiss <= p.RoundedMiss && Price(q) <= Price(p) && q.Changes <= p.Changes;
        bool better = q.RoundedMiss < p.RoundedMiss || Price(q) < Price(p) || q.Changes < p.Changes;
        return noWorse && (better || k < i);
    }

    private static long Price(PlainPick pick) => pick.Price ?? long.MaxValue;

    /// <summary>Ties by the ids of slot after slot.</summary>
    internal static IOrderedEnumerable<T> ByIds<T>(IOrderedEnumerable<T> found, Func<T, PlainPick> pick) => found
        .ThenBy(f => pick(f).Parts.DriveSpring, StringComparer.Ordinal)
        .ThenBy(f => pick(f).Parts.Shims?.ShimId ?? "", StringComparer.Ordinal)
        .ThenBy(f => pick(f).Parts.Shims?.Count ?? 0)
        .ThenBy(f => pick(f).Parts.Flyweight, StringComparer.Ordinal)
        .ThenBy(f => pick(f).StepPlace)
        .ThenBy(f => Mass(pick(f), StationName.Pin))
        .ThenBy(f => Mass(pick(f), StationName.Heel))
        .ThenBy(f => Mass(pick(f), StationName.Middle))
        .ThenBy(f => Mass(pick(f), StationName.Tip))
        .ThenBy(f => pick(f).Parts.DrivenSpring, StringComparer.Ordinal)
        .ThenBy(f => pick(f).Parts.Hole, StringComparer.Ordinal)
        .ThenBy(f => pick(f).Parts.Helix, StringComparer.Ordinal);

    private static IOrderedEnumerable<PlainPick> ByIds(IOrderedEnumerable<PlainPick> picks) => ByIds(picks, p => p);

    private static double Mass(PlainPick pick, StationName station) => pick.Parts.StationMasses.GetValueOrDefault(station);
}

/// <summary>A set as the judge ranks it.</summary>
public sealed record PlainPick(
    PartSet Parts, long RoundedMiss, int Changes, long? Price, bool WithinTolerance, int StepPlace);

/// <summary>What the judge found.</summary>
public sealed record PlainAnswer(
    IReadOnlyList<PlainPick> Picks, PlainPick? Cheapest, PlainPick? FewestChanges, IReadOnlyList<PlainPick> Undominated);
