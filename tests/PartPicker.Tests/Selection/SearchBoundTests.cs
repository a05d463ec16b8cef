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
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            Case it = new(seed);
            ShiftModel model = it.Predictor.Model;
            for (int j = 0; j < model.Positions.Count; j++)
            {
                var belt = new BeltBounds(model, j);
                double radius = model.Positions[j].DriveRadius;
                for (int trial = 0; trial < 200; trial++)
                {
                    double rpm = random.NextDouble() * it.RevLimit;
                    double clamp = Math.Pow(10, 5 * random.NextDouble());
                    double tension = model.TorqueAt(rpm) / radius;
                    double truth = model.UpshiftBeltThrust(rpm, BeltBounds.Clamped(model, clamp), j);
                    double less = tension * random.NextDouble();
                    double more = tension * (1 + random.NextDouble());
                    Assert.InRange(truth, belt.Least(clamp, tension, tension), belt.Greatest(clamp, tension, tension));
                    Assert.InRange(truth, belt.Least(clamp * random.NextDouble(), less, more), double.MaxValue);
                    Assert.InRange(truth, 0, belt.Greatest(clamp * (1 + random.NextDouble()), less, more));
                    apart += (belt.Greatest(clamp, tension, tension) - belt.Least(clamp, tension, tension)) / truth;
                    trials++;
                }
            }
        }

        // Bounds that are far apart would hold as well, and be of no use.
        Assert.InRange(apart / trials, 0, 1e-4);
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
                (double Miss, double Greatest)? truth = it.Judge(s, f, d);
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
        private readonly SetBounds bounds;
        private readonly Random random;

        public Case(int seed)
        {
            var catalog = new RandomCatalog(seed);
            random = new Random(seed);
            request = catalog.Request;
            MachineModel machine = MachineModel.Create(request.Machine, [])!;
            Predictor = PredictorBuilder.Build(
                catalog.Snapshot, machine, request.Machine.OwnBaseline, "", request.Air, request.AirLaw, request.PointCount, [])!;
            SetUp fitted = new SetUpReader(catalog.Snapshot, request.Machine, [], []).Find(request.Machine.Machine.Fitted!, "")!;
            CandidatePools pools = new PoolBuilder(catalog.Snapshot, machine, fitted, request, new FitReport()).Build([], default)!;
            Index = SearchIndex.Build(pools, fitted, machine, request.PointCount, default);
            WantedRpm wanted = ShiftGoals.Of(request.Target, Predictor, fitted, [])!;
            score = new Score(wanted.Engagement, wanted.Shift, request.Tolerances, request.Weights);
            bounds = new SetBounds(Predictor, score, Index, request.SlipMargin);
        }

        public Predictor Predictor { get; }

        public SearchIndex Index { get; }

        public double RevLimit => Predictor.Machine.Drivetrain.RevLimitRpm;

        /// <summary>Some sets, no more than a test has time for.</summary>
        public void EachSet(Action<int, int, int> visit)
        {
            for (int i = 0; i < 12; i++)
            {
                visit(
                    random.Next(Index.Pools.DriveSprings.Count), random.Next(Index.Pools.Flyweights.Count),
                    random.Next(Index.Pools.Driven.Count));
            }
        }

        public (double Least, double Greatest) Engagement(int spring, int flyweight) => bounds.Engagement(
            Index.Springs.Low(spring), Index.Springs.High(spring), Index.Flyweights.Low(flyweight), Index.Flyweights.High(flyweight));

        /// <summary>Miss and greatest error by the model; null where the set is refused.</summary>
        public (double Miss, double Greatest)? Judge(int s, int f, int d)
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
            return (score.Miss(engagement, errors), errors.Append(engagement).Max(Math.Abs));
        }

        /// <summary>The bound of the box around a set, so many steps down each tree, windows handed down as the search does.</summary>
        public BoxVerdict Bound(int depth, int s, int f, int d, out double bound, out double error)
        {
            var window = new ushort[bounds.WindowLength];
            bounds.Open(window);
            (bound, error) = (0, 0);
            for (int step = 0; step <= depth; step++)
            {
                int spring = Around(Index.Springs, s, step);
                int flyweight = Around(Index.Flyweights, f, step);
                int driven = Around(Index.Driven, d, step);
                var node = new Node { Spring = spring, Flyweight = flyweight, Driven = driven };
                (node.LeastEngagement, node.GreatestEngagement) = Engagement(spring, flyweight);
                BoxVerdict verdict = bounds.Bound(
                    Index.Springs.Low(spring), Index.Springs.High(spring),
                    Index.Flyweights.Low(flyweight), Index.Flyweights.High(flyweight),
                    Index.Driven.Low(driven), Index.Driven.High(driven), Cuts.None, ref node, window, out bound);
                if (verdict != BoxVerdict.Open)
                    return verdict;
                error = node.LeastError;
            }

            return BoxVerdict.Open;
        }

        private static int Around(BoxTree tree, int item, int depth)
        {
            int node = 0;
            for (int step = 0; step < depth && !tree.IsLeaf(node); step++)
                node = tree.Items(tree.Child(node)).Contains(item) ? tree.Child(node) : tree.Child(node) + 1;
            return node;
        }
    }
}
