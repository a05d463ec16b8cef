using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What to buy for a set at an outlet, for the least money: packs of parts, and kits, each once at most.</summary>
/// <remarks>
/// Needed is what is not already fitted. A hole costs nothing; the masses of stations are not parts of the catalog, so
/// that no price holds them. The packs in kits count one by one and the rest is bought singly; the least price is found
/// over every choice of kits by the packs they bring, so it is exact. An unknown price makes the sum unknown, unless a
/// way round it is known.
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
        kits = [.. OutletStock.Kits(catalog, request)];
    }

    /// <summary>The least price; null when it is not known. False when the outlet cannot hand over the set at all.</summary>
    public bool TryPrice(SetUp set, out long? price)
    {
        price = null;
        if (outlet is null)
            return true;
        long cost = Cheapest(Needs(set), inStockOnly).Cost;
        price = Known(cost);
        return cost != NotForSale;
    }

    /// <summary>The least price of what the set needs in all slots but these; null when it is not known.</summary>
    public long? PriceBeside(SetUp set, IReadOnlyList<Slot> slots) =>
        Known(Cheapest([.. Needs(set).Where(n => !slots.Contains(n.Slot))], inStockOnly).Cost);

    /// <summary>The shopping list of the least price.</summary>
    public IReadOnlyList<Purchase> List(SetUp set)
    {
        if (outlet is null)
            return [];
        Need[] needs = Needs(set);
        return Lines(needs, Cheapest(needs, inStockOnly));
    }

    /// <summary>
    /// The shopping list of the least price for what the set needs in these slots, of what is in stock alone; null when
    /// the stock is known not to suffice, or not known.
    /// </summary>
    public IReadOnlyList<Purchase>? FromStock(SetUp set, IReadOnlyList<Slot> slots)
    {
        Need[] needs = [.. Needs(set).Where(n => slots.Contains(n.Slot))];
        Plan plan = Cheapest(needs, fromStock: true);
        return plan.Cost == NotForSale ? null : Lines(needs, plan);
    }

    /// <summary>True when the line is bought for shims and not for the drive spring that lies on them.</summary>
    public bool ForShimsAlone(Purchase line, SetUp set) => line.Covers is [Slot.DriveSpring]
        && !Array.Exists(Needs(set), n => n.Part is DriveSpring && Brings(line.Id, n.Part));

    private bool Brings(string id, Part part) =>
        id == part.Id || Array.Exists(kits, k => k.Id == id && Packs.In(k, part.Id) > 0);

    private static long? Known(long cost) => cost < UnknownPrice ? cost : null;

    private IReadOnlyList<Purchase> Lines(Need[] needs, Plan plan) =>
    [
        .. plan.Kits.Select(k => Line(k.Id, 1, needs.Where(n => Packs.In(k, n.Part.Id) > 0))),
        .. needs.Zip(plan.Singly).Where(n => n.Second > 0).Select(n => Line(n.First.Part.Id, n.Second, [n.First])),
    ];

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

    // A state says how many packs of each need the kits bring, no more than needed: the digits of one number, each to the
    // base of its need plus one. Over states: the least cost of kits that bring as much; the rest is bought singly.
    private Plan Cheapest(Need[] needs, bool fromStock)
    {
        Kit[] useful =
        [
            .. kits.Where(k => (!fromStock || outlet!.Offers[k.Id].Stock > 0)
                && Array.Exists(needs, n => Packs.In(k, n.Part.Id) > 0)),
        ];
        int states = needs.Aggregate(1, (product, n) => product * (n.Packs + 1));
        var least = new long[states];
        var chosen = new IReadOnlyList<Kit>[states];
        Array.Fill(least, NotForSale, 1, states - 1);
        chosen[0] = [];
        foreach (Kit kit in useful)
        {
            long price = outlet!.Offers[kit.Id].PriceMinor ?? UnknownPrice;

            // From the fullest state down, so that no kit is bought twice.
            for (int state = states - 1; state >= 0; state--)
            {
                if (least[state] == NotForSale)
                    continue;
                int with = With(kit, state, needs);
                if (with == state || least[state] + price >= least[with])
                    continue;
                least[with] = least[state] + price;
                chosen[with] = [.. chosen[state], kit];
            }
        }

        var best = new Plan(NotForSale, [], []);
        for (int state = 0; state < states; state++)
        {
            if (least[state] == NotForSale)
                continue;
            int[] rest = Rest(state, needs);
            long cost = least[state];
            for (int i = 0; i < needs.Length && cost != NotForSale; i++)
            {
                long single = SinglePrice(needs[i].Part, rest[i], fromStock);
                cost = single == NotForSale ? NotForSale : cost + single;
            }

            if (cost < best.Cost)
                best = new Plan(cost, chosen[state], rest);
        }

        return best;
    }

    private static int With(Kit kit, int state, Need[] needs)
    {
        int with = 0;
        int place = 1;
        foreach (Need need in needs)
        {
            int digits = need.Packs + 1;
            int brought = Math.Min(need.Packs, state % digits + Packs.In(kit, need.Part.Id));
            with += brought * place;
            state /= digits;
            place *= digits;
        }

        return with;
    }

    private static int[] Rest(int state, Need[] needs)
    {
        var rest = new int[needs.Length];
        for (int i = 0; i < needs.Length; i++)
        {
            int digits = needs[i].Packs + 1;
            rest[i] = needs[i].Packs - state % digits;
            state /= digits;
        }

        return rest;
    }

    private long SinglePrice(Part part, int packs, bool fromStock)
    {
        if (packs == 0)
            return 0;
        Offer? offer = outlet!.Offers.GetValueOrDefault(part.Id);
        if (fromStock && !(offer?.Stock >= packs))
            return NotForSale;
        return offer?.PriceMinor * packs ?? UnknownPrice;
    }

    private readonly record struct Need(Slot Slot, Part Part, int Packs);

    /// <summary>What it costs: kits, and for each need the packs that are bought singly.</summary>
    private readonly record struct Plan(long Cost, IReadOnlyList<Kit> Kits, int[] Singly);
}
