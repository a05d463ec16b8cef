using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.TestKit;

/// <summary>What a change costs: every choice of kits is tried.</summary>
internal static class PlainPrice
{
    /// <summary>False when the outlet cannot hand the set over; the price is null when not known.</summary>
    public static bool TryOf(SetUp set, PartSet fitted, PickRequest request, CatalogSnapshot catalog, out long? price)
    {
        price = null;
        if (request.Outlet is not { } outlet)
            return true;
        (Part Part, int Packs)[] needs = [.. Needs(set, fitted, request)];
        Kit[] kits =
        [
            .. catalog.All<Kit>().Where(k => k.SupersededBy is null && outlet.Offers.ContainsKey(k.Id)
                && (!request.InStockOnly || outlet.Offers[k.Id].Stock > 0)),
        ];
        bool possible = false;
        for (int choice = 0; choice < 1 << kits.Length; choice++)
        {
            Kit[] bought = [.. kits.Where((_, i) => (choice & (1 << i)) != 0)];
            var singly = needs.Where(n => !bought.Any(k => k.Contents.Any(c => c.PartId == n.Part.Id && c.Packs >= n.Packs))).ToArray();
            if (request.InStockOnly && singly.Any(n => !(outlet.Offers.GetValueOrDefault(n.Part.Id)?.Stock >= n.Packs)))
                continue;
            possible = true;
            long? sum = bought.Aggregate((long?)0, (total, k) => total + outlet.Offers[k.Id].PriceMinor);
            sum = singly.Aggregate(sum, (total, n) => total + outlet.Offers.GetValueOrDefault(n.Part.Id)?.PriceMinor * n.Packs);
            if (sum is not null && !(sum >= price))
                price = sum;
        }

        return possible;
    }

    /// <summary>True when enough of a part is there, alone or in a kit.</summary>
    public static bool InStock(Part part, CatalogSnapshot catalog, PickRequest request, int pieces)
    {
        int packs = PacksOf(part, pieces, request);
        return request.Outlet!.Offers.GetValueOrDefault(part.Id)?.Stock >= packs
            || catalog.All<Kit>().Any(k => request.Outlet.Offers.GetValueOrDefault(k.Id)?.Stock > 0
                && k.Contents.Any(c => c.PartId == part.Id && c.Packs >= packs));
    }

    private static IEnumerable<(Part, int)> Needs(SetUp set, PartSet fitted, PickRequest request)
    {
        (Part Part, string Fitted)[] parts =
        [
            (set.DriveSpring, fitted.DriveSpring),
            (set.Flyweight.Body, fitted.Flyweight),
            (set.Driven.Spring, fitted.DrivenSpring),
            (set.Driven.Helix, fitted.Helix),
        ];
        foreach ((Part part, _) in parts.Where(p => p.Part.Id != p.Fitted))
            yield return (part, PacksOf(part, 1, request));
        int own = set.Spring.Shim?.Id == fitted.Shims?.ShimId ? fitted.Shims?.Count ?? 0 : 0;
        if (set.Spring.Shim is { } shim && set.Spring.Count > own)
            yield return (shim, PacksOf(shim, set.Spring.Count - own, request));
    }

    private static int PacksOf(Part part, int pieces, PickRequest request)
    {
        int arms = request.Machine.DriveClutch.ArmCount;
        int needed = part is Flyweight ? arms : part is Shim ? pieces : 1;
        int perPack = part.PackQuantity ?? part switch
        {
            Flyweight { SoldAs: null or SoldAs.Set } body => body.SetCount ?? arms,
            { SoldAs: SoldAs.Pair } => 2,
            _ => 1,
        };
        return (int)Math.Ceiling(needed / (double)perPack);
    }
}
