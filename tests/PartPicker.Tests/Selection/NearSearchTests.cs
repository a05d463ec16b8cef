using PartPicker.Mechanics;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>What the search of near sets passes by, it may pass by: held against sets as the model judges them.</summary>
public sealed class NearSearchTests
{
    private static readonly double[] Reaches = [0.05, 0.1, 0.3, 0.6, 1, 3, 10];

    [Fact]
    public void The_clamp_that_a_pair_wants_is_the_one_whose_thrust_it_has()
    {
        int looked = 0;
        double loosest = 0;
        Each(maxPerPool: 8, sets: 20, (it, s, f, _) =>
        {
            ShiftModel model = it.Predictor.Model;
            DriveSide drive = it.Predictor.Drive(it.Index.Pools.DriveSprings[s], it.Index.Pools.Flyweights[f]);
            PairSight sight = it.Bounds.Sight(new Workbench());
            if (!sight.TryReach(0.3, insideOnly: false) || sight.Look(s, f, drive.Engagement.Rpm) != Sight.Clear)
                return;
            for (int j = 0; j < model.Positions.Count; j++)
            {
                double target = it.Score.ShiftTargets[j];
                double speed = Rotation.ToRadiansPerSecond(target);
                double share = 1 - it.Predictor.Machine.Drivetrain.FlyweightFrictionShare;
                double thrust = share * drive.ThrustPerSpeedSquared[j] * speed * speed - drive.SpringForce[j];
                Wanted wanted = sight.WantedAt(j);
                Assert.InRange(
                    thrust, Thrust(wanted.Clamp - wanted.Loose) * (1 - 1e-9), Thrust(wanted.Clamp + wanted.Loose) * (1 + 1e-9));
                loosest = Math.Max(loosest, wanted.Loose / wanted.Clamp);
                looked++;

                double Thrust(double clamp) =>
                    model.Anchor.Thrust * model.UpshiftBeltThrust(target, BeltBounds.Clamped(model, clamp), j);
            }
        });

        Assert.True(looked > 1000, $"only {looked} looks");
        Assert.InRange(loosest, 0, 0.05);
    }

    [Fact]
    public void No_set_errs_by_less_than_a_look_at_its_pair_says()
    {
        int looked = 0;
        int tight = 0;
        EachLook((it, set, d, sight, reach) =>
        {
            sight.MakeReady(it.Index.Clamps.PerTorque(d));
            double squares = sight.SquaresOf(it.Index.Clamps.Of(d), double.PositiveInfinity, out double greatest);
            Assert.True(squares <= set.Squares * (1 + 1e-9) + 1e-9, $"{squares} > {set.Squares}");
            Assert.InRange(greatest, 0, set.Greatest * (1 + 1e-9) + 1e-9);
            Assert.InRange(set.Squares, 0, sight.Limit(set.Miss * (1 + 1e-9) + 1e-9, it.Bounds.LeastEngagementError(it.Pair(set.Spring, set.Flyweight))) + 1e-6);

            // From far off slopes are steep: only a look with little to spare is a near one.
            looked += reach < 3 * set.Miss ? 1 : 0;
            tight += reach < 3 * set.Miss && squares > 0.25 * set.Squares ? 1 : 0;
        });

        Assert.True(looked > 300, $"only {looked} looks");
        Assert.True(tight > looked / 8, $"only {tight} of {looked} looks reach a quarter of the squares");
    }

    [Fact]
    public void No_helix_is_passed_that_has_a_near_choice()
    {
        int helices = 0;
        int near = 0;
        EachLook((it, set, d, sight, _) =>
        {
            int place = it.Index.Pools.Driven.Code(d).Helix;
            double own = sight.PerUnitOf(it.Index.Clamps.PerTorqueOf(place));
            Assert.True(sight.PerUnit <= own * (1 + 1e-9), "A helix by itself may err by less than all of them.");
            float apart = BoxTree.Above(sight.Apart);
            for (int changes = it.Index.ChangesOf(d); changes < DrivenLevels.Count; changes++)
            {
                DrivenLevels.Level level = it.Index.Levels[changes];
                double squares = level.Boxes.SquaresOf(level.Lanes[place], sight.At(changes), sight.Seen, apart) * own * own;
                Assert.True(squares <= set.Squares * (1 + 1e-5) + 1e-9, $"{squares} > {set.Squares}");
                helices++;
                near += squares > 0 ? 1 : 0;
            }

            // In its own level it is found in its strip, however narrow the radius is that its distance allows.
            DrivenLevels.Level mine = it.Index.Levels[it.Index.ChangesOf(d)];
            double radius = Math.Sqrt(set.Squares) / own * (1 + 1e-5) + sight.Apart;
            bool found = false;
            int strip = 0;
            for (ReadOnlySpan<int> run = mine.Strips.Next(mine.Lanes[place], ref strip, sight.PlaceOf(place), radius);
                !run.IsEmpty;
                run = mine.Strips.Next(mine.Lanes[place], ref strip, sight.PlaceOf(place), radius))
            {
                found = found || run.Contains(it.Index.Pools.Driven.Joint(d));
            }

            Assert.True(found, "A choice within the radius is in no strip.");
        });

        Assert.True(helices > 1000, $"only {helices} helices");
        Assert.True(near > 100, $"only {near} helices are told to be off at all");
    }

