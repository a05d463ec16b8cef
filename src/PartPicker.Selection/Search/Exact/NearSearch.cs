namespace PartPicker.Selection;

/// <summary>Finds every set that misses by no more than a reach, which grows rung by rung.</summary>
/// <remarks>
/// 1. Boxes of drive pairs are halved while a member may engage near enough and push as hard as some driven choice needs.
/// 2. A pair by itself says which clamps it wants (<see cref="PairSight"/>). 3. Helices none of whose choices come near
///    them are passed, many at once (<see cref="HelixBoxes"/>). 4. Of the others the choices near enough are listed
///    (<see cref="DrivenStrips"/>), and each is bounded by itself. 5. Within the reach a choice counts only up to the cut
///    of its number of changes and its price, which shrinks while sets are found. 6. A pair whose clamps tell nothing is put
///    aside, once for all.
/// </remarks>
internal sealed class NearSearch
{
    // How far (rpm) a single balance may lie from its target. Far off, slopes are steep and pairs tell less: steps are shorter.
    private static readonly double[] Rungs = [40, 100, 250, 400, 640, 1000];

    // More than the rounding of squares that are added up as floats.
    private const double Rounding = 1e-5;

    // More than two trees of boxes are high.
    private const int MaxDepth = 256;

    private readonly SearchIndex index;
    private readonly SetBounds bounds;
    private readonly SearchCuts cuts;
    private readonly PairSight sight;
    private readonly double leastEngagementRpm;
    private readonly Action<Node, double> found;
    private readonly Action<Node> putAside;
    private readonly Action settle;
    private readonly HashSet<(int, int)> aside;
    private readonly PairBatch pairs;
    private readonly double[] limits = new double[DrivenLevels.Count];
    private readonly ClampHulls hulls;
    private readonly int[] helices;
    private readonly float[] squares;
    private int rung;

    /// <param name="bench">Not used by anything else as long as sets are found, but for what the search itself keeps there.</param>
    /// <param name="found">What becomes of a set that may count, with a miss that it does not fall below.</param>
    /// <param name="putAside">What becomes of a pair whose clamps tell nothing.</param>
    /// <param name="settle">Called when the sets of some pairs were found: cuts may shrink.</param>
    public NearSearch(
        SearchIndex index, SetBounds bounds, SearchCuts cuts, double leastEngagementRpm, Workbench bench,
        Action<Node, double> found, Action<Node> putAside, Action settle)
    {
        this.index = index;
        this.bounds = bounds;
        this.cuts = cuts;
        this.leastEngagementRpm = leastEngagementRpm;
        this.found = found;
        this.putAside = putAside;
        this.settle = settle;
        aside = bench.Aside;
        pairs = bench.Pairs;
        sight = bounds.Sight(bench);
        hulls = new ClampHulls(index, sight);
        (helices, squares) = bench.Helices(index.Levels.All.Boxes.Lanes);
    }

    /// <summary>Boxes, pairs, helices and choices looked at.</summary>
    public long WorkDone { get; private set; }

    /// <summary>Every set that misses by no more has been found, unless its pair was put aside.</summary>
    public double Reach { get; private set; }

    /// <summary>Finds what lies within the next reach; false where there is none that tells anything.</summary>
    /// <param name="least">No set misses by less.</param>
    /// <param name="stopped">True when the search is to end: then the reach has not grown.</param>
    public bool TryNext(double least, Func<bool> stopped)
    {
        while (rung < Rungs.Length && !(RadiusOf(rung) > least))
            rung++;
        if (rung == Rungs.Length)
            return false;
        bool insideOnly = !cuts.AnyOutsideBeyond(Reach);
        double radius = insideOnly ? Math.Min(RadiusOf(rung++), Cuts.WidestInside) : RadiusOf(rung++);
        if (!sight.TryReach(radius, insideOnly))
            return false;
        hulls.Clear();
        if (Sweep(radius, stopped))
            Reach = radius;
        return true;
    }

    private double RadiusOf(int step) => sight.MissOf(Rungs[step]);

    private bool Sweep(double radius, Func<bool> stopped)
    {
        Span<(int Spring, int Flyweight)> stack = stackalloc (int, int)[MaxDepth];
        int top = 0;
        stack[top++] = (0, 0);
        while (top > 0)
        {
            if (stopped())
                return false;
            (int spring, int flyweight) = stack[--top];
            WorkDone++;
            var node = new Node { Spring = spring, Flyweight = flyweight };
            if (!MayCount(ref node, radius))
                continue;
            bool springAlone = index.Springs.IsLeaf(spring);
            bool flyweightAlone = index.Flyweights.IsLeaf(flyweight);
            if (springAlone && flyweightAlone)
            {
                if (!pairs.TryAdd(node))
                {
                    if (!Look(radius, stopped))
                        return false;
                    pairs.TryAdd(node);
                }
            }
            else if (flyweightAlone || (!springAlone && Spread(index.Springs, spring) >= Spread(index.Flyweights, flyweight)))
            {
                stack[top++] = (index.Springs.Child(spring), flyweight);
                stack[top++] = (index.Springs.Child(spring) + 1, flyweight);
            }
            else
            {
                stack[top++] = (spring, index.Flyweights.Child(flyweight));
                stack[top++] = (spring, index.Flyweights.Child(flyweight) + 1);
            }
        }

        return Look(radius, stopped);
    }

    // Pairs that engage nearest come first: they make the best sets, and cuts shrink early.
    private bool Look(double radius, Func<bool> stopped)
    {
        pairs.Sort();
        int count = pairs.Count;
        pairs.Clear();
        for (int i = 0; i < count; i++)
        {
            if (stopped())
                return false;
            Node pair = pairs[i];
            if (MayEngage(pair, radius, out _))
            {
                Pair(pair);
                settle();
            }
        }

        return true;
    }

