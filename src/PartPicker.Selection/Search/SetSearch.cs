using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>Ranks the sets of the pools: the same list, in the same order, as trying them all.</summary>
/// <remarks>
/// 1. Springs, flyweights and driven choices stand in boxes within boxes (<see cref="BoxTree"/>); a box of sets is one
///    of each. 2. Of every box <see cref="SetBounds"/> tells a miss that no member falls below, <see cref="PriceFloors"/>
///    a price, the trees a number of changes. 3. The box with the least bound is next; it is halved along its widest
///    side until a set stands alone. 4. A set alone is judged as any set is: its miss comes from the model, not from a
///    bound. 5. A box is dropped when no member can count: none could stand before the last one listed even with all
///    three floors reached, and none could be within tolerance without being beaten. Safe, since what is kept only gets
///    better. 6. When nothing waits, the list is what trying everything gives. Where the work limit ends it before, no
///    set that was not judged misses by less than the least bound that waits.
/// </remarks>
internal sealed class SetSearch(
    Predictor predictor, PickRequest request, Score score, SetUp fitted, PurchasePlanner planner, SearchIndex index,
    PriceFloors? floors)
{
    private const int CancellationStride = 64;

    private readonly SortedDictionary<string, long> refused = new(StringComparer.Ordinal);
    private readonly RankOrder order = new(request.RankBy);
    private readonly RankedList best = new(request.Count, new RankOrder(request.RankBy), request.Group);
    private readonly SetBounds bounds = new(predictor, score, index, request.SlipMargin);
    private readonly Dictionary<(int, int), DriveSide> drives = [];
    private readonly RequestRules rules = new(predictor, request, score, planner);

    /// <summary>Sets whose shift curve was computed.</summary>
    public long Predictions { get; private set; }

    /// <summary>Boxes bounded and sets judged: what the work limit counts.</summary>
    public long WorkDone { get; private set; }

    /// <summary>True when nothing was left to look at: the list is exact.</summary>
    public bool Proven { get; private set; }

    /// <summary>True when the clock, not the work limit, ended the search.</summary>
    public bool TimeWasUp { get; private set; }

    /// <summary>Where not proven: no set that was not judged misses by less.</summary>
    public double? LeastMissLeft { get; private set; }

    public Highlights Highlights { get; } = new();

    /// <summary>Sets that were seen to be refused, by the rule of the request or of the model.</summary>
    public IReadOnlyDictionary<string, long> Refused => refused;

    /// <summary>Engagement that comes nearest to the target; null when there is no drive pair.</summary>
    public double? NearestEngagementRpm(CancellationToken cancellation) => index.Pools.Empty
        ? null
        : new DrivePairs(index, predictor, score, bounds).Nearest(rules.LeastEngagementRpm, cancellation);

    /// <summary>The best sets in their order, at most as many as asked for.</summary>
    /// <param name="cancellation">Calls the search off.</param>
    /// <param name="timeUp">Ends it with what it has.</param>
    public IReadOnlyList<RankedSet> Run(CancellationToken cancellation, CancellationToken timeUp)
    {
        if (index.Pools.Empty)
        {
            Proven = true;
            return [];
        }

        if (rules.LeastEngagementRpm > 0)
        {
            long below = new DrivePairs(index, predictor, score, bounds).CountBelow(rules.LeastEngagementRpm, cancellation);
            if (below > 0)
                Refuse(PoolRules.LaunchRpm, below * index.Pools.Driven.Count);
        }

        NodeStore store = NodeStore.Rent(bounds.WindowLength);
        try
        {
            Work(store, cancellation, timeUp);
        }
        finally
        {
            NodeStore.Return(store);
        }

        return best.Sets;
    }

    private void Work(NodeStore store, CancellationToken cancellation, CancellationToken timeUp)
    {
        int root = store.Take();
        bounds.Open(store.Window(root));
        store[root] = default;
        Consider(store, root, 0);
        for (long round = 0; store.Waiting > 0; round++)
        {
            if (round % CancellationStride == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                TimeWasUp = timeUp.IsCancellationRequested;
            }

            if (WorkDone >= request.WorkLimit || TimeWasUp || store.Waiting > MaxWaiting)
            {
                LeastMissLeft = store.LeastBound;
                return;
            }

            int slot = store.Pop(out double bound);
            if (TryCuts(store[slot], out Cuts cuts) && !cuts.Exceeded(bound, store[slot].LeastError))
                Open(store, slot, bound);
            store.Free(slot);
        }

        Proven = true;
    }

    // Spring, hole and helix.
    private const int DrivenSlots = 3;

    private const int MaxDepth = 128;

    /// <summary>Most boxes that wait at once; as many bytes as a search may take.</summary>
    public const int MaxWaiting = 2_000_000;

    // Step 5.
    private bool TryCuts(in Node node, out Cuts cuts)
    {
        int item = ~node.Driven;
        long price = long.MaxValue;
        if (floors is not null)
        {
            bool sold = floors.TryFloor(node.Spring, node.Flyweight, node.Driven, out price);
            if (!sold || price > (request.PriceCeilingMinor ?? long.MaxValue))
            {
                Refuse(sold ? PoolRules.PriceCeiling : PoolRules.InStock, SizeOf(node));
                cuts = default;
                return false;
            }
        }

        cuts = CutsOf(FloorOf(
            node,
            item < 0 ? index.DrivenNodes.Changes(node.Driven) : index.ChangesOf(item),
            price,
            item < 0 ? index.DrivenNodes.Place(node.Driven) : item));
        return true;
    }

    private RankFloor FloorOf(in Node node, int drivenChanges, long price, int drivenPlace) => new(
        index.SpringNodes.Changes(node.Spring) + index.FlyweightNodes.Changes(node.Flyweight) + drivenChanges,
        price,
        (index.SpringNodes.Place(node.Spring), index.FlyweightNodes.Place(node.Flyweight), drivenPlace));

    private Cuts CutsOf(in RankFloor floor)
    {
        (long inside, long outside) = best.Last is { } last ? order.Before(last, floor) : (long.MaxValue, long.MaxValue);
        outside = Math.Max(outside, Highlights.ClosestCut(floor));
        return Cuts.Of(Math.Max(inside, Highlights.Cut(floor)), outside);
    }

    private long SizeOf(in Node node) =>
        (long)index.Springs.Count(node.Spring) * index.Flyweights.Count(node.Flyweight)
        * (node.Driven < 0 ? 1 : index.Driven.Count(node.Driven));

    // Step 3.
    private void Open(NodeStore store, int slot, double bound)
    {
        Node node = store[slot];
        bool springAlone = index.Springs.IsLeaf(node.Spring);
        bool flyweightAlone = index.Flyweights.IsLeaf(node.Flyweight);
        if (!node.Judged && Alike(node))
        {
            if (node.Unbounded)
                Add(store, slot, node with { Unbounded = false }, bound);
            else
                Judge(store, slot);
            return;
        }

        bool pair = index.SpringNodes.Alike(node.Spring) && index.FlyweightNodes.Alike(node.Flyweight);
        if (pair && !node.Judged && node.Driven >= 0 && TrySweep(store, slot, bound))
            return;
        double spring = springAlone ? -1 : bounds.SpringWidth(index.Springs, node.Spring);
        double flyweight = flyweightAlone ? -1 : bounds.FlyweightWidth(index.Flyweights, node.Flyweight);
        double driven = node.Driven < 0 || index.Driven.IsLeaf(node.Driven) || !pair ? -1 : bounds.DrivenWidth(index.Driven, node.Driven);
        if (!springAlone && spring >= flyweight && spring >= driven)
        {
            int child = index.Springs.Child(node.Spring);
            Add(store, slot, node with { Spring = child }, bound);
            Add(store, slot, node with { Spring = child + 1 }, bound);
        }
        else if (!flyweightAlone && flyweight >= driven)
        {
            int child = index.Flyweights.Child(node.Flyweight);
            Add(store, slot, node with { Flyweight = child }, bound);
            Add(store, slot, node with { Flyweight = child + 1 }, bound);
        }
        else if (driven >= 0)
        {
            int child = index.Driven.Child(node.Driven);
            Add(store, slot, node with { Driven = child }, bound);
            Add(store, slot, node with { Driven = child + 1 }, bound);
        }
        else
        {
            foreach (int item in index.Driven.Items(node.Driven))
            {
                if (!WasListed(node, item))
                    Add(store, slot, node with { Driven = ~item, Swept = 0 }, bound);
            }
        }
    }

    // Step 4: the driven choices of a drive pair by rising miss, a ring at a time.
    private bool TrySweep(NodeStore store, int slot, double bound)
    {
        Node node = store[slot];
        PairSweep sweep = bounds.Sweep;
        if (!sweep.TryNext(node.Swept, bound, out int rung))
            return false;
        PairView view = sweep.Look(node, rung);
        if (view.Sight == Sight.Unclear)
            return false;
        WorkDone++;
        if (view.Sight == Sight.Clear)
            ListRing(store, slot, bound, view);
        if (TryCuts(node, out Cuts cuts) && !cuts.Exceeded(view.Radius, node.LeastError))
            store.Push(Copy(store, slot, node with { Swept = rung + 1 }), view.Radius);
        return true;
    }

    private void ListRing(NodeStore store, int slot, double bound, PairView view)
    {
        Node node = store[slot];
        double engagement = bounds.LeastEngagementError(node);
        Span<double> limits = stackalloc double[DrivenSlots + 1];
        for (int changes = 0; changes < limits.Length; changes++)
        {
            Cuts cuts = CutsOf(FloorOf(node, changes, floors is null ? long.MaxValue : 0, 0));
            limits[changes] = cuts.Exceeded(bound, node.LeastError)
                ? -1
                : bounds.Sweep.Limit(Math.Min(view.Radius, cuts.Widest), engagement);
        }

        Span<int> stack = stackalloc int[MaxDepth];
        foreach (DrivenGroup group in index.DrivenGroups)
        {
            double limit = limits[group.Changes];
            if (limit < 0)
                continue;
            WorkDone++;
            if (!view.MayHold(group, limit))
                continue;
            int top = 0;
            stack[top++] = group.Root;
            while (top > 0)
            {
                int at = stack[--top];
                WorkDone++;
                if (view.SquaresOf(at, limit) > limit)
                    continue;
                if (floors is not null
                    && (!TryCuts(node with { Driven = at }, out Cuts cuts) || cuts.Exceeded(bound, node.LeastError)))
                {
                    continue;
                }

                if (index.Driven.IsLeaf(at))
                {
                    ListItems(store, slot, bound, view, index.Driven.Items(at), limit);
                    continue;
                }

                stack[top++] = index.Driven.Child(at);
                stack[top++] = index.Driven.Child(at) + 1;
            }
        }
    }

    private void ListItems(NodeStore store, int slot, double bound, PairView view, ReadOnlySpan<int> items, double limit)
    {
        Node node = store[slot];
        double engagement = bounds.LeastEngagementError(node);
        foreach (int item in items)
        {
            double squares = view.SquaresOfItem(item, limit, out double greatest);
            if (squares > limit || WasListed(node, item))
                continue;
            Node alone = node with
            {
                Driven = ~item, Swept = 0, Unbounded = true, LeastError = Math.Max(node.LeastError, greatest),
            };
            double miss = Math.Max(bound, bounds.Sweep.Miss(engagement, squares));
            if (TryCuts(alone, out Cuts cuts) && !cuts.Exceeded(miss, alone.LeastError))
                store.Push(Copy(store, slot, alone), miss);
        }
    }

    // True where an earlier ring has listed the item.
    private bool WasListed(in Node node, int item)
    {
        if (node.Swept == 0)
            return false;
        PairView view = bounds.Sweep.LookAgain(node, node.Swept - 1);
        double limit = bounds.Sweep.Limit(view.Radius, bounds.LeastEngagementError(node));
        return view.Sight == Sight.Clear && view.SquaresOfItem(item, limit, out _) <= limit;
    }

    private static int Copy(NodeStore store, int slot, in Node node)
    {
        int copy = store.Take();
        store[copy] = node;
        store.Window(slot).CopyTo(store.Window(copy));
        return copy;
    }

    // The model tells one member's miss, and so that of all.
    private bool Alike(in Node node) =>
        index.SpringNodes.Alike(node.Spring) && index.FlyweightNodes.Alike(node.Flyweight)
        && (node.Driven < 0 || index.DrivenNodes.Alike(node.Driven));

    private void Add(NodeStore store, int parent, in Node child, double bound)
    {
        int slot = store.Take();
        store[slot] = child;
        store.Window(parent).CopyTo(store.Window(slot));
        bool samePairs = child.Spring == store[parent].Spring && child.Flyweight == store[parent].Flyweight;
        Consider(store, slot, bound, samePairs || child.LeastEngagement == child.GreatestEngagement);
    }

    // Step 2.
    private void Consider(NodeStore store, int slot, double bound, bool engagementKnown = false)
    {
        ref Node node = ref store[slot];
        if (!engagementKnown)
            SetEngagement(ref node);
        if (node.GreatestEngagement < rules.LeastEngagementRpm || !TryCuts(node, out Cuts cuts))
        {
            store.Free(slot);
            return;
        }

        WorkDone++;
        BoxVerdict verdict;
        if (node.Judged)
        {
            verdict = cuts.Exceeded(bound, node.LeastError) ? BoxVerdict.MissesTooMuch : BoxVerdict.Open;
        }
        else
        {
            verdict = Bound(ref node, store.Window(slot), cuts, out double least);
            bound = Math.Max(bound, least);
        }

        if (verdict == BoxVerdict.Open)
        {
            Keep(store, slot, bound);
            return;
        }

        // Which of its members engage too low is counted elsewhere.
        if (verdict != BoxVerdict.MissesTooMuch && node.LeastEngagement >= rules.LeastEngagementRpm)
            Refuse(verdict == BoxVerdict.Slips ? PoolRules.SlipMargin : PoolRules.DoesNotShift, SizeOf(node));
        store.Free(slot);
    }

    // A set alone that may better the list much is judged at once, so that others are dropped early.
    private void Keep(NodeStore store, int slot, double bound)
    {
        Node node = store[slot];
        bool early = best.Last is not { } last || Score.Rounded(2 * bound) < last.RoundedMiss;
        if (node.Judged && Alone(node))
            Offer(node, bound);
        else if (early && !node.Judged && Alike(node))
            Judge(store, slot);
        else
        {
            store.Push(slot, bound);
            return;
        }

        store.Free(slot);
    }

    private bool Alone(in Node node) =>
        node.Driven < 0 && index.Springs.IsLeaf(node.Spring) && index.Flyweights.IsLeaf(node.Flyweight);

    private BoxVerdict Bound(ref Node node, Span<ushort> window, Cuts cuts, out double bound)
    {
        Span<float> low = stackalloc float[bounds.WindowLength];
        Span<float> high = stackalloc float[bounds.WindowLength];
        ReadOnlySpan<float> drivenLow = low;
        ReadOnlySpan<float> drivenHigh = high;
        if (node.Driven < 0)
        {
            Corner(~node.Driven, low, high);
        }
        else
        {
            drivenLow = index.Driven.Low(node.Driven);
            drivenHigh = index.Driven.High(node.Driven);
        }

        return bounds.Bound(
            index.Springs.Low(node.Spring), index.Springs.High(node.Spring),
            index.Flyweights.Low(node.Flyweight), index.Flyweights.High(node.Flyweight),
            drivenLow, drivenHigh, cuts, ref node, window, out bound);
    }

    private void SetEngagement(ref Node node) => (node.LeastEngagement, node.GreatestEngagement) = bounds.Engagement(
        index.Springs.Low(node.Spring), index.Springs.High(node.Spring),
        index.Flyweights.Low(node.Flyweight), index.Flyweights.High(node.Flyweight));

    private void Corner(int item, Span<float> low, Span<float> high)
    {
        int points = low.Length / 2;
        Span<double> standing = stackalloc double[points];
        index.Clamps.Standing(item, standing);
        ReadOnlySpan<double> perTorque = index.Clamps.PerTorque(item);
        for (int j = 0; j < points; j++)
        {
            (low[j], high[j]) = (BoxTree.Below(standing[j]), BoxTree.Above(standing[j]));
            (low[points + j], high[points + j]) = (BoxTree.Below(perTorque[j]), BoxTree.Above(perTorque[j]));
        }
    }

    // Step 4. With its true engagement a box of alike sets is bounded once more before the model is asked.
    private void Judge(NodeStore store, int slot)
    {
        Node node = store[slot];
        int s = index.SpringNodes.Place(node.Spring);
        int f = index.FlyweightNodes.Place(node.Flyweight);
        int d = node.Driven < 0 ? ~node.Driven : index.DrivenNodes.Place(node.Driven);
        if (!drives.TryGetValue((s, f), out DriveSide? drive))
            drives[(s, f)] = drive = predictor.Drive(index.Pools.DriveSprings[s], index.Pools.Flyweights[f]);
        if (!rules.Launches(drive))
            return;
        double rpm = drive.Engagement.Rpm;
        if (node.LeastEngagement < rpm)
        {
            Add(store, slot, node with { LeastEngagement = rpm, GreatestEngagement = rpm }, 0);
            return;
        }

        WorkDone++;
        Predictions++;
        Span<double> errors = stackalloc double[predictor.Model.Positions.Count];
        if (rules.TryErrors(drive, predictor.Driven(index.Pools.Driven[d]), errors) is { } rule)
        {
            Refuse(rule, SizeOf(node));
            return;
        }

        double engagement = score.EngagementError(rpm);
        double greatest = Math.Abs(engagement);
        foreach (double error in errors)
            greatest = Math.Max(greatest, Math.Abs(error));
        Add(store, slot, node with { Judged = true, LeastError = greatest }, score.Miss(engagement, errors));
    }

    private void Offer(in Node node, double miss)
    {
        int s = index.SpringNodes.Place(node.Spring);
        int f = index.FlyweightNodes.Place(node.Flyweight);
        int d = ~node.Driven;
        var set = new SetUp(index.Pools.DriveSprings[s], index.Pools.Flyweights[f], index.Pools.Driven[d]);
        if (rules.TryPrice(set, out long? price) is { } rule)
        {
            Refuse(rule);
            return;
        }

        var key = new RankKey(
            Score.Rounded(miss), node.LeastError <= 1, set.ChangesFrom(fitted).Count, price, s, f, d);
        var ranked = new RankedSet(key, set, miss);
        best.Offer(ranked);
        Highlights.Offer(ranked);
    }

    private void Refuse(string rule, long count = 1) => refused[rule] = refused.GetValueOrDefault(rule) + count;
}
