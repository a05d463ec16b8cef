using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What to buy for a set at an outlet, for the least money: packs of parts, and kits, each once at most.</summary>
/// <remarks>
/// Needed is what is not already fitted. A hole costs nothing, and neither does a mass moved into a station: masses are
/// not parts of the catalog. The least price is found over every choice of kits by what they cover, so it is exact. An
/// unknown price makes the sum unknown, unless a way round it is known.
/// </remarks>
internal sealed class PurchasePlanner
{
    // More than any sum of known prices, and small enough that a handful of them do not overflow.
    private const long UnknownPrice = 1L << 50;
    private const long NotForSale = long.MaxValue;

    private readonly Outlet? outlet;
    private readonly MachineProfile machine;
    private readonly SetUp fitted;
    private readonly bool inStockOnly;
    private readonly Kit[] kits;

    public PurchasePlanner(CatalogSnapshot catalog, PickRequest request, SetUp fitted)
    {
        outlet = request.Outlet;
        machine = request.Machine;
        inStockOnly = request.InStockOnly;
        this.fitted = fitted;
        kits =
        [
            .. catalog.All<Kit>().Where(k => k.SupersededBy is null
                && outlet?.Offers.GetValueOrDefault(k.Id) is { } offer
                && (!inStockOnly || offer.Stock > 0)),
        ];
    }

    /// <summary>The least price; null when it is not known. False when the outlet cannot hand over the set at all.</summary>
    public bool TryPrice(SetUp set, out long? price)
    {
        price = null;
        if (outlet is null)
            return true;
        long cost = Cheapest(Needs(set)).Cost;
        price = cost < UnknownPrice ? cost : null;
        return cost != NotForSale;
    }

    /// <summary>The shopping list of the least price.</summary>
    public IReadOnlyList<Purchase> List(SetUp set)
    {
        if (outlet is null)
            return [];
        Need[] needs = Needs(set);
        (_, IReadOnlyList<Kit> bought, int covered) = Cheapest(needs);
        return
        [
            .. bought.Select(k => Line(k.Id, 1, needs.Where((_, i) => (Covers(k, needs) & (1 << i)) != 0))),
            .. needs.Where((_, i) => (covered & (1 << i)) == 0).Select(n => Line(n.Part.Id, n.Packs, [n])),
        ];
    }

    private Purchase Line(string id, int packs, IEnumerable<Need> serves)
    {
        Offer? offer = outlet!.Offers.GetValueOrDefault(id);
        return new Purchase(id, packs, offer?.PriceMinor * packs, offer?.Stock, [.. serves.Select(n => n.Slot).Distinct().Order()], null);
    }

    private Need[] Needs(SetUp set)
    {
        var needs = new List<Need>(5);
        Add(Slot.DriveSpring, set.DriveSpring, fitted.DriveSpring);
        AddShims(set.Spring);
        Add(Slot.Flyweight, set.Flyweight.Body, fitted.Flyweight.Body);
        Add(Slot.DrivenSpring, set.Driven.Spring, fitted.Driven.Spring);
        Add(Slot.Helix, set.Driven.Helix, fitted.Driven.Helix);
        return [.. needs];

        void Add(Slot slot, Part wanted, Part has)
        {
            if (wanted.Id != has.Id)
                needs.Add(new Need(slot, wanted, Packs.Needed(wanted, machine)));
        }

        void AddShims(SpringChoice spring)
        {
            int own = spring.Shim?.Id == fitted.Spring.Shim?.Id ? fitted.Spring.Count : 0;
            if (spring.Shim is { } shim && spring.Count > own)
                needs.Add(new Need(Slot.DriveSpring, shim, Packs.Needed(shim, machine, spring.Count - own)));
        }
    }

    // Over subsets of what is needed: the least cost of kits that cover at least that subset; the rest is bought singly.
    private (long Cost, IReadOnlyList<Kit> Kits, int Covered) Cheapest(Need[] needs)
    {
        long[] single = [.. needs.Select(SinglePrice)];
        Kit[] useful = [.. kits.Where(k => Covers(k, needs) != 0)];
        int subsets = 1 << needs.Length;
        var least = new long[subsets];
        var chosen = new IReadOnlyList<Kit>[subsets];
        Array.Fill(least, NotForSale, 1, subsets - 1);
        chosen[0] = [];
        foreach (Kit kit in useful)
        {
            int covers = Covers(kit, needs);
            long price = outlet!.Offers[kit.Id].PriceMinor ?? UnknownPrice;
            for (int subset = subsets - 1; subset >= 0; subset--)
            {
                int with = subset | covers;
                if (least[subset] == NotForSale || with == subset || least[subset] + price >= least[with])
                    continue;
                least[with] = least[subset] + price;
                chosen[with] = [.. chosen[subset], kit];
            }
        }

        int best = 0;
        long bestCost = NotForSale;
        for (int subset = 0; subset < subsets; subset++)
        {
            long cost = least[subset];
            for (int i = 0; i < needs.Length && cost != NotForSale; i++)
            {
                if ((subset & (1 << i)) == 0)
                    cost = single[i] == NotForSale ? NotForSale : cost + single[i];
            }

            if (cost < bestCost)
                (best, bestCost) = (subset, cost);
        }

        return (bestCost, chosen[best] ?? [], best);
    }

    private long SinglePrice(Need need)
    {
        Offer? offer = outlet!.Offers.GetValueOrDefault(need.Part.Id);
        if (inStockOnly && !(offer?.Stock >= need.Packs))
            return NotForSale;
        return offer?.PriceMinor * need.Packs ?? UnknownPrice;
    }

    private static int Covers(Kit kit, Need[] needs)
    {
        int covers = 0;
        for (int i = 0; i < needs.Length; i++)
        {
            if (kit.Contents.Any(line => line.PartId == needs[i].Part.Id && line.Packs >= needs[i].Packs))
                covers |= 1 << i;
        }

        return covers;
    }

    private readonly record struct Need(Slot Slot, Part Part, int Packs);
}
