using PartPicker.Mechanics;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>Every bound of the search holds for the sets that it speaks of, as the model judges them.</summary>
public sealed class SearchBoundTests
{
    private const int Catalogs = SearchCase.Catalogs;

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
            SearchCase it = new(seed);
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
            SearchCase it = new(seed);
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
    public void Engagement_stays_between_floor_and_ceiling()
    {
        double widest = 0;
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            SearchCase it = new(seed);
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
            SearchCase it = new(seed);
            if (it.Index.Pools.Empty)
                continue;
            it.EachSet((s, f, d) =>
            {
                SearchCase.Judged? truth = it.Judge(s, f, d);
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
            SearchCase it = new(seed);
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
}
