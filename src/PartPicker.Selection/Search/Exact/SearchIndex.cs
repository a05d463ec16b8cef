using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>The pools of a machine as boxes: what a search needs and no air, anchor or target changes.</summary>
/// <remarks>
/// A drive spring is its force at the K positions; a flyweight its thrust per squared speed there; a driven choice its
/// standing clamp and its clamp per torque. The first two also carry what bounds the engagement: see
/// <see cref="StartTerms"/>.
/// </remarks>
internal sealed class SearchIndex
{
    private const int DrivenLeaf = 4;

    // Fewer choices with one helix are not worth a group of their own.
    private const int FramedChoices = 4;

    private readonly Func<int, int> changesOfDriven;
    private readonly BeltBounds[] belts;
    private readonly double beltFriction;

    private SearchIndex(
        CandidatePools pools, SetUp fitted, BoxTree springs, BoxTree flyweights, BoxTree driven, DrivenClamps clamps,
        BeltBounds[] belts, double beltFriction)
    {
        Pools = pools;
        changesOfDriven = ChangesOfDriven(pools.Driven, fitted);
        var alike = new AlikeParts(pools);
        SpringNodes = new NodeFacts(springs, alike.OfSpring, s => Changed(pools.DriveSprings[s].SameAs(fitted.Spring)));
        FlyweightNodes = new NodeFacts(
            flyweights, alike.OfFlyweight, f => Changed(pools.Flyweights[f].SameAs(fitted.Flyweight)));
        DrivenNodes = new NodeFacts(driven, alike.OfDriven, ChangesOf);
        Springs = springs;
        Flyweights = flyweights;
        Driven = driven;
        Clamps = clamps;
        this.belts = belts;
        this.beltFriction = beltFriction;
    }

    // Without a set there is nothing to search.
    private SearchIndex(CandidatePools pools)
    {
        Pools = pools;
        Springs = Flyweights = Driven = new BoxTree([], [1], 1);
        Clamps = null!;
        belts = [];
        SpringNodes = FlyweightNodes = DrivenNodes = null!;
        changesOfDriven = _ => 0;
    }

    public CandidatePools Pools { get; }

    /// <summary>F₁ at each position (N), then the terms of engagement.</summary>
    public BoxTree Springs { get; }

    /// <summary>W at each position (kg·m), no anchor, then the terms of engagement.</summary>
    public BoxTree Flyweights { get; }

    /// <summary>Standing clamp at each position (N), then clamp per torque (1/m).</summary>
    public BoxTree Driven { get; }

    public DrivenClamps Clamps { get; }

    /// <summary>A usual clamp (N) at each position.</summary>
    public double[] UsualClamp { get; private init; } = [];

    /// <summary>Driven choices that change the same slots, with helices mixed.</summary>
    public DrivenGroup[] MixedGroups { get; private init; } = [];

    /// <summary>Those that share a helix too, where there are many; the fewest changes first.</summary>
    public DrivenGroup[] HelixGroups { get; private init; } = [];

    /// <summary>The clamps of each of the <see cref="HelixGroups"/>.</summary>
    public HelixFrames Frames { get; private init; } = new([], [], []);

    public NodeFacts SpringNodes { get; }

    public NodeFacts FlyweightNodes { get; }

    public NodeFacts DrivenNodes { get; }

    /// <summary>The belt at each position; a run that tells the friction of the belt has one of its own.</summary>
    public BeltBounds[] BeltsOf(Predictor predictor) => Pools.Empty || predictor.Machine.Drivetrain.BeltFriction == beltFriction
        ? belts
        : BeltsOf(predictor.Model);

    private static BeltBounds[] BeltsOf(ShiftModel model) =>
        [.. model.Positions.Select((_, j) => new BeltBounds(model, j))];

    /// <summary>How many slots a driven choice changes.</summary>
    public byte ChangesOf(int item) => (byte)System.Numerics.BitOperations.PopCount((uint)changesOfDriven(item));

    /// <summary>Sets in a box.</summary>
    public long SizeOf(in Node node) =>
        (long)Springs.Count(node.Spring) * Flyweights.Count(node.Flyweight) * (node.Driven < 0 ? 1 : Driven.Count(node.Driven));

    /// <summary>Bytes held, the parts themselves not counted.</summary>
    public long Bytes => Springs.Bytes + Flyweights.Bytes + Driven.Bytes + 4L * Pools.Driven.Count + belts.Length * BeltBounds.Bytes + Frames.Bytes;

    /// <summary>Bytes that <see cref="Build"/> takes at most while it runs, the belt aside.</summary>
    public static long BytesToBuild(long springs, long flyweights, long driven, int pointCount)
    {
        int drive = pointCount + StartTerms.Count;
        return springs * PerPoint(drive, 1) + flyweights * PerPoint(drive, 1) + driven * PerPoint(2 * pointCount, DrivenLeaf);

        // A number as it is, and a box of floats for each node: halved, a box ends with more than half of what fills a leaf.
        static long PerPoint(int dimensions, int leaf) =>
            8L * dimensions + 4 + (8L * dimensions + 12) * 2 / Math.Max(1, leaf / 2);
    }