    [Fact]
    public void Helices_side_by_side_are_the_same_as_one_by_one()
    {
        var random = new Random(4);
        int helices = 0;
        for (int seed = 1; seed <= SearchCase.Catalogs; seed++)
        {
            SearchCase it = new(seed, maxPerPool: 8);
            if (it.Index.Pools.Empty)
                continue;
            PairSight sight = it.Bounds.Sight(new Workbench());
            for (int changes = 0; changes < DrivenLevels.Count; changes++)
            {
                HelixBoxes boxes = it.Index.Levels[changes].Boxes;
                float[] seen = [.. Enumerable.Range(0, it.Index.Levels.Frame.Count).Select(_ => 2000 * random.NextSingle() - 1000)];
                float apart = random.Next(2) * random.NextSingle();
                int[] near = new int[boxes.Lanes];
                float[] squares = new float[boxes.Lanes];
                float[] alone = [.. Enumerable.Range(0, boxes.Count).Select(h => boxes.SquaresOf(h, sight.At(changes), seen, apart))];
                float limit = alone.Length == 0 ? 0 : alone[random.Next(alone.Length)];
                int count = boxes.Near(sight.At(changes), seen, apart, limit, near, squares);
                Assert.Equal(Enumerable.Range(0, boxes.Count).Where(h => alone[h] <= limit), near.Take(count));
                Assert.Equal(near.Take(count).Select(h => alone[h]), squares.Take(count));
                helices += count;
            }
        }

        Assert.True(helices > 1000, $"only {helices} helices");
    }

    [Fact]
    public void No_box_of_pairs_is_dropped_that_balances_within_reach()
    {
        int boxes = 0;
        int dropped = 0;
        EachLook((it, set, d, sight, _) =>
        {
            var hulls = new ClampHulls(it.Index, sight);
            for (int depth = 0; depth < 12; depth++)
            {
                var node = new Node
                {
                    Spring = SearchCase.Around(it.Index.Springs, set.Spring, depth),
                    Flyweight = SearchCase.Around(it.Index.Flyweights, set.Flyweight, depth),
                };
                (node.LeastEngagement, node.GreatestEngagement) = it.Bounds.Engagement(node);
                for (int changes = it.Index.ChangesOf(d); changes < DrivenLevels.Count; changes++)
                {
                    Assert.True(hulls.MayBalance(node, changes), "A box with a set within reach is dropped.");
                    boxes++;
                }
            }

            for (int s = 0; s < it.Index.Pools.DriveSprings.Count; s++)
            {
                Node pair = it.Pair(s, set.Flyweight);
                dropped += hulls.MayBalance(pair, it.Index.ChangesOf(d)) ? 0 : 1;
            }
        });

        Assert.True(boxes > 1000, $"only {boxes} boxes");
        Assert.True(dropped > 20, $"only {dropped} pairs are told to be off");
    }

    // Every set that the model does not refuse, at every reach that it lies within, its pair looked at.
    private static void EachLook(Action<SearchCase, SearchCase.Judged, int, PairSight, double> visit) => Each(maxPerPool: 8, sets: 60, (it, s, f, d) =>
    {
        if (it.Judge(s, f, d) is not { } set)
            return;
        PairSight sight = it.Bounds.Sight(new Workbench());
        foreach (double reach in Reaches)
        {
            foreach (bool insideOnly in new[] { false, true })
            {
                if (reach < set.Miss || (insideOnly && set.Greatest > 1) || !sight.TryReach(reach, insideOnly))
                    continue;
                Sight seen = sight.Look(s, f, it.Pair(s, f).GreatestEngagement);
                Assert.True(seen != Sight.Nothing, $"a set that misses by {set.Miss} is out of sight of {reach}");
                if (seen == Sight.Clear)
                    visit(it, set, d, sight, reach);
            }
        }
    });

    private static void Each(int maxPerPool, int sets, Action<SearchCase, int, int, int> visit)
    {
        for (int seed = 1; seed <= SearchCase.Catalogs; seed++)
        {
            SearchCase it = new(seed, maxPerPool);
            if (!it.Index.Pools.Empty)
                it.EachSet((s, f, d) => visit(it, s, f, d), sets);
        }
    }
}
