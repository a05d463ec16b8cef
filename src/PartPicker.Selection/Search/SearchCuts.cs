namespace PartPicker.Selection;

/// <summary>Which boxes of sets may still count, as far as the sets that were found so far tell.</summary>
/// <remarks>
/// A box counts when a member could stand before the last one listed, or be within tolerance without being beaten, if
/// all its floors were reached: miss, number of changes, price, places in the pools. Safe, since what is found only gets better.
/// </remarks>
internal sealed class SearchCuts(
    PickRequest request, SearchIndex index, PriceFloors? floors, RankedList best, Highlights? highlights, Refusals refusals)
{
    private readonly RankOrder order = new(request.RankBy);

    /// <summary>True where the prices of parts are known.</summary>
    public bool Priced => floors is not null;

    /// <summary>The cuts of a box; false where it has no set that can be had, or none that can be paid.</summary>
    public bool TryFor(in Node node, out Cuts cuts)
    {
        int item = ~node.Driven;
        long price = long.MaxValue;
        if (floors is not null)
        {
            bool sold = floors.TryFloor(node.Spring, node.Flyweight, node.Driven, out price);
            if (!sold || price > (request.PriceCeilingMinor ?? long.MaxValue))
            {
                refusals.Add(sold ? PoolRules.PriceCeiling : PoolRules.InStock, index.SizeOf(node));
                cuts = default;
                return false;
            }
        }

        cuts = Of(Floor(
            node,
            item < 0 ? index.DrivenNodes.Changes(node.Driven) : index.ChangesOf(item),
            price,
            item < 0 ? index.DrivenNodes.Place(node.Driven) : item));
        return true;
    }

    /// <summary>The cuts of those members of a box whose driven choice changes so many slots, whatever their price.</summary>
    public Cuts For(in Node node, int drivenChanges) => Of(Floor(node, drivenChanges, Priced ? 0 : long.MaxValue, 0));

    private RankFloor Floor(in Node node, int drivenChanges, long price, int drivenPlace) => new(
        index.SpringNodes.Changes(node.Spring) + index.FlyweightNodes.Changes(node.Flyweight) + drivenChanges,
        price,
        (index.SpringNodes.Place(node.Spring), index.FlyweightNodes.Place(node.Flyweight), drivenPlace));

    private Cuts Of(in RankFloor floor)
    {
        (long inside, long outside) = best.Last is { } last ? order.Before(last, floor) : (long.MaxValue, long.MaxValue);
        return highlights is null
            ? Cuts.Of(inside, outside)
            : Cuts.Of(Math.Max(inside, highlights.Cut(floor)), Math.Max(outside, highlights.ClosestCut(floor)));
    }
}
