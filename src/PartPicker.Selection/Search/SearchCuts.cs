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

    // By number of changes; of no reach: to be made.
    private readonly Level[] known = [.. Enumerable.Repeat(Level.Unknown, MaxChanges + 1)];

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

    /// <summary>The greatest miss with which a set of a box may count, where its driven choice changes so many slots; below 0: none may.</summary>
    /// <param name="node">Its springs, flyweights and least error count.</param>
    /// <param name="drivenChanges">Slots.</param>
    /// <param name="reach">What misses by no more does not count any more: it has been found.</param>
    public double WidestOf(in Node node, int drivenChanges, double reach) =>
        floors is null ? Widest(node, drivenChanges, long.MaxValue, reach)
        : floors.TryFloorOf(node.Spring, node.Flyweight, drivenChanges, out long price) ? Widest(node, drivenChanges, price, reach)
        : -1;

    /// <summary>The same with a helix, by its place in the pool.</summary>
    public double WidestOf(in Node node, int drivenChanges, int helix, double reach) =>
        floors is null ? Widest(node, drivenChanges, long.MaxValue, reach)
        : floors.TryFloorOf(node.Spring, node.Flyweight, drivenChanges, helix, out long price) ? Widest(node, drivenChanges, price, reach)
        : -1;

    /// <summary>The same with a driven choice, by the places of its spring, its hole and its helix.</summary>
    public double WidestOf(in Node node, int drivenChanges, (int Spring, int Hole, int Helix) choice, double reach) =>
        floors is null ? Widest(node, drivenChanges, long.MaxValue, reach)
        : floors.TryFloorOf(node.Spring, node.Flyweight, choice, out long price) ? Widest(node, drivenChanges, price, reach)
        : -1;

    private double Widest(in Node node, int drivenChanges, long price, double reach)
    {
        int changes = index.SpringNodes.Changes(node.Spring) + index.FlyweightNodes.Changes(node.Flyweight) + drivenChanges;
        ref Level level = ref known[changes];
        if (level.Reach != reach)
            level = LevelOf(changes, reach);
        if (price > level.PriceLimit)
            return -1;
        if (floors is null)
            return level.Widest.For(node.LeastError);
        double widest = Of(new RankFloor(changes, price, default)).WidestFor(node.LeastError);
        return widest > reach ? widest : -1;
    }

    // Cuts shrink as prices rise: beyond the limit nothing counts that has not been found.
    private Level LevelOf(int changes, double reach)
    {
        if (floors is null)
            return new Level(reach, long.MaxValue, Reaching(Of(new RankFloor(changes, long.MaxValue, default)), reach));
        long limit = request.PriceCeilingMinor ?? long.MaxValue;
        if (Counts(limit))
            return new Level(reach, limit, default);
        long least = -1;
        limit = Math.Min(limit, MostPrice);
        while (limit - least > 1)
        {
            long middle = least + (limit - least) / 2;
            (least, limit) = Counts(middle) ? (middle, limit) : (least, middle);
        }

        return new Level(reach, least, default);

        bool Counts(long price) => Of(new RankFloor(changes, price, default)).WidestFor(0) > reach;
    }

    private static Widths Reaching(in Cuts cuts, double reach)
    {
        double inside = cuts.WidestFor(0);
        double outside = cuts.WidestFor(double.PositiveInfinity);
        return new Widths(inside > reach ? inside : -1, outside > reach ? outside : -1);
    }

    /// <summary>True where a set with this miss, or with more, may count.</summary>
    public bool MayCount(in Node node, double leastMiss) =>
        TryFor(node, out Cuts own) && !own.Exceeded(leastMiss, node.LeastError);

    /// <summary>True where a set that misses by more may still count, whatever its parts.</summary>
    public bool AnyBeyond(double miss) => WidestOfAny(0) > miss;

    /// <summary>True where a set that misses by more and is not within tolerance may still count.</summary>
    public bool AnyOutsideBeyond(double miss) => WidestOfAny(double.PositiveInfinity) > miss;

    private double WidestOfAny(double leastError)
    {
        double widest = -1;
        for (int changes = 0; changes <= MaxChanges; changes++)
        {
            Cuts cuts = Of(new RankFloor(changes, floors is null ? long.MaxValue : 0, default));
            widest = Math.Max(widest, cuts.WidestFor(leastError));
        }

        return widest;
    }

    /// <summary>To be called when a set was found.</summary>
    public void Forget() => Array.Fill(known, Level.Unknown);

    private const int MaxChanges = 5;

    // No set costs more where its price is known.
    private const long MostPrice = 1L << 50;

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

    /// <summary>What counts beyond a reach, of sets with so many changes.</summary>
    /// <param name="Reach">What misses by no more has been found.</param>
    /// <param name="PriceLimit">What costs more does not count.</param>
    /// <param name="Widest">Where prices are left out, the greatest miss that counts.</param>
    private readonly record struct Level(double Reach, long PriceLimit, Widths Widest)
    {
        public static readonly Level Unknown = new(double.NaN, 0, default);
    }

    /// <summary>The greatest miss that counts, below 0 where none does: for sets within tolerance, and for the others.</summary>
    private readonly record struct Widths(double Inside, double Outside)
    {
        public double For(double leastError) => Cuts.IsInside(leastError) ? Inside : Outside;
    }
}
