using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>Ranks the sets of the pools: the same list, in the same order, as trying them all.</summary>
/// <remarks>
/// 1. Springs, flyweights and driven choices stand in boxes within boxes (<see cref="BoxTree"/>); a box of sets is one
///    of each. 2. Of every box <see cref="SetBounds"/> tells a miss that no member falls below, <see cref="PriceFloors"/>
///    a price, the trees a number of changes. 3. Near sets come first: <see cref="NearSearch"/> lists all that may miss by
///    little, then by more, until whatever is left misses by too much. 4. What it cannot tell is halved: the box with the
///    least bound is next, its drive side first. 5. A set alone is judged as any set is: its miss comes from the model, not
///    from a bound. 6. A box is dropped when no member can count: see <see cref="SearchCuts"/>. 7. When nothing waits, the
///    list is what trying everything gives. Where the work limit ends it before, no set that was not judged misses by less
///    than what was told: the reach that was searched whole, and the least bound that waits.
/// </remarks>
internal sealed class SetSearch
{
    private const int CancellationStride = 64;

    /// <summary>Most boxes that wait at once; as many bytes as a search may take.</summary>
    public const int MaxWaiting = 2_000_000;

    // How many times its bound a set is taken to miss by: at first, at most, and how much one set tells of the next.
    private const double FirstPromise = 1.1;
    private const double MostPromise = 4;
    private const double PromiseShare = 0.1;

    private readonly PickRequest request;
    private readonly Condition[] conditions;
    private readonly SearchIndex index;
    private readonly RankedList best;
    private readonly RequestRules[] rules;
    private readonly SetBounds[] bounds;
    private readonly SearchCuts cuts;
    private readonly NearSearch near;
    private readonly Workbench bench = Workbench.Rent();
    private readonly List<Node> aside;
    private readonly NodeStore store;

    // By kinds of parts: sets that the model cannot tell apart are judged once.
    private readonly Dictionary<(int, int, int), Judgement> judged;
    private readonly HashSet<(int, int, int)> offered;
    private readonly Refusals refusals = new();
    private readonly Dictionary<(int, int), Engagement> engagements;

    // Of the set that is judged: its drive side without the engagement, its clamps on the upshift and nothing else.
    private readonly DriveSide drive;
    private readonly DrivenSide driven;
    private long work;
    private long rounds;
    private double promise = FirstPromise;

    /// <param name="conditions">
    /// The air, with what is wanted in it; of several the greatest miss and the greatest error count. Engagement hangs on
    /// no air: it must be the same in all.
    /// </param>
    /// <param name="listOnly">True where nothing but the list is wanted, and no highlights.</param>
    public SetSearch(
        IReadOnlyList<Condition> conditions, PickRequest request, PurchasePlanner planner, SearchIndex index, PriceFloors? floors,
        bool listOnly = false)
    {
        this.conditions = [.. conditions];
        this.request = request;
        this.index = index;
        best = new RankedList(request.Count, new RankOrder(request.RankBy), request.Group);
        rules = [.. conditions.Select(c => new RequestRules(c.Predictor, request, c.Score, planner))];
        bounds = [.. conditions.Select(c => new SetBounds(c.Predictor, c.Score, index, request.SlipMargin))];
        int points = bounds[0].WindowLength / 2;
        drive = new DriveSide(default, new double[points], new double[points]);
        driven = new DrivenSide([], [], new ClampLine[points], []);
        cuts = new SearchCuts(request, index, floors, best, listOnly ? null : Highlights, refusals);
        aside = bench.Unclear;
        engagements = bench.Engagements;
        judged = bench.Judged;
        offered = bench.Offered;
        store = bench.StoreOf(bounds.Length * bounds[0].WindowLength);
        near = new NearSearch(index, bounds[0], cuts, rules[0].LeastEngagementRpm, bench, Found, aside.Add, Settle);
    }

