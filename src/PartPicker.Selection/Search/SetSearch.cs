using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>Ranks the sets of the pools: the same list, in the same order, as trying them all.</summary>
/// <remarks>
/// 1. Springs, flyweights and driven choices stand in boxes within boxes (<see cref="BoxTree"/>); a box of sets is one
///    of each. 2. Of every box <see cref="SetBounds"/> tells a miss that no member falls below, <see cref="PriceFloors"/>
///    a price, the trees a number of changes. 3. The box with the least bound is next; its drive side is halved along
///    the wider side until one drive pair is left. 4. Of a pair <see cref="DrivenRings"/> lists the driven choices that
///    may miss by a little, then by more; where it cannot tell, the driven side is halved as well. 5. A set alone is
///    judged as any set is: its miss comes from the model, not from a bound. 6. A box is dropped when no member can
///    count: see <see cref="SearchCuts"/>. 7. When nothing waits, the list is what trying everything gives. Where the
///    work limit ends it before, no set that was not judged misses by less than the least bound that waits.
/// </remarks>
internal sealed class SetSearch
{
    private const int CancellationStride = 64;

    /// <summary>Most boxes that wait at once; as many bytes as a search may take.</summary>
    public const int MaxWaiting = 2_000_000;

    // The root of the driven tree: a part of it is no pair by itself, and its ring would hold what others hold.
    private const int AllDriven = 0;

    private readonly PickRequest request;
    private readonly Condition[] conditions;
    private readonly SetUp fitted;
    private readonly SearchIndex index;
    private readonly RankedList best;
    private readonly RequestRules[] rules;
    private readonly SetBounds[] bounds;
    private readonly SearchCuts cuts;
    private readonly DrivenRings rings;
    private readonly Refusals refusals = new();
    private readonly Dictionary<(int, int), DriveSide> drives = [];
    private long work;

    /// <param name="conditions">
    /// The air, with what is wanted in it; of several the greatest miss and the greatest error count. Engagement hangs on
    /// no air: it must be the same in all.
    /// </param>
    /// <param name="listOnly">True where nothing but the list is wanted, and no highlights.</param>
    public SetSearch(
        IReadOnlyList<Condition> conditions, PickRequest request, SetUp fitted, PurchasePlanner planner, SearchIndex index,
        PriceFloors? floors, bool listOnly = false)
    {
        this.conditions = [.. conditions];
        this.request = request;
        this.fitted = fitted;
        this.index = index;
        best = new RankedList(request.Count, new RankOrder(request.RankBy), request.Group);
        rules = [.. conditions.Select(c => new RequestRules(c.Predictor, request, c.Score, planner))];
        bounds = [.. conditions.Select(c => new SetBounds(c.Predictor, c.Score, index, request.SlipMargin))];
        cuts = new SearchCuts(request, index, floors, best, listOnly ? null : Highlights, refusals);
        rings = new DrivenRings(index, bounds[0], cuts, Found);
    }

    /// <summary>Sets whose shift curve was computed.</summary>
    public long Predictions { get; private set; }

    /// <summary>Boxes bounded, helices and pairs looked at, sets judged: what the work limit counts.</summary>
    public long WorkDone => work + rings.WorkDone;

    /// <summary>True when nothing was left to look at: the list is exact.</summary>
    public bool Proven { get; private set; }

    /// <summary>True when the clock, not the work limit, ended the search.</summary>
    public bool TimeWasUp { get; private set; }

    /// <summary>Where not proven: no set that was not judged misses by less.</summary>
    public double? LeastMissLeft { get; private set; }

    public Highlights Highlights { get; } = new();

    /// <summary>Sets that were seen to be refused, by the rule of the request or of the model.</summary>
    public IReadOnlyDictionary<string, long> Refused => refusals.ByRule;

    /// <summary>Engagement that comes nearest to the target; null when there is no drive pair.</summary>
    public double? NearestEngagementRpm(CancellationToken cancellation) => index.Pools.Empty
        ? null
        : new DrivePairs(index, conditions[0], bounds[0]).Nearest(rules[0].LeastEngagementRpm, cancellation);

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

