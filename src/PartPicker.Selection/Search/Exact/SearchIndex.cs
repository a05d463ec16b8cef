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
    // A leaf of the driven side grows with the pool: no more boxes are kept than tell far choices apart.
    private const int LeastDrivenLeaf = 4;
    private const int DrivenLeaves = 1 << 14;

    // One for each way in which a spring, a hole and a helix may stay or change.
    private const int MostGroups = 8;

    // A curve of a few points.
    private const long CurveBytes = 250;

    // A body with two stations.
    private const long FlyweightBytes = 120;

    private readonly AlikeParts alike;
    private readonly Func<int, int> changesOfDriven;

    private SearchIndex(
        CandidatePools pools, SetUp fitted, BoxTree springs, BoxTree flyweights, BoxTree driven, DrivenClamps clamps)
    {
        Pools = pools;
        changesOfDriven = ChangesOfDriven(pools.Driven, fitted);
        alike = new AlikeParts(pools);
        SpringNodes = new NodeFacts(springs, alike.OfSpring, s => Changed(pools.DriveSprings[s].SameAs(fitted.Spring)));
        FlyweightNodes = new NodeFacts(
            flyweights, alike.OfFlyweight, f => Changed(pools.Flyweights[f].SameAs(fitted.Flyweight)));
        DrivenNodes = new NodeFacts(driven, alike.OfDriven, ChangesOf);
        Springs = springs;
        Flyweights = flyweights;
        Driven = driven;
        Clamps = clamps;
    }

    // Without a set there is nothing to search.
    private SearchIndex(CandidatePools pools)
    {
        Pools = pools;
        Springs = Flyweights = Driven = new BoxTree(0, (_, _, _) => { }, [1], 1);
        Clamps = null!;
        alike = new AlikeParts(pools);
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

    /// <summary>F₁ (N) of every drive spring at each position.</summary>
    public double[] SpringForces { get; private init; } = [];

    /// <summary>W (kg·m) of all flyweights at each position, no anchor.</summary>
    public double[] FlyweightThrusts { get; private init; } = [];

    // Force over length of every drive spring, and all flyweights; what is alike in them is shared.
    private LinearCurve[] Forces { get; init; } = [];

    private FlyweightSet[] FlyweightSets { get; init; } = [];

    /// <summary>How clamps are counted.</summary>
    public ClampScale Scale { get; private init; } = new([], 0, []);

    /// <summary>The driven choices by how many slots they change.</summary>
    public DrivenLevels Levels { get; private init; } = DrivenLevels.None;

    public NodeFacts SpringNodes { get; }

    public NodeFacts FlyweightNodes { get; }

    public NodeFacts DrivenNodes { get; }

    /// <summary>The belt at each position; none where there is nothing to search.</summary>
    public BeltBounds[] BeltsOf(Predictor predictor) =>
        Pools.Empty ? [] : predictor.Machine.At(predictor.Model.Positions.Count).Belts;

    /// <summary>Equal for sets that the model cannot tell apart.</summary>
    public (int Spring, int Flyweight, int Driven) KindOf((int Spring, int Flyweight, int Driven) places) => (
        alike.OfSpring(places.Spring), alike.OfFlyweight(places.Flyweight), alike.OfDriven(places.Driven));

    /// <summary>Where the pair engages.</summary>
    public Engagement EngagementOf(Predictor predictor, int spring, int flyweight) => predictor.Model.EngagementOf(
        Forces[spring], FlyweightSets[flyweight], Pools.DriveSprings[spring].ShimThickness);

    /// <summary>Writes what else there is of the drive side of the pair, as <see cref="Predictor.Drive(SpringChoice, FlyweightChoice)"/> tells it.</summary>
    public void Fill(DriveSide side, Predictor predictor, int spring, int flyweight)
    {
        int points = side.SpringForce.Length;
        SpringForces.AsSpan(spring * points, points).CopyTo(side.SpringForce);
        for (int j = 0; j < points; j++)
            side.ThrustPerSpeedSquared[j] = predictor.Model.Anchor.Flyweight * FlyweightThrusts[flyweight * points + j];
    }

    /// <summary>How many slots a driven choice changes.</summary>
    public byte ChangesOf(int item) => (byte)System.Numerics.BitOperations.PopCount((uint)changesOfDriven(item));

    /// <summary>Sets in a box.</summary>
    public long SizeOf(in Node node) =>
        (long)Springs.Count(node.Spring) * Flyweights.Count(node.Flyweight) * (node.Driven < 0 ? 1 : Driven.Count(node.Driven));

    /// <summary>Bytes held, the parts themselves and the belt not counted.</summary>
    public long Bytes => Springs.Bytes + Flyweights.Bytes + Driven.Bytes + 4L * Pools.Driven.Count + Levels.Bytes
        + (SpringNodes?.Bytes ?? 0) + (FlyweightNodes?.Bytes ?? 0) + (DrivenNodes?.Bytes ?? 0)
        + (CurveBytes + 8L) * Forces.Length + (FlyweightBytes + 8L) * FlyweightSets.Length + 8L * (SpringForces.Length + FlyweightThrusts.Length);

    /// <summary>Bytes that <see cref="Build"/> takes at most while it runs, the belt and the parts aside.</summary>
    public static long BytesToBuild(long springs, long flyweights, long driven, long helices, int pointCount)
    {
        int drive = pointCount + StartTerms.Count;
        long leaf = DrivenLeafOf(driven);
        return springs * (8 * (drive + pointCount) + CurveBytes + 8) + flyweights * (8 * (drive + pointCount) + FlyweightBytes + 8)
            + driven * 4
            + Tree(springs, 1, drive) + Tree(flyweights, 1, drive) + Tree(driven, leaf, 2 * pointCount)
            + DrivenLevels.BytesToBuild(driven, helices, pointCount);

        // Halved, a box ends with half of what fills a leaf at least; what changes the same slots stands by itself. Of an
        // item its place, and a key to halve by; of a node its box, where it is and its facts.
        static long Tree(long items, long leaf, int dimensions) =>
            12 * items + 2 * (items / Math.Max(1, leaf / 2) + MostGroups) * (8 * dimensions + 12 + 9);
    }

    private static int DrivenLeafOf(long count) => (int)Math.Max(LeastDrivenLeaf, count / DrivenLeaves);

    /// <summary>The pools as boxes.</summary>
    public static SearchIndex Build(
        CandidatePools pools, SetUp fitted, MachineModel machine, int pointCount, CancellationToken cancellation)
    {
        if (pools.Empty)
            return new SearchIndex(pools);
        ShiftModel model = machine.At(pointCount).Model;
        IReadOnlyList<BeltPosition> positions = model.Positions;
        var terms = new StartTerms(machine.Drivetrain.ContactTravel);

        var forces = new LinearCurve[pools.DriveSprings.Count];
        var springs = new Points(pools.DriveSprings.Count, pointCount + StartTerms.Count);
        for (int s = 0; s < pools.DriveSprings.Count; s++)
        {
            cancellation.ThrowIfCancellationRequested();
            SpringChoice choice = pools.DriveSprings[s];
            LinearCurve force = forces[s] = Predictor.DriveForce(machine, choice);
            double length = machine.Drivetrain.DriveSpringLength - choice.ShimThickness;
            for (int j = 0; j < pointCount; j++)
                springs[s][j] = force.At(length - positions[j].Travel);
            terms.OfSpring(force, length, springs[s][pointCount..]);
        }

        var sets = new FlyweightSet[pools.Flyweights.Count];
        var radiiOf = new Dictionary<(string, string?), SmoothCurve[]>();
        var flyweights = new Points(pools.Flyweights.Count, pointCount + StartTerms.Count);
        for (int f = 0; f < pools.Flyweights.Count; f++)
        {
            cancellation.ThrowIfCancellationRequested();
            FlyweightChoice choice = pools.Flyweights[f];
            if (!radiiOf.TryGetValue((choice.Body.Id, choice.AdjusterStep), out SmoothCurve[]? own))
                radiiOf[(choice.Body.Id, choice.AdjusterStep)] = own = choice.Radii(machine);
            FlyweightSet set = sets[f] = choice.Model(machine, own);
            for (int j = 0; j < pointCount; j++)
                flyweights[f][j] = set.ThrustPerSpeedSquared(positions[j].Travel);
            terms.OfFlyweights(set, flyweights[f][pointCount..]);
        }

        var clamps = new DrivenClamps(pools.Driven, machine, model);
        void Driven(int item, int from, Span<double> to)
        {
            cancellation.ThrowIfCancellationRequested();
            clamps.Read(item, from, to);
        }

        double torque = model.PeakPower / Rotation.ToRadiansPerSecond(model.PeakPowerRpm);
        Func<int, int> changes = ChangesOfDriven(pools.Driven, fitted);
        BeltBounds[] belts = machine.At(pointCount).Belts;
        double[] unit = UnitsOf(springs, flyweights, clamps.MeanPerTorque(), machine, model, belts);
        var scale = new ClampScale(unit, torque, WantedRows(springs, flyweights, machine, model, belts, unit));
        return new SearchIndex(
            pools,
            fitted,
            new BoxTree(
                springs.Count, springs.Read, Sides(pointCount + StartTerms.Count, pointCount, 1, 0), leafSize: 1,
                s => pools.DriveSprings[s].SameAs(fitted.Spring) ? 0 : 1),
            new BoxTree(
                flyweights.Count, flyweights.Read, Sides(pointCount + StartTerms.Count, pointCount, 1, 0), leafSize: 1,
                f => pools.Flyweights[f].SameAs(fitted.Flyweight) ? 0 : 1),
            new BoxTree(
                pools.Driven.Count, Driven, Sides(2 * pointCount, pointCount, 1, torque), DrivenLeafOf(pools.Driven.Count), changes),
            clamps)
        {
            SpringForces = springs.First(pointCount),
            FlyweightThrusts = flyweights.First(pointCount),
            Forces = forces,
            FlyweightSets = sets,
            Scale = scale,
            Levels = new DrivenLevels(
                pools.Driven,
                [.. Enumerable.Range(0, pools.Driven.Count).Select(d => (byte)System.Numerics.BitOperations.PopCount((uint)changes(d)))],
                clamps, scale),
        };
    }

    // Rpm around peak power over which the torque's slope is taken.
    private const double UsualReach = 100;

    // A clamp that is worth next to nothing, or next to everything, would make units of no use.
    private const double LeastUnit = 0.05;
    private const double LeastPerForce = 0.1;

    // What some pairs, spread over all, want at the speed of peak power.
    private static List<double[]> WantedRows(
        Points springs, Points flyweights, MachineModel machine, ShiftModel model, BeltBounds[] belts, double[] unit)
    {
        double speed = Rotation.ToRadiansPerSecond(model.PeakPowerRpm);
        double share = 1 - machine.Drivetrain.FlyweightFrictionShare;
        var rows = new List<double[]>();
        for (int i = 0; i < SampledPairs; i++)
        {
            ReadOnlySpan<double> spring = springs[i * SampleStride % springs.Count];
            ReadOnlySpan<double> flyweight = flyweights[i * SampleStride % flyweights.Count];
            double[] row = new double[unit.Length];
            for (int j = 0; j < row.Length; j++)
            {
                double tension = model.TorqueAt(model.PeakPowerRpm) / model.Positions[j].DriveRadius;
                double thrust = share * flyweight[j] * speed * speed - spring[j];
                if (belts[j].Inverts && thrust > belts[j].Beyond * tension)
                    row[j] = tension / belts[j].LoadOf(thrust / tension).Low / unit[j];
            }

            if (row.All(clamp => clamp > 0))
                rows.Add(row);
        }

        return rows;
    }

    private const int SampledPairs = 200;

    // A prime, so that springs and flyweights meet in many ways.
    private const int SampleStride = 7919;

    // The newtons of clamp at each position that are worth one rpm there, with a usual pair at the speed of peak power.
    private static double[] UnitsOf(
        Points springs, Points flyweights, double[] perTorque, MachineModel machine, ShiftModel model, BeltBounds[] belts)
    {
        double speed = Rotation.ToRadiansPerSecond(model.PeakPowerRpm);
        double share = 1 - machine.Drivetrain.FlyweightFrictionShare;
        (double fall, double rise) = model.TorqueSlopeRange(
            model.PeakPowerRpm - UsualReach, Math.Min(machine.Drivetrain.RevLimitRpm, model.PeakPowerRpm + UsualReach));
        double torqueSlope = (fall + rise) / 2;
        double[] units = new double[belts.Length];
        for (int j = 0; j < units.Length; j++)
        {
            double flyweight = share * flyweights.Mean(j) * speed * speed;
            double thrust = flyweight - springs.Mean(j);
            double perRadius = 1 / model.Positions[j].DriveRadius;
            double tension = model.TorqueAt(model.PeakPowerRpm) * perRadius;
            double atRest = 2 * flyweight / model.PeakPowerRpm;
            units[j] = atRest;
            if (!belts[j].Inverts || !(thrust > belts[j].Beyond * tension))
                continue;
            double load = belts[j].LoadOf(thrust / tension).Low;
            if (belts[j].TrySlopes(load, load, out _, out double slope))
            {
                double wanted = (atRest - slope * torqueSlope * perRadius) / Math.Max(LeastPerForce, belts[j].Chord(load) - load * slope);
                units[j] = Math.Max(LeastUnit * atRest, Math.Abs(wanted - perTorque[j] * torqueSlope));
            }
        }

        return units;
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

    private static double[] Sides(int dimensions, int first, double ofFirst, double ofOthers) =>
        [.. Enumerable.Range(0, dimensions).Select(d => d < first ? ofFirst : ofOthers)];

    private readonly struct Points(int count, int dimensions)
    {
        public double[] All { get; } = new double[count * dimensions];

        public void Read(int item, int from, Span<double> to) => this[item].Slice(from, to.Length).CopyTo(to);

        public Span<double> this[int item] => All.AsSpan(item * dimensions, dimensions);

        public int Count => count;

        public double Mean(int dimension)
        {
            double sum = 0;
            for (int item = 0; item < count; item++)
                sum += this[item][dimension];
            return sum / count;
        }

        /// <summary>The first so many numbers of each.</summary>
        public double[] First(int length)
        {
            double[] first = new double[count * length];
            for (int item = 0; item < count; item++)
                this[item][..length].CopyTo(first.AsSpan(item * length));
            return first;
        }
    }
}
