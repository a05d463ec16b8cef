using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>For each node of the trees a price that none of its items falls below, as its share of a set's price.</summary>
/// <remarks>
/// Bought alone, a part costs its own price or that of a kit that covers it. In a set a kit's price may serve as many
/// parts as the kit has lines; shared among them evenly, each bears at least its price alone over that number. So the
/// sum of these shares is a floor of the whole price. What cannot be had alone cannot be had in a set.
/// </remarks>
internal sealed class PriceFloors
{
    // Above any sum of known prices; a few of them do not overflow.
    private const long Unknown = 1L << 50;
    private const long NotForSale = 1L << 58;

    private readonly long[] springs;
    private readonly long[] flyweights;
    private readonly Lazy<long[]> driven;
    private readonly long[] byDrivenSpring;
    private readonly long[] byHelix;
    private readonly Func<int, long> ofItem;

    // Of the driven spring, by how many of spring and hole are changed; likewise of spring, hole and helix together.
    private readonly long[] leastSpring;
    private readonly long[] leastDriven;

    private readonly int fittedHelix;

    private PriceFloors(
        SearchIndex index, Func<int, long> ofSpring, Func<int, long> ofFlyweight, long[] byDrivenSpring, long[] byHelix,
        (int Spring, int Helix) fitted)
    {
        this.byDrivenSpring = byDrivenSpring;
        this.byHelix = byHelix;
        fittedHelix = fitted.Helix;
        springs = index.Springs.Least(ofSpring);
        flyweights = index.Flyweights.Least(ofFlyweight);
        ofItem = item =>
        {
            (int spring, _, int helix) = index.Pools.Driven.Code(item);
            return byDrivenSpring[spring] + byHelix[helix];
        };
        driven = new Lazy<long[]>(() => index.Driven.Least(ofItem));
        (long fittedSpring, long otherSpring) = Apart(byDrivenSpring, fitted.Spring);
        (long fittedHelixPrice, long otherHelix) = Apart(byHelix, fitted.Helix);
        leastSpring = [fittedSpring, Math.Min(fittedSpring, otherSpring), otherSpring, NotForSale];
        leastDriven =
        [
            .. Enumerable.Range(0, DrivenLevels.Count).Select(changes => Math.Min(
                fittedHelixPrice + leastSpring[changes],
                changes == 0 ? NotForSale : otherHelix + leastSpring[changes - 1])),
        ];
    }

    // The fitted one by itself, and the least of the others.
    private static (long Fitted, long Other) Apart(long[] prices, int fitted) => (
        fitted < 0 ? NotForSale : prices[fitted],
        prices.Where((_, place) => place != fitted).Append(NotForSale).Min());

    /// <summary>Null where no outlet is named: then no price is known.</summary>
    public static PriceFloors? Of(SearchIndex index, CatalogSnapshot catalog, PickRequest request, PurchasePlanner planner, SetUp fitted)
    {
        if (request.Outlet is null || index.Pools.Empty)
            return null;
        CandidatePools pools = index.Pools;
        Dictionary<string, int> sharers = [];
        foreach (Kit kit in catalog.All<Kit>())
        {
            foreach (KitLine line in kit.Contents)
                sharers[line.PartId] = Math.Max(sharers.GetValueOrDefault(line.PartId, 1), kit.Contents.Count);
        }

        long[] bySpring = [.. pools.DriveSprings.Select(s =>
            Share(fitted with { Spring = s }, s.Spring.Id, s.Shim?.Id ?? s.Spring.Id))];
        Dictionary<string, long> byBody = [];
        foreach (FlyweightChoice choice in pools.Flyweights)
        {
            if (!byBody.ContainsKey(choice.Body.Id))
                byBody[choice.Body.Id] = Share(fitted with { Flyweight = choice }, choice.Body.Id);
        }

        long[] byDrivenSpring = [.. pools.Driven.Springs.Select(s =>
            Share(fitted with { Driven = fitted.Driven with { Spring = s } }, s.Id))];
        long[] byHelix = [.. pools.Driven.Helices.Select(h =>
            Share(fitted with { Driven = fitted.Driven with { Helix = h } }, h.Id))];
        return new PriceFloors(
            index, s => bySpring[s], f => byBody[pools.Flyweights[f].Body.Id], byDrivenSpring, byHelix,
            (Place(pools.Driven.Springs, s => s.Id == fitted.Driven.Spring.Id),
                Place(pools.Driven.Helices, h => h.Id == fitted.Driven.Helix.Id)));

        static int Place<T>(IReadOnlyList<T> parts, Func<T, bool> fitted)
        {
            int place = parts.Count - 1;
            while (place >= 0 && !fitted(parts[place]))
                place--;
            return place;
        }

        long Share(SetUp set, params ReadOnlySpan<string> parts)
        {
            if (!planner.TryPrice(set, out long? price))
                return NotForSale;
            int most = 1;
            foreach (string part in parts)
                most = Math.Max(most, sharers.GetValueOrDefault(part, 1));
            return (price ?? Unknown) / most;
        }
    }

    /// <summary>False where no member can be had at all; the floor is the greatest number where no price is known.</summary>
    /// <param name="drivenNode">A node of the driven tree, or the complement of one item.</param>
    public bool TryFloor(int spring, int flyweight, int drivenNode, out long price) => TrySum(
        springs[spring] + flyweights[flyweight] + (drivenNode < 0 ? ofItem(~drivenNode) : driven.Value[drivenNode]), out price);

    /// <summary>The same where the driven choice changes so many slots.</summary>
    public bool TryFloorOf(int spring, int flyweight, int drivenChanges, out long price) =>
        TrySum(springs[spring] + flyweights[flyweight] + leastDriven[drivenChanges], out price);

    /// <summary>The same with a helix, by its place in the pool.</summary>
    public bool TryFloorOf(int spring, int flyweight, int drivenChanges, int helix, out long price)
    {
        int beside = helix == fittedHelix ? drivenChanges : drivenChanges - 1;
        return TrySum(springs[spring] + flyweights[flyweight] + byHelix[helix] + leastSpring[beside], out price);
    }

    /// <summary>The same with a driven choice, by the places of its spring, its hole and its helix.</summary>
    public bool TryFloorOf(int spring, int flyweight, (int Spring, int Hole, int Helix) choice, out long price) =>
        TrySum(springs[spring] + flyweights[flyweight] + byDrivenSpring[choice.Spring] + byHelix[choice.Helix], out price);

    private static bool TrySum(long sum, out long price)
    {
        price = sum < Unknown ? sum : long.MaxValue;
        return sum < NotForSale;
    }
}
