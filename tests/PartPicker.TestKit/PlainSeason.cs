using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.TestKit;

/// <summary>The judge of seasons: tries every set in every air, and takes the one whose greatest miss is the least.</summary>
public static class PlainSeason
{
    /// <summary>The best set of each air, and the best single one; null where there is none.</summary>
    public static (IReadOnlyList<PlainPick?> Best, PlainPick? ForAll) Run(
        CatalogSnapshot catalog, PickRequest request, IReadOnlyList<AirState> airs)
    {
        PlainPick[][] every =
        [
            .. airs.Select(air => PlainSearch.Run(
                catalog, request with { Air = air, Count = int.MaxValue, RankBy = RankBy.Miss, Group = false }).Picks.ToArray()),
        ];
        IEnumerable<PlainPick> everywhere =
            from first in every[0]
            let same = every.Select(picks => Array.Find(picks, p => Key(p.Parts) == Key(first.Parts))).ToArray()
            where !same.Contains(null)
            select first with
            {
                RoundedMiss = same.Max(p => p!.RoundedMiss),
                WithinTolerance = same.All(p => p!.WithinTolerance),
            };
        return (
            [.. every.Select(picks => picks.Length > 0 ? picks[0] : null)],
            PlainSearch.ByIds(
                everywhere.OrderBy(p => p.RoundedMiss).ThenBy(p => p.Changes).ThenBy(p => p.Price ?? long.MaxValue), p => p)
                .FirstOrDefault());
    }

    /// <summary>Equal for equal sets.</summary>
    public static string Key(PartSet? set) => set is null
        ? ""
        : string.Join('|', set.DriveSpring, set.Shims, set.Flyweight, set.AdjusterStep, set.DrivenSpring, set.Hole, set.Helix)
            + string.Join('|', Enum.GetValues<StationName>().Select(s => set.StationMasses.GetValueOrDefault(s)));
}
