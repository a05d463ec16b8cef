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
        (Part, int)[] needs = [.. Needs(set, fitted, request).Select(n => (n.Part, n.Packs))];
        return request.Outlet is null || TryBuy(needs, request.InStockOnly, request, catalog, out price);
    }

    /// <summary>
    /// What these slots cost from stock alone, and beside it the others in any way. False when the stock does not suffice
    /// or there is nothing to buy.
    /// </summary>
    public static bool TryFromStock(
        SetUp set, IReadOnlyList<Slot> slots, PartSet fitted, PickRequest request, CatalogSnapshot catalog,
        out long? price, out long? beside)
    {
        ILookup<bool, (Part, int)> needs = Needs(set, fitted, request)
            .ToLookup(n => slots.Contains(n.Slot), n => (n.Part, n.Packs));
        TryBuy([.. needs[false]], request.InStockOnly, request, catalog, out beside);
        return TryBuy([.. needs[true]], true, request, catalog, out price) && needs[true].Any();
    }

    private static bool TryBuy(
        (Part Part, int Packs)[] needs, bool fromStock, PickRequest request, CatalogSnapshot catalog, out long? price)
    {
        price = null;
        Outlet outlet = request.Outlet!;
        Kit[] kits = [.. Kits(catalog, request).Where(k => !fromStock || outlet.Offers[k.Id].Stock > 0)];
        bool possible = false;
        for (int choice = 0; choice < 1 << kits.Length; choice++)
        {
            Kit[] bought = [.. kits.Where((_, i) => (choice & (1 << i)) != 0)];
            (Offer? Offer, int Packs)[] singly =
            [
                .. needs.Select(n => (outlet.Offers.GetValueOrDefault(n.Part.Id), n.Packs - InKits(bought, n.Part)))
                    .Where(n => n.Item2 > 0),
            ];
            if (fromStock && singly.Any(n => !(n.Offer?.Stock >= n.Packs)))
                continue;
            possible = true;
            long? sum = bought.Aggregate((long?)0, (total, k) => total + outlet.Offers[k.Id].PriceMinor);
            sum = singly.Aggregate(sum, (total, n) => total + n.Offer?.PriceMinor * n.Packs);
            if (sum is not null && !(sum >= price))
                price = sum;
        }

        return possible;
    }

    /// <summary>True when enough of a part is there, alone and in kits.</summary>
    public static bool InStock(Part part, CatalogSnapshot catalog, PickRequest request, int pieces)
    {
        Offer? single = request.Outlet!.Offers.GetValueOrDefault(part.Id);
        int inKits = InKits(Kits(catalog, request).Where(k => request.Outlet.Offers[k.Id].Stock > 0), part);
        return inKits + (single?.Stock ?? 0) >= PacksOf(part, pieces, request);
    }

    private static IEnumerable<Kit> Kits(CatalogSnapshot catalog, PickRequest request) =>
        from kit in catalog.All<Kit>()
        where kit.SupersededBy is null && !request.Exclude.Contains(kit.Id) && request.Outlet!.Offers.ContainsKey(kit.Id)
        select kit;

    private static int InKits(IEnumerable<Kit> kits, Part part) =>
        (from kit in kits from line in kit.Contents where line.PartId == part.Id select line.Packs).Sum();

    private static IEnumerable<(Slot Slot, Part Part, int Packs)> Needs(SetUp set, PartSet fitted, PickRequest request)
    {
        (Slot Slot, Part Part, string Fitted)[] parts =
        [
            (Slot.DriveSpring, set.DriveSpring, fitted.DriveSpring),
            (Slot.Flyweight, set.Flyweight.Body, fitted.Flyweight),
            (Slot.DrivenSpring, set.Driven.Spring, fitted.DrivenSpring),
            (Slot.Helix, set.Driven.Helix, fitted.Helix),
        ];
        foreach ((Slot slot, Part part, _) in parts.Where(p => p.Part.Id != p.Fitted))
            yield return (slot, part, PacksOf(part, 1, request));
        int own = set.Spring.Shim?.Id == fitted.Shims?.ShimId ? fitted.Shims?.Count ?? 0 : 0;
        if (set.Spring.Shim is { } shim && set.Spring.Count > own)
            yield return (Slot.DriveSpring, shim, PacksOf(shim, set.Spring.Count - own, request));
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
