using PartPicker.Mechanics;
using PartPicker.Selection;
using PartPicker.TestKit;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>Every bound of the search holds for the sets that it speaks of, as the model judges them.</summary>
public sealed class SearchBoundTests
{
    private const int Catalogs = 150;

    [Fact]
    public void No_thrust_of_the_belt_leaves_its_bounds()
    {
        var random = new Random(1);
        double apart = 0;
        int trials = 0;
        EachLoad(random, (_, belt, _, _, clamp, tension, truth) =>
        {
            double less = tension * random.NextDouble();
            double more = tension * (1 + random.NextDouble());
            Assert.InRange(truth, belt.Least(clamp, tension, tension), belt.Greatest(clamp, tension, tension));
            Assert.InRange(truth, belt.Least(clamp * random.NextDouble(), less, more), double.MaxValue);
            Assert.InRange(truth, 0, belt.Greatest(clamp * (1 + random.NextDouble()), less, more));
            apart += (belt.Greatest(clamp, tension, tension) - belt.Least(clamp, tension, tension)) / truth;
            trials++;
        });

        // Bounds that are far apart would hold as well, and be of no use.
        Assert.InRange(apart / trials, 0, 1e-4);
    }

    [Fact]
    public void The_load_of_a_thrust_lies_between_its_bounds()
    {
        var random = new Random(2);
        double apart = 0;
        int trials = 0;
        EachLoad(random, (model, belt, j, rpm, clamp, tension, thrust) =>
        {
            if (!belt.Inverts || !(thrust > belt.Beyond * tension * (1 + 1e-9)))
                return;
            double load = tension / clamp;
            (double low, double high) = belt.LoadOf(thrust / tension);
            Assert.InRange(load, low, high);
            double from = load * (1 - 0.2 * random.NextDouble());
            double to = load * (1 + 0.2 * random.NextDouble());
            if (belt.TrySlopes(from, to, out double least, out double greatest))
                Assert.InRange(SlopeAt(model, j, rpm, tension, load), least - 1e-6, greatest + 1e-6);
            apart += (high - low) / load;
            trials++;
        });

        Assert.True(trials > 10_000, $"only {trials} loads were found");
        Assert.InRange(apart / trials, 0, 1e-3);
    }

    private delegate void OfLoad(
        ShiftModel model, BeltBounds belt, int position, double rpm, double clamp, double tension, double thrust);

