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
    private readonly long[] driven;

    private readonly Func<int, long> drivenItem;

    private PriceFloors(long[] springs, long[] flyweights, long[] driven, Func<int, long> drivenItem)
    {
        this.drivenItem = drivenItem;
        this.springs = springs;
        this.flyweights = flyweights;
        this.driven = driven;
    }

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
            index.Springs.Least(s => bySpring[s]),
            index.Flyweights.Least(f => byBody[pools.Flyweights[f].Body.Id]),
            index.Driven.Least(Driven),
            Driven);

        long Driven(int item)
        {
            (int spring, _, int helix) = pools.Driven.Code(item);
            return byDrivenSpring[spring] + byHelix[helix];
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
    public bool TryFloor(int spring, int flyweight, int drivenNode, out long price)
    {
        long sum = springs[spring] + flyweights[flyweight]
            + (drivenNode < 0 ? drivenItem(~drivenNode) : driven[drivenNode]);
        price = sum < Unknown ? sum : long.MaxValue;
        return sum < NotForSale;
    }
}