        if (rules[0].LeastEngagementRpm > 0)
        {
            long below = new DrivePairs(index, conditions[0], bounds[0]).CountBelow(rules[0].LeastEngagementRpm, cancellation);
            if (below > 0)
                refusals.Add(PoolRules.LaunchRpm, below * index.Pools.Driven.Count);
        }

        NodeStore store = NodeStore.Rent(bounds.Sum(b => b.WindowLength));
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
        for (int c = 0; c < bounds.Length; c++)
            bounds[c].Open(WindowOf(c, store.Window(root)));
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
            if (cuts.TryFor(store[slot], out Cuts own) && !own.Exceeded(bound, store[slot].LeastError))
                Open(store, slot, bound);
            store.Free(slot);
        }

        Proven = true;
    }

    // Steps 3 and 4.
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
        if (pair && !node.Judged && node.Driven == AllDriven && rings.TryNext(store, slot, bound))
            return;
        double spring = springAlone ? -1 : bounds[0].SpringWidth(index.Springs, node.Spring);
        double flyweight = flyweightAlone ? -1 : bounds[0].FlyweightWidth(index.Flyweights, node.Flyweight);
        double driven = node.Driven < 0 || index.Driven.IsLeaf(node.Driven) || !pair ? -1 : bounds[0].DrivenWidth(index.Driven, node.Driven);
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
                if (!rings.Listed(node, item))
                    Add(store, slot, node with { Driven = ~item, Swept = 0 }, bound);
            }
        }
    }

    // The model tells one member's miss, and so that of all.
    private bool Alike(in Node node) =>
        index.SpringNodes.Alike(node.Spring) && index.FlyweightNodes.Alike(node.Flyweight)
        && (node.Driven < 0 || index.DrivenNodes.Alike(node.Driven));

    private void Add(NodeStore store, int parent, in Node child, double bound)
    {
        int slot = store.TakeBeside(parent, child);
        bool samePairs = child.Spring == store[parent].Spring && child.Flyweight == store[parent].Flyweight;
        Consider(store, slot, bound, samePairs || child.LeastEngagement == child.GreatestEngagement);
    }

    // Step 2.
    private void Consider(NodeStore store, int slot, double bound, bool engagementKnown = false)
    {
        ref Node node = ref store[slot];
        if (!engagementKnown)
            SetEngagement(ref node);
        if (node.GreatestEngagement < rules[0].LeastEngagementRpm || !cuts.TryFor(node, out Cuts own))
        {
            store.Free(slot);
            return;
        }

        work++;
        BoxVerdict verdict;
        if (node.Judged)
        {
            verdict = own.Exceeded(bound, node.LeastError) ? BoxVerdict.MissesTooMuch : BoxVerdict.Open;
        }
        else
        {
            verdict = Bound(ref node, store.Window(slot), own, out double least);
            bound = Math.Max(bound, least);
        }

        if (verdict == BoxVerdict.Open)
        {
            Keep(store, slot, bound);
            return;
        }

        // Which of its members engage too low is counted elsewhere.
        if (verdict != BoxVerdict.MissesTooMuch && node.LeastEngagement >= rules[0].LeastEngagementRpm)
            refusals.Add(verdict == BoxVerdict.Slips ? PoolRules.SlipMargin : PoolRules.DoesNotShift, index.SizeOf(node));
        store.Free(slot);
    }

    // A set alone that may better the list much is judged at once, so that others are dropped early.
    private void Keep(NodeStore store, int slot, double bound)
    {
        Node node = store[slot];
        if (node.Judged && Alone(node))
            Offer(node, bound);
        else if (!node.Judged && Alike(node) && Early(bound))
            Judge(store, slot);
        else
        {
            store.Push(slot, bound);
            return;
        }

        store.Free(slot);
    }

    // The same of a set that a ring has listed.
    private void Found(NodeStore store, int pair, Node set, double bound)
    {
        if (!Early(bound))
        {
            store.PushBeside(pair, set, bound);
            return;
        }

        int slot = store.TakeBeside(pair, set with { Unbounded = false });
        Judge(store, slot);
        store.Free(slot);
    }

    private bool Early(double bound) =>
        WorkDone < request.WorkLimit && (best.Last is not { } last || Score.Rounded(2 * bound) < last.RoundedMiss);

    private bool Alone(in Node node) =>
        node.Driven < 0 && index.Springs.IsLeaf(node.Spring) && index.Flyweights.IsLeaf(node.Flyweight);

    private BoxVerdict Bound(ref Node node, Span<ushort> window, Cuts own, out double bound)
    {
        Span<float> low = stackalloc float[bounds[0].WindowLength];
        Span<float> high = stackalloc float[bounds[0].WindowLength];
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

        bound = 0;
        double error = 0;
        for (int c = 0; c < bounds.Length; c++)
        {
            BoxVerdict verdict = bounds[c].Bound(
                index.Springs.Low(node.Spring), index.Springs.High(node.Spring),
                index.Flyweights.Low(node.Flyweight), index.Flyweights.High(node.Flyweight),
                drivenLow, drivenHigh, own, ref node, WindowOf(c, window), out double least);
            if (verdict != BoxVerdict.Open)
                return verdict;
            bound = Math.Max(bound, least);
            error = Math.Max(error, node.LeastError);
        }

        node.LeastError = error;
        return BoxVerdict.Open;
    }

    private Span<ushort> WindowOf(int condition, Span<ushort> window) =>
        window.Slice(condition * bounds[0].WindowLength, bounds[0].WindowLength);

    private void SetEngagement(ref Node node) => (node.LeastEngagement, node.GreatestEngagement) = bounds[0].Engagement(
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

    // Step 5. With its true engagement a box of alike sets is bounded once more before the model is asked.
    private void Judge(NodeStore store, int slot)
    {
        Node node = store[slot];
        int s = index.SpringNodes.Place(node.Spring);
        int f = index.FlyweightNodes.Place(node.Flyweight);
        int d = node.Driven < 0 ? ~node.Driven : index.DrivenNodes.Place(node.Driven);
        if (node.Driven >= 0 && rings.Listed(node, d))
            return;
        if (!drives.TryGetValue((s, f), out DriveSide? drive))
            drives[(s, f)] = drive = conditions[0].Predictor.Drive(index.Pools.DriveSprings[s], index.Pools.Flyweights[f]);
        if (!rules[0].Launches(drive))
            return;
        double rpm = drive.Engagement.Rpm;
        if (node.LeastEngagement < rpm)
        {
            Add(store, slot, node with { LeastEngagement = rpm, GreatestEngagement = rpm }, 0);
            return;
        }

        work++;
        Predictions++;
        DrivenChoice driven = index.Pools.Driven[d];
        Span<double> errors = stackalloc double[bounds[0].WindowLength / 2];
        double engagement = conditions[0].Score.EngagementError(rpm);
        double greatest = Math.Abs(engagement);
        double miss = 0;
        for (int c = 0; c < conditions.Length; c++)
        {
            if (rules[c].TryErrors(drive, conditions[c].Predictor.Driven(driven), errors) is { } rule)
            {
                refusals.Add(rule, index.SizeOf(node));
                return;
            }

            foreach (double error in errors)
                greatest = Math.Max(greatest, Math.Abs(error));
            miss = Math.Max(miss, conditions[c].Score.Miss(engagement, errors));
        }

        Add(store, slot, node with { Judged = true, LeastError = greatest }, miss);
    }

    private void Offer(in Node node, double miss)
    {
        int s = index.SpringNodes.Place(node.Spring);
        int f = index.FlyweightNodes.Place(node.Flyweight);
        int d = ~node.Driven;
        var set = new SetUp(index.Pools.DriveSprings[s], index.Pools.Flyweights[f], index.Pools.Driven[d]);
        if (rules[0].TryPrice(set, out long? price) is { } rule)
        {
            refusals.Add(rule);
            return;
        }

        var key = new RankKey(
            Score.Rounded(miss), node.LeastError <= 1, set.ChangesFrom(fitted).Count, price, s, f, d);
        var ranked = new RankedSet(key, set, miss);
        best.Offer(ranked);
        Highlights.Offer(ranked);
    }
}

/// <summary>An air, and what is wanted in it.</summary>
internal sealed record Condition(Predictor Predictor, Score Score);