    // Belts at every position of many machines, at speeds and clamps of every size, with the thrust that the model tells.
    private static void EachLoad(Random random, OfLoad visit)
    {
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            Case it = new(seed);
            ShiftModel model = it.Predictor.Model;
            for (int j = 0; j < model.Positions.Count; j++)
            {
                var belt = new BeltBounds(model, j);
                for (int trial = 0; trial < 200; trial++)
                {
                    double rpm = random.NextDouble() * it.RevLimit;
                    double clamp = Math.Pow(10, 5 * random.NextDouble());
                    double tension = model.TorqueAt(rpm) / model.Positions[j].DriveRadius;
                    visit(model, belt, j, rpm, clamp, tension, model.UpshiftBeltThrust(rpm, BeltBounds.Clamped(model, clamp), j));
                }
            }
        }
    }

    // Of F_d/F_s over D/F_s, by a difference.
    private static double SlopeAt(ShiftModel model, int j, double rpm, double tension, double load)
    {
        double step = 1e-5 * load;
        return (Ratio(load + step) - Ratio(load - step)) / (2 * step);

        double Ratio(double u) => model.UpshiftBeltThrust(rpm, BeltBounds.Clamped(model, tension / u), j) * u / tension;
    }

    [Fact]
    public void The_torque_rises_and_falls_no_faster_than_its_slopes_say()
    {
        var random = new Random(3);
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            Case it = new(seed);
            ShiftModel model = it.Predictor.Model;
            for (int trial = 0; trial < 100; trial++)
            {
                double from = random.NextDouble() * it.RevLimit;
                double to = Math.Min(it.RevLimit, from + 300 * random.NextDouble());
                (double least, double greatest) = model.TorqueSlopeRange(from, to);
                double before = from + (to - from) * random.NextDouble();
                double after = from + (to - from) * random.NextDouble();
                double rise = model.TorqueAt(after) - model.TorqueAt(before);
                double rpm = after - before;
                Assert.InRange(rise, Math.Min(least * rpm, greatest * rpm) - 1e-9, Math.Max(least * rpm, greatest * rpm) + 1e-9);
            }
        }
    }

    [Fact]
    public void No_set_errs_by_less_than_a_look_at_its_pair_says()
    {
        int looked = 0;
        int seen = 0;
        int tight = 0;
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            Case it = new(seed, maxPerPool: 8);
            if (it.Index.Pools.Empty)
                continue;
            it.EachSet((s, f, d) =>
            {
                if (it.Judge(s, f, d) is not { } set)
                    return;
                int before = looked;
                bool near = false;
                Node pair = it.Pair(s, f);
                PairSweep sweep = it.Bounds.Sweep;
                for (int rung = 0; sweep.TryNext(rung, set.Miss, 0, out rung); rung++)
                {
                    PairView view = sweep.Look(pair, rung);
                    Assert.True(view.Sight != Sight.Nothing, $"seed {seed}: a set that misses by {set.Miss} is out of sight of {view.Radius}");
                    if (view.Sight != Sight.Clear)
                        continue;
                    double truth = set.Squares * (1 + 1e-9) + 1e-9;
                    double item = view.SquaresOfItem(d, double.PositiveInfinity, out double greatest);
                    Assert.True(item <= truth, $"seed {seed}: {item} > {set.Squares}");
                    Assert.InRange(greatest, 0, set.Greatest * (1 + 1e-9) + 1e-9);
                    Assert.InRange(set.Squares, 0, sweep.Limit(set.Miss * (1 + 1e-9) + 1e-9, it.Bounds.LeastEngagementError(pair)) + 1e-6);
                    for (int depth = 0; depth < 12; depth++)
                    {
                        double around = view.SquaresOf(Case.Around(it.Index.Driven, d, depth), double.PositiveInfinity);
                        Assert.True(around <= item * (1 + 1e-9) + 1e-9, $"seed {seed}, depth {depth}: {around} > {item}");
                    }

                    looked++;
                    near = near || item > 0.25 * set.Squares;
                }

                seen += looked > before ? 1 : 0;
                tight += near ? 1 : 0;
            }, sets: 60);
        }

        Assert.True(looked > 1000, $"only {looked} looks");
        Assert.True(tight > seen / 10, $"only of {tight} of {seen} sets a look reaches a quarter of the squares");
    }

    [Fact]
    public void No_choice_is_nearer_to_a_wanted_row_than_its_helix_says()
    {
        var random = new Random(4);
        int helices = 0;
        int beyond = 0;
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            Case it = new(seed, maxPerPool: 8);
            if (it.Index.HelixGroups.Length == 0)
                continue;
            int points = it.Predictor.Model.Positions.Count;
            HelixFrames frames = it.Index.Frames;
            double[] torque = [.. Enumerable.Range(0, points).Select(_ => 80 * random.NextDouble())];
            (double[] Low, double[] High) at = frames.At(torque);
            for (int trial = 0; trial < 20; trial++)
            {
                double[] wanted = [.. Enumerable.Range(0, points).Select(_ => 2 * random.NextDouble())];
                double apart = random.Next(2) * 0.1 * random.NextDouble();
                double[] limits = [.. Enumerable.Repeat(double.PositiveInfinity, frames.Lanes)];
                var squares = new double[frames.Lanes];
                frames.Squares(at, wanted, apart, limits, squares);
                for (int g = 0; g < it.Index.HelixGroups.Length; g++)
                {
                    double least = double.PositiveInfinity;
                    foreach (int item in it.Index.Driven.Items(it.Index.HelixGroups[g].Root))
                        least = Math.Min(least, Distance(it.Index, item, torque, wanted));
                    double truth = Math.Max(0, Math.Sqrt(least) - apart);
                    Assert.True(squares[g] <= truth * truth * (1 + 1e-9) + 1e-9, $"seed {seed}: {squares[g]} > {truth * truth}");
                    Assert.Equal(frames.SquaresOf(g, at, wanted, apart), squares[g]);
                    helices++;
                    beyond += squares[g] > 0.25 * least ? 1 : 0;
                }
            }
        }

        Assert.True(helices > 1000, $"only {helices} helices");
        Assert.True(beyond > helices / 4, $"only {beyond} of {helices} distances reach a quarter of the truth");

        static double Distance(SearchIndex index, int item, double[] torque, double[] wanted)
        {
            var standing = new double[torque.Length];
            index.Clamps.Standing(item, standing);
            double sum = 0;
            for (int j = 0; j < standing.Length; j++)
            {
                double share = (standing[j] + index.Clamps.PerTorque(item)[j] * torque[j]) / index.UsualClamp[j];
                sum += (share - wanted[j]) * (share - wanted[j]);
            }

            return sum;
        }
    }

    [Fact]
    public void Engagement_stays_between_floor_and_ceiling()
    {
        double widest = 0;
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            Case it = new(seed);
            if (it.Index.Pools.Empty)
                continue;
            it.EachSet((s, f, _) =>
            {
                double rpm = it.Predictor.Drive(it.Index.Pools.DriveSprings[s], it.Index.Pools.Flyweights[f]).Engagement.Rpm;
                for (int node = 0; node < it.Index.Springs.Nodes; node++)
                {
                    if (!it.Index.Springs.Items(node).Contains(s))
                        continue;
                    for (int other = 0; other < it.Index.Flyweights.Nodes; other++)
                    {
                        if (!it.Index.Flyweights.Items(other).Contains(f))
                            continue;
                        (double least, double greatest) = it.Engagement(node, other);
                        Assert.InRange(rpm, least, greatest);
                        if (it.Index.Springs.IsLeaf(node) && it.Index.Flyweights.IsLeaf(other))
                            widest = Math.Max(widest, (greatest - least) / rpm);
                    }
                }
            });
        }

        Assert.InRange(widest, 0, 0.1);
    }

    [Fact]
    public void No_set_misses_by_less_than_the_bound_of_any_box_around_it()
    {
        int bounded = 0;
        int tight = 0;
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            Case it = new(seed);
            if (it.Index.Pools.Empty)
                continue;
            it.EachSet((s, f, d) =>
            {
                Judged? truth = it.Judge(s, f, d);
                for (int depth = 0; depth < 12; depth++)
                {
                    BoxVerdict verdict = it.Bound(depth, s, f, d, out double bound, out double error);
                    if (truth is not { } set)
                        continue;
                    Assert.True(verdict == BoxVerdict.Open, $"seed {seed}: a box around a set that counts is {verdict}");
                    Assert.True(bound <= set.Miss * (1 + 1e-9) + 1e-9, $"seed {seed}, depth {depth}: {bound} > {set.Miss}");
                    Assert.True(error <= set.Greatest * (1 + 1e-9) + 1e-9, $"seed {seed}, depth {depth}: {error} > {set.Greatest}");
                    bounded++;
                    tight += bound > 0.5 * set.Miss ? 1 : 0;
                }
            });
        }

        Assert.True(bounded > 10_000, $"only {bounded} boxes were bounded");
        Assert.True(tight > bounded / 4, $"only {tight} of {bounded} bounds reach half of the miss");
    }

    [Fact]
    public void The_clamp_of_every_driven_choice_is_the_models()
    {
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            Case it = new(seed);
            if (it.Index.Pools.Empty)
                continue;
            var standing = new double[it.Predictor.Model.Positions.Count];
            for (int d = 0; d < it.Index.Pools.Driven.Count; d++)
            {
                DrivenSide side = it.Predictor.Driven(it.Index.Pools.Driven[d]);
                it.Index.Clamps.Standing(d, standing);
                for (int j = 0; j < standing.Length; j++)
                {
                    Assert.Equal(side.Upshift[j].Standing, standing[j], 1e-9 * (1 + Math.Abs(standing[j])));
                    Assert.Equal(side.Upshift[j].PerTorque, it.Index.Clamps.PerTorque(d)[j], 1e-12);
                }
            }
        }
    }

    /// <summary>A random catalog, its pools as boxes, and its sets.</summary>
    private sealed class Case
    {
        private readonly PickRequest request;
        private readonly Score score;
        private readonly Random random;

        public Case(int seed, int maxPerPool = 4)
        {
            var catalog = new RandomCatalog(seed, maxPerPool);
            random = new Random(seed);
            request = catalog.Request;
            MachineModel machine = MachineModel.Create(request.Machine, [])!;
            Predictor = PredictorBuilder.Build(
                catalog.Snapshot, machine, request.Machine.OwnBaseline, "", request.Air, request.AirLaw, request.PointCount, [])!;
            SetUp fitted = new SetUpReader(catalog.Snapshot, request.Machine, [], []).Find(request.Machine.Machine.Fitted!, "")!;
            CandidatePools pools = new PoolBuilder(catalog.Snapshot, machine, fitted, request, new FitReport()).Build([], default)!;
            Index = SearchIndex.Build(pools, fitted, machine, request.PointCount, default);
            WantedRpm wanted = ShiftGoals.Of(request.Target, Predictor, fitted, [])!;
            score = new Score(wanted, request);
            Bounds = new SetBounds(Predictor, score, Index, request.SlipMargin);
        }

        public Predictor Predictor { get; }

        public SearchIndex Index { get; }

        public SetBounds Bounds { get; }

        public double RevLimit => Predictor.Machine.Drivetrain.RevLimitRpm;

        /// <summary>Some sets, no more than a test has time for.</summary>
        public void EachSet(Action<int, int, int> visit, int sets = 12)
        {
            for (int i = 0; i < sets; i++)
            {
                visit(
                    random.Next(Index.Pools.DriveSprings.Count), random.Next(Index.Pools.Flyweights.Count),
                    random.Next(Index.Pools.Driven.Count));
            }
        }

        public (double Least, double Greatest) Engagement(int spring, int flyweight) => Bounds.Engagement(
            Index.Springs.Low(spring), Index.Springs.High(spring), Index.Flyweights.Low(flyweight), Index.Flyweights.High(flyweight));

        /// <summary>A drive pair by itself with its true engagement, and all that the driven side has.</summary>
        public Node Pair(int s, int f)
        {
            double rpm = Predictor.Drive(Index.Pools.DriveSprings[s], Index.Pools.Flyweights[f]).Engagement.Rpm;
            return new Node
            {
                Spring = Around(Index.Springs, s, int.MaxValue), Flyweight = Around(Index.Flyweights, f, int.MaxValue),
                LeastEngagement = rpm, GreatestEngagement = rpm,
            };
        }

        /// <summary>What the model says; null where the set is refused.</summary>
        public Judged? Judge(int s, int f, int d)
        {
            DriveSide drive = Predictor.Drive(Index.Pools.DriveSprings[s], Index.Pools.Flyweights[f]);
            DrivenSide driven = Predictor.Driven(Index.Pools.Driven[d]);
            var errors = new double[Predictor.Model.Positions.Count];
            for (int j = 0; j < errors.Length; j++)
            {
                if (Predictor.Model.BalanceRpm(drive, driven, j, ShiftDirection.Upshift) is not { } rpm
                    || Predictor.Model.UpshiftSlipMargin(rpm, driven, j) < request.SlipMargin)
                {
                    return null;
                }

                errors[j] = score.ShiftError(j, rpm);
            }

            double engagement = score.EngagementError(drive.Engagement.Rpm);
            return new Judged(
                score.Miss(engagement, errors), errors.Append(engagement).Max(Math.Abs), errors.Sum(e => e * e));
        }

        /// <summary>The bound of the box around a set, so many steps down each tree, windows handed down as the search does.</summary>
        public BoxVerdict Bound(int depth, int s, int f, int d, out double bound, out double error)
        {
            var window = new ushort[Bounds.WindowLength];
            Bounds.Open(window);
            (bound, error) = (0, 0);
            for (int step = 0; step <= depth; step++)
            {
                int spring = Around(Index.Springs, s, step);
                int flyweight = Around(Index.Flyweights, f, step);
                int driven = Around(Index.Driven, d, step);
                var node = new Node { Spring = spring, Flyweight = flyweight, Driven = driven };
                (node.LeastEngagement, node.GreatestEngagement) = Engagement(spring, flyweight);
                BoxVerdict verdict = Bounds.Bound(
                    Index.Springs.Low(spring), Index.Springs.High(spring),
                    Index.Flyweights.Low(flyweight), Index.Flyweights.High(flyweight),
                    Index.Driven.Low(driven), Index.Driven.High(driven), Cuts.None, ref node, window, out bound);
                if (verdict != BoxVerdict.Open)
                    return verdict;
                error = node.LeastError;
            }

            return BoxVerdict.Open;
        }

        public static int Around(BoxTree tree, int item, int depth)
        {
            int node = 0;
            for (int step = 0; step < depth && !tree.IsLeaf(node); step++)
                node = tree.Items(tree.Child(node)).Contains(item) ? tree.Child(node) : tree.Child(node) + 1;
            return node;
        }
    }

    /// <summary>A set as the model sees it: its miss, its greatest error, and Σe² along the curve.</summary>
    private sealed record Judged(double Miss, double Greatest, double Squares);
}