    // How far apart the members engage.
    private static double Spread(BoxTree tree, int node) => tree.High(node)[0] / tree.Low(node)[0];

    // Steps 1 and 5.
    private bool MayCount(ref Node node, double radius)
    {
        (node.LeastEngagement, node.GreatestEngagement) = bounds.Engagement(node);
        node.LeastError = bounds.LeastEngagementError(node);

        // Where all slots may change, some choice suits nearly every pair: asking costs more than it spares.
        return !(node.GreatestEngagement < leastEngagementRpm) && MayEngage(node, radius, out int level)
            && (level == DrivenLevels.Count - 1 || hulls.MayBalance(node, level));
    }

    // Fills the limits of the miss for each number of driven slots changed; false where none is left.
    private bool MayEngage(in Node node, double radius, out int level)
    {
        level = -1;
        double engagement = sight.Miss(node.LeastError, 0);
        for (int changes = 0; changes < DrivenLevels.Count; changes++)
        {
            limits[changes] = Math.Min(radius, cuts.WidestOf(node, changes, Reach));
            if (limits[changes] >= engagement)
                level = changes;
            else
                limits[changes] = -1;
        }

        return level >= 0;
    }

    private void Pair(in Node node)
    {
        double engagementError = node.LeastError;
        int spring = index.Springs.Items(node.Spring)[0];
        int flyweight = index.Flyweights.Items(node.Flyweight)[0];
        if (aside.Count > 0 && aside.Contains((spring, flyweight)))
            return;
        Sight seen = sight.Look(spring, flyweight, node.GreatestEngagement);
        if (seen == Sight.Unclear)
        {
            aside.Add((spring, flyweight));
            putAside(node);
        }

        if (seen != Sight.Clear)
            return;
        int level = 0;
        double widest = -1;
        for (int changes = 0; changes < limits.Length; changes++)
        {
            limits[changes] = LimitOf(limits[changes], node);
            if (limits[changes] >= 0)
                (level, widest) = (changes, Math.Max(widest, limits[changes]));
        }

        if (widest < 0)
            return;
        HelixBoxes boxes = index.Levels[level].Boxes;
        float[] at = sight.At(level);
        float limit = BoxTree.Above(widest / (sight.PerUnit * sight.PerUnit) * (1 + Rounding));
        float apart = BoxTree.Above(sight.Apart);
        WorkDone += boxes.Lanes / HelixBoxes.Width;
        int count = boxes.Near(at, sight.Seen, apart, limit, helices, squares);
        for (int i = 0; i < count; i++)
            List(node, level, helices[i], squares[i]);
    }

    // Steps 4 and 5.
    private void List(in Node pair, int top, int helix, float topSquares)
    {
        int place = index.Levels[top].Helices[helix];
        ReadOnlySpan<double> line = index.Clamps.PerTorqueOf(place);
        double ownUnit = sight.PerUnitOf(line);
        bool ready = false;
        double perUnit = 1 / (ownUnit * ownUnit);
        float apart = BoxTree.Above(sight.Apart);
        ClampFrame frame = index.Levels.Frame;
        for (int changes = top; changes >= 0; changes--)
        {
            DrivenLevels.Level level = index.Levels[changes];
            int own = changes == top ? helix : level.Lanes[place];
            if (own < 0)
                return;
            if (limits[changes] < 0 || level.Strips.Count(own) == 0)
                continue;
            double most = cuts.Priced
                ? Math.Min(limits[changes], LimitOf(cuts.WidestOf(pair, changes, place, Reach), pair))
                : limits[changes];
            if (most < 0)
                continue;
            double limit = most * perUnit * (1 + Rounding);
            float[] at = sight.At(changes);
            double squares = changes == top ? topSquares : level.Boxes.SquaresOf(own, at, sight.Seen, apart);
            if (squares > limit)
                continue;
            double along = level.Boxes.Outside(frame.Widest, own, at, sight.Seen, apart);
            double across = level.Boxes.Outside(frame.Second, own, at, sight.Seen, apart);
            double thin = Math.Max(0, squares * (1 - Rounding) - along * along - across * across);
            if (!ready)
                sight.MakeReady(line);
            ready = true;
            double radius = Math.Sqrt(Math.Max(0, limit - thin)) + sight.Apart;
            (double Along, double Across) center = sight.PlaceOf(place);
            int strip = 0;
            while (level.Strips.Next(own, ref strip, center, radius) is { IsEmpty: false } run)
            {
                foreach (int joint in run)
                    Offer(pair, joint, changes, most);
            }
        }
    }

    // The squares that a miss leaves the driven side; below 0: none.
    private double LimitOf(double miss, in Node pair) => miss < 0 ? -1 : sight.Limit(miss, pair.LeastError);

    private void Offer(in Node pair, int joint, int changes, double limit)
    {
        WorkDone++;
        if (cuts.Priced && cuts.WidestOf(pair, changes, index.Pools.Driven.Split(joint), Reach) < 0)
            return;
        double squares = sight.SquaresOf(index.Clamps.OfJoint(joint), limit, out double greatest);
        if (squares > limit)
            return;
        Node alone = pair with
        {
            Driven = ~index.Pools.Driven.ItemOf(joint),
            LeastError = Math.Max(pair.LeastError, greatest),
        };
        double miss = sight.Miss(pair.LeastError, squares);
        if (cuts.MayCount(alone, miss))
            found(alone, miss);
    }
}