    /// <summary>The pools as boxes.</summary>
    public static SearchIndex Build(
        CandidatePools pools, SetUp fitted, MachineModel machine, int pointCount, CancellationToken cancellation)
    {
        if (pools.Empty)
            return new SearchIndex(pools);
        BeltPosition[] positions = machine.Positions(pointCount);
        var model = new ShiftModel(machine.Drivetrain, positions, 1, AnchorFactors.None);
        var terms = new StartTerms(machine.Drivetrain.ContactTravel);

        var springs = new Points(pools.DriveSprings.Count, pointCount + StartTerms.Count);
        for (int s = 0; s < pools.DriveSprings.Count; s++)
        {
            cancellation.ThrowIfCancellationRequested();
            SpringChoice choice = pools.DriveSprings[s];
            LinearCurve force = Predictor.DriveForce(machine, choice);
            double length = machine.Drivetrain.DriveSpringLength - choice.ShimThickness;
            for (int j = 0; j < pointCount; j++)
                springs[s][j] = force.At(length - positions[j].Travel);
            terms.OfSpring(force, length, springs[s][pointCount..]);
        }

        var flyweights = new Points(pools.Flyweights.Count, pointCount + StartTerms.Count);
        for (int f = 0; f < pools.Flyweights.Count; f++)
        {
            cancellation.ThrowIfCancellationRequested();
            FlyweightSet set = pools.Flyweights[f].Model(machine);
            for (int j = 0; j < pointCount; j++)
                flyweights[f][j] = set.ThrustPerSpeedSquared(positions[j].Travel);
            terms.OfFlyweights(set, flyweights[f][pointCount..]);
        }

        var clamps = new DrivenClamps(pools.Driven, machine, model);
        var driven = new Points(pools.Driven.Count, 2 * pointCount);
        for (int d = 0; d < pools.Driven.Count; d++)
        {
            cancellation.ThrowIfCancellationRequested();
            clamps.Standing(d, driven[d][..pointCount]);
            clamps.PerTorque(d).CopyTo(driven[d][pointCount..]);
        }

        double torque = model.PeakPower / Rotation.ToRadiansPerSecond(model.PeakPowerRpm);
        Func<int, int> group = GroupsOfDriven(pools.Driven, fitted);
        var drivenTree = new BoxTree(driven.All, Scale(2 * pointCount, pointCount, 1, torque), DrivenLeaf, group);
        double[] usual = new double[pointCount];
        for (int d = 0; d < pools.Driven.Count; d++)
        {
            for (int j = 0; j < pointCount; j++)
                usual[j] += (driven[d][j] + torque * driven[d][pointCount + j]) / pools.Driven.Count;
        }

        int[] roots = [.. drivenTree.GroupRoots.OrderBy(root => ChangesOf(root))];
        int[] framed = [.. roots.Where(HasOneHelix)];
        return new SearchIndex(
            pools,
            fitted,
            new BoxTree(
                springs.All, Scale(pointCount + StartTerms.Count, pointCount, 1, 0), leafSize: 1,
                s => pools.DriveSprings[s].SameAs(fitted.Spring) ? 0 : 1),
            new BoxTree(
                flyweights.All, Scale(pointCount + StartTerms.Count, pointCount, 1, 0), leafSize: 1,
                f => pools.Flyweights[f].SameAs(fitted.Flyweight) ? 0 : 1),
            drivenTree,
            clamps,
            BeltsOf(model),
            machine.Drivetrain.BeltFriction)
        {
            UsualClamp = usual,
            MixedGroups = [.. roots.Except(framed).Select(root => new DrivenGroup(root, ChangesOf(root)))],
            HelixGroups = [.. framed.Select(root => new DrivenGroup(root, ChangesOf(root)))],
            Frames = new HelixFrames([.. framed.Select(root => drivenTree.Items(root).ToArray())], driven.All, usual),
        };

        int ChangesOf(int root) =>
            System.Numerics.BitOperations.PopCount((uint)group(drivenTree.Items(root)[0]) % Slots);

        bool HasOneHelix(int root) => group(drivenTree.Items(root)[0]) >= Slots;
    }

    private const int Slots = 8;

    // Choices that change the same slots, and of these those with one helix where there are enough.
    private static Func<int, int> GroupsOfDriven(DrivenPool pool, SetUp fitted)
    {
        Func<int, int> changes = ChangesOfDriven(pool, fitted);
        var members = new Dictionary<(int, int), int>();
        for (int item = 0; item < pool.Count; item++)
        {
            (int, int) key = (changes(item), pool.Code(item).Helix);
            members[key] = members.GetValueOrDefault(key) + 1;
        }

        return item =>
        {
            int helix = pool.Code(item).Helix;
            return members[(changes(item), helix)] < FramedChoices ? changes(item) : changes(item) + Slots * (1 + helix);
        };
    }

    // Which slots a driven choice changes, one bit each.
    private static Func<int, int> ChangesOfDriven(DrivenPool pool, SetUp fitted)
    {
        int[] springs = [.. pool.Springs.Select(s => s.Id == fitted.Driven.Spring.Id ? 0 : 1)];
        int[] holes = [.. pool.Holes.Select(h => h.Name == fitted.Driven.Hole.Name ? 0 : 2)];
        int[] helices = [.. pool.Helices.Select(h => h.Id == fitted.Driven.Helix.Id ? 0 : 4)];
        return item =>
        {
            (int s, int h, int x) = pool.Code(item);
            return springs[s] + holes[h] + helices[x];
        };
    }

    private static byte Changed(bool same) => (byte)(same ? 0 : 1);

    private static double[] Scale(int dimensions, int first, double ofFirst, double ofOthers) =>
        [.. Enumerable.Range(0, dimensions).Select(d => d < first ? ofFirst : ofOthers)];

    private readonly struct Points(int count, int dimensions)
    {
        public double[] All { get; } = new double[count * dimensions];

        public Span<double> this[int item] => All.AsSpan(item * dimensions, dimensions);
    }
}

/// <summary>A group of driven choices.</summary>
/// <param name="Root">Their node of the driven tree.</param>
/// <param name="Changes">How many slots they change.</param>
internal readonly record struct DrivenGroup(int Root, int Changes);
