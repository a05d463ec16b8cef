namespace PartPicker.Selection;

/// <summary>The driven choices of a drive pair by rising miss, a ring at a time.</summary>
/// <remarks>
/// What a look at the pair says of a radius (<see cref="PairSweep"/>) is asked first of each helix, then of the boxes of
/// those that may hold something, then of each choice. What may miss by no more than the radius is put in the queue by
/// itself; the pair follows with the radius as its bound, for whatever misses by more.
/// </remarks>
internal sealed class DrivenRings(SearchIndex index, SetBounds bounds, SearchCuts cuts)
{
    // Spring, hole and helix.
    private const int DrivenSlots = 3;

    // More than a tree of boxes is high.
    private const int MaxDepth = 128;

    private readonly PairSweep sweep = bounds.Sweep;

    /// <summary>Helices, boxes and pairs looked at.</summary>
    public long WorkDone { get; private set; }

    /// <summary>Lists the next ring of the pair in a slot of the store; false where clamps cannot tell its choices apart.</summary>
    /// <param name="bound">No member misses by less.</param>
    public bool TryNext(NodeStore store, int slot, double bound)
    {
        Node node = store[slot];
        Span<double> widest = stackalloc double[DrivenSlots + 1];
        double aim = double.PositiveInfinity;
        for (int changes = 0; changes < widest.Length; changes++)
        {
            Cuts own = cuts.For(node, changes);
            widest[changes] = own.Exceeded(bound, node.LeastError) ? -1 : own.Widest;
            if (widest[changes] >= 0)
                aim = Math.Min(aim, widest[changes]);
        }

        if (!sweep.TryNext(node.Swept, bound, aim, out int rung))
            return false;
        PairView view = sweep.Look(node, rung);
        if (view.Sight == Sight.Unclear)
            return false;
        WorkDone++;
        if (view.Sight == Sight.Clear)
            List(new Ring(store, slot, node, bound, view, bounds.LeastEngagementError(node)), widest);
        if (cuts.TryFor(node, out Cuts left) && !left.Exceeded(view.Radius, node.LeastError))
            store.PushBeside(slot, node with { Swept = rung + 1 }, view.Radius);
        return true;
    }

    /// <summary>True where an earlier ring has listed the item.</summary>
    public bool Listed(in Node node, int item)
    {
        if (node.Swept == 0)
            return false;
        PairView view = sweep.LookAgain(node, node.Swept - 1);
        double limit = sweep.Limit(view.Radius, bounds.LeastEngagementError(node));
        return view.Sight == Sight.Clear && view.SquaresOfItem(item, limit, out _) <= limit;
    }

    private void List(in Ring ring, ReadOnlySpan<double> widest)
    {
        Span<double> limits = stackalloc double[widest.Length];
        for (int changes = 0; changes < limits.Length; changes++)
        {
            limits[changes] = widest[changes] < 0
                ? -1
                : sweep.Limit(Math.Min(ring.View.Radius, widest[changes]), ring.EngagementError);
        }

        foreach (DrivenGroup group in index.MixedGroups)
        {
            if (limits[group.Changes] >= 0)
                ListGroup(ring, group.Root, limits[group.Changes]);
        }

        DrivenGroup[] groups = index.HelixGroups;
        Span<double> ofHelices = stackalloc double[index.Frames.Lanes];
        Span<bool> held = stackalloc bool[groups.Length];
        ofHelices.Fill(-1);
        for (int g = 0; g < groups.Length; g++)
        {
            ofHelices[g] = limits[groups[g].Changes];
            WorkDone += ofHelices[g] < 0 ? 0 : 1;
        }

        ring.View.MayHold(ofHelices, held);
        for (int g = 0; g < groups.Length; g++)
        {
            if (held[g] && ofHelices[g] >= 0)
                ListGroup(ring, groups[g].Root, ofHelices[g]);
        }
    }

    private void ListGroup(in Ring ring, int root, double limit)
    {
        Span<int> stack = stackalloc int[MaxDepth];
        int top = 0;
        stack[top++] = root;
        while (top > 0)
        {
            int at = stack[--top];
            WorkDone++;
            if (ring.View.SquaresOf(at, limit) > limit || (cuts.Priced && !MayCount(ring.Pair with { Driven = at }, ring.Bound)))
                continue;
            if (index.Driven.IsLeaf(at))
            {
                ListItems(ring, index.Driven.Items(at), limit);
                continue;
            }

            stack[top++] = index.Driven.Child(at);
            stack[top++] = index.Driven.Child(at) + 1;
        }
    }

    private void ListItems(in Ring ring, ReadOnlySpan<int> items, double limit)
    {
        foreach (int item in items)
        {
            double squares = ring.View.SquaresOfItem(item, limit, out double greatest);
            if (squares > limit || Listed(ring.Pair, item))
                continue;
            Node alone = ring.Pair with
            {
                Driven = ~item,
                Swept = 0,
                Unbounded = true,
                LeastError = Math.Max(ring.Pair.LeastError, greatest),
            };
            double miss = Math.Max(ring.Bound, sweep.Miss(ring.EngagementError, squares));
            if (MayCount(alone, miss))
                ring.Store.PushBeside(ring.Slot, alone, miss);
        }
    }

    private bool MayCount(in Node node, double miss) =>
        cuts.TryFor(node, out Cuts own) && !own.Exceeded(miss, node.LeastError);

    private readonly record struct Ring(
        NodeStore Store, int Slot, Node Pair, double Bound, PairView View, double EngagementError);
}