    /// <summary>Sets whose shift curve was computed.</summary>
    public long Predictions { get; private set; }

    /// <summary>Boxes bounded, helices and pairs looked at, sets judged: what the work limit counts.</summary>
    public long WorkDone => work + near.WorkDone;

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
        try
        {
            if (index.Pools.Empty)
            {
                Proven = true;
                return [];
            }

            AddLaunches(cancellation);
            Work(cancellation, timeUp);
        }
        finally
        {
            Workbench.Return(bench);
        }

        return best.Sets;
    }

    private void AddLaunches(CancellationToken cancellation)
    {
        if (!(rules[0].LeastEngagementRpm > 0))
            return;
        long below = new DrivePairs(index, conditions[0], bounds[0]).CountBelow(rules[0].LeastEngagementRpm, cancellation);
        if (below > 0)
            refusals.Add(PoolRules.LaunchRpm, below * index.Pools.Driven.Count);
    }

    private void Work(CancellationToken cancellation, CancellationToken timeUp)
    {
        double least = 0;
        int root = NewBox(default);
        if (TryBound(root, ref least))
            NearThenFar();
        else
            Proven = true;

        void NearThenFar()
        {
            while (cuts.AnyBeyond(near.Reach) && near.TryNext(least, Stopped))
            {
                if (!Drain(near.Reach))
                {
                    LeastMissLeft = Math.Max(least, Math.Min(near.Reach, store.LeastBound));
                    return;
                }
            }

            double told = Math.Max(least, Math.Min(near.Reach, store.LeastBound));
            if (cuts.AnyBeyond(near.Reach))
            {
                // All that was refused is met again.
                store.Clear();
                refusals.Clear();
                AddLaunches(cancellation);
                Consider(NewBox(default), least);
            }

            if (Drain(double.PositiveInfinity))
                Proven = true;
            else
                LeastMissLeft = Math.Max(told, store.LeastBound);
        }

        bool Drain(double reach)
        {
            foreach (Node pair in aside)
                Consider(NewBox(pair), 0, engagementKnown: true);
            aside.Clear();
            while (!Stopped())
            {
                if (store.Waiting == 0 || store.LeastBound > reach)
                    return true;
                int slot = store.Pop(out double bound);
                if (cuts.MayCount(store[slot], bound))
                    Open(slot, bound);
                store.Free(slot);
            }

            return false;
        }

        bool Stopped()
        {
            if (rounds++ % CancellationStride == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                TimeWasUp = TimeWasUp || timeUp.IsCancellationRequested;
            }

            return WorkDone >= request.WorkLimit || TimeWasUp || store.Waiting > MaxWaiting;
        }
    }

    private int NewBox(in Node node)
    {
        int slot = store.Take();
        store[slot] = node;
        for (int c = 0; c < bounds.Length; c++)
            bounds[c].Open(WindowOf(c, store.Window(slot)));
        return slot;
    }

    // Steps 3 and 4.
    private void Open(int slot, double bound)
    {
        Node node = store[slot];
        bool springAlone = index.Springs.IsLeaf(node.Spring);
        bool flyweightAlone = index.Flyweights.IsLeaf(node.Flyweight);
        if (node.Unbounded)
        {
            Add(slot, node with { Unbounded = false }, bound);
            return;
        }

        if (!node.Judged && Alike(node))
        {
            Judge(slot, bound);
            return;
        }

        bool pair = index.SpringNodes.Alike(node.Spring) && index.FlyweightNodes.Alike(node.Flyweight);
        double spring = springAlone ? -1 : bounds[0].SpringWidth(index.Springs, node.Spring);
        double flyweight = flyweightAlone ? -1 : bounds[0].FlyweightWidth(index.Flyweights, node.Flyweight);
        double driven = node.Driven < 0 || index.Driven.IsLeaf(node.Driven) || !pair ? -1 : bounds[0].DrivenWidth(index.Driven, node.Driven);
        if (!springAlone && spring >= flyweight && spring >= driven)
        {
            int child = index.Springs.Child(node.Spring);
            Add(slot, node with { Spring = child }, bound);
            Add(slot, node with { Spring = child + 1 }, bound);
        }
        else if (!flyweightAlone && flyweight >= driven)
        {
            int child = index.Flyweights.Child(node.Flyweight);
            Add(slot, node with { Flyweight = child }, bound);
            Add(slot, node with { Flyweight = child + 1 }, bound);
        }
        else if (driven >= 0)
        {
            int child = index.Driven.Child(node.Driven);
            Add(slot, node with { Driven = child }, bound);
            Add(slot, node with { Driven = child + 1 }, bound);
        }
        else
        {
            foreach (int item in index.Driven.Items(node.Driven))
                Add(slot, node with { Driven = ~item }, bound);
        }
    }

    // The model tells one member's miss, and so that of all.
    private bool Alike(in Node node) =>
        index.SpringNodes.Alike(node.Spring) && index.FlyweightNodes.Alike(node.Flyweight)
        && (node.Driven < 0 || index.DrivenNodes.Alike(node.Driven));

    private void Add(int parent, in Node child, double bound)
    {
        int slot = store.TakeBeside(parent, child);
        bool samePairs = child.Spring == store[parent].Spring && child.Flyweight == store[parent].Flyweight;
        Consider(slot, bound, samePairs || child.LeastEngagement == child.GreatestEngagement);
    }

    private void Consider(int slot, double bound, bool engagementKnown = false)
    {
        if (TryBound(slot, ref bound, engagementKnown))
            Keep(slot, bound);
        else
            store.Free(slot);
    }

    // Step 2.
    private bool TryBound(int slot, ref double bound, bool engagementKnown = false)
    {
        ref Node node = ref store[slot];
        if (!engagementKnown)
            (node.LeastEngagement, node.GreatestEngagement) = bounds[0].Engagement(node);
        if (node.GreatestEngagement < rules[0].LeastEngagementRpm || !cuts.TryFor(node, out Cuts own))
            return false;
        work++;
        if (node.Judged)
            return !own.Exceeded(bound, node.LeastError);
        BoxVerdict verdict = Bound(ref node, store.Window(slot), own, out double least);
        bound = Math.Max(bound, least);

        // Which of its members engage too low is counted elsewhere.
        if (verdict is BoxVerdict.Slips or BoxVerdict.DoesNotShift && node.LeastEngagement >= rules[0].LeastEngagementRpm)
            refusals.Add(verdict == BoxVerdict.Slips ? PoolRules.SlipMargin : PoolRules.DoesNotShift, index.SizeOf(node));
        return verdict == BoxVerdict.Open;
    }

    // A set alone that may better the list is judged at once, so that others are dropped early.
    private void Keep(int slot, double bound)
    {
        Node node = store[slot];
        if (node.Judged && Alone(node))
            Offer(node, bound);
        else if (!node.Judged && Alike(node) && WorkDone < request.WorkLimit && cuts.MayCount(node, promise * bound))
            Judge(slot, bound);
        else
        {
            store.Push(slot, bound);
            return;
        }

        store.Free(slot);
    }

    private void Found(Node set, double bound)
    {
        (int, int, int) places = PlacesOf(set);
        bool known = judged.TryGetValue(index.KindOf(places), out Judgement judgement)
            && (judgement.Refusal is not null || offered.Contains(places));
        if (!known)
            store.Push(NewBox(set with { Unbounded = true }), bound);
    }

    // Judges what may better the list, the best first.
    private void Settle()
    {
        while (store.TryPeek(out int slot, out double bound) && WorkDone < request.WorkLimit
            && cuts.MayCount(store[slot], promise * bound))
        {
            store.Pop(out _);
            Open(slot, bound);
            store.Free(slot);
        }
    }

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

    // The first of its members.
    private (int Spring, int Flyweight, int Driven) PlacesOf(in Node node) => (
        index.SpringNodes.Place(node.Spring), index.FlyweightNodes.Place(node.Flyweight),
        node.Driven < 0 ? ~node.Driven : index.DrivenNodes.Place(node.Driven));

    // Step 5. With its true engagement a box of alike sets is bounded once more before the model is asked.
    private void Judge(int slot, double bound)
    {
        Node node = store[slot];
        (int s, int f, int d) = PlacesOf(node);
        if (!engagements.TryGetValue((s, f), out Engagement engagement))
            engagements[(s, f)] = engagement = index.EngagementOf(conditions[0].Predictor, s, f);
        if (!rules[0].Launches(engagement))
            return;
        double rpm = engagement.Rpm;
        if (node.LeastEngagement < rpm)
        {
            Add(slot, node with { LeastEngagement = rpm, GreatestEngagement = rpm }, 0);
            return;
        }

        (int, int, int) kind = index.KindOf((s, f, d));
        if (!judged.TryGetValue(kind, out Judgement judgement))
        {
            judged[kind] = judgement = JudgementOf(s, f, d, engagement);
            double times = judgement.Refusal is null && bound > 0 ? Math.Clamp(judgement.Miss / bound, 1, MostPromise) : MostPromise;
            promise += PromiseShare * (times - promise);
        }

        if (judgement.Refusal is { } rule)
            refusals.Add(rule, index.SizeOf(node));
        else
            Add(slot, node with { Judged = true, LeastError = judgement.GreatestError }, judgement.Miss);
    }

    private Judgement JudgementOf(int s, int f, int d, Engagement engaged)
    {
        work++;
        Predictions++;
        DriveSide pair = drive with { Engagement = engaged };
        index.Fill(pair, conditions[0].Predictor, s, f);
        index.Clamps.Lines(d, driven.Upshift);
        Span<double> errors = stackalloc double[bounds[0].WindowLength / 2];
        double engagement = conditions[0].Score.EngagementError(engaged.Rpm);
        double greatest = Math.Abs(engagement);
        double miss = 0;
        for (int c = 0; c < conditions.Length; c++)
        {
            if (rules[c].TryErrors(pair, driven, errors) is { } rule)
                return new Judgement(rule, 0, 0);
            foreach (double error in errors)
                greatest = Math.Max(greatest, Math.Abs(error));
            miss = Math.Max(miss, conditions[c].Score.Miss(engagement, errors));
        }

        return new Judgement(null, miss, greatest);
    }

    private void Offer(in Node node, double miss)
    {
        (int s, int f, int d) = PlacesOf(node);
        if (!offered.Add((s, f, d)))
            return;
        var set = new SetUp(index.Pools.DriveSprings[s], index.Pools.Flyweights[f], index.Pools.Driven[d]);
        if (rules[0].TryPrice(set, out long? price) is { } rule)
        {
            refusals.Add(rule);
            return;
        }

        int changes = index.SpringNodes.Changes(node.Spring) + index.FlyweightNodes.Changes(node.Flyweight) + index.ChangesOf(d);
        var key = new RankKey(Score.Rounded(miss), node.LeastError <= 1, changes, price, s, f, d);
        var ranked = new RankedSet(key, set, miss);
        best.Offer(ranked);
        Highlights.Offer(ranked);
        cuts.Forget();
    }
}

/// <summary>What the model said of a set.</summary>
/// <param name="Refusal">The rule that it breaks; null: none.</param>
/// <param name="Miss">Where none is broken.</param>
/// <param name="GreatestError">Likewise, in tolerances.</param>
internal readonly record struct Judgement(string? Refusal, double Miss, double GreatestError);

/// <summary>An air, and what is wanted in it.</summary>
internal sealed record Condition(Predictor Predictor, Score Score);
