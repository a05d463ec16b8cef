using System.Buffers;
using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>Bounds on the miss of a box, from thrusts at the target speeds alone: looser than <see cref="SetBounds"/>, and quick.</summary>
/// <remarks>
/// 1. A set that counts balances at each position within a window around the target: outside it that one error is too
///    much already. 2. At the balance net thrust is 0. So its net thrust at the target is what it gains or loses on the
///    way from there, and that is at most the distance times the steepness: of the flyweights W (2 ω_t + ω_window), of
///    the belt |dQ/dn| times <see cref="BeltBounds.Steepness"/>. 3. The least net thrust of the box at the target, over
///    the greatest steepness, is therefore a floor of the distance. This asks neither how often net thrust passes 0 nor
///    where the model looks. 4. It does not hold for a set that engages within the window, where it may be balanced at
///    once with thrust to spare: such boxes are left to <see cref="SetBounds"/>. 5. What it needs of a driven node is the
///    same for every pair: thrust at the target, steepness, and whether all its members slip over the whole window.
/// </remarks>
internal sealed class QuickBounds
{
    private const int Entries = 1 << 14;
    private const double Slack = 1e-6;

    private readonly Score score;
    private readonly ShiftModel model;
    private readonly SearchIndex index;
    private readonly IReadOnlyList<double> slipEdges;
    private readonly int points;
    private readonly double revLimit;
    private readonly double flyweightShare;
    private readonly double errorPerMiss;
    private readonly double tolerance;
    private readonly double[] targetTorque;
    private readonly double[] targetSquared;
    private readonly double[] leastTorque;
    private readonly double[] greatestTorque;
    private readonly double[] steepestTorque;
    private readonly double[] flyweightSteepness;

    // For each entry: at each position the least thrust, the greatest, and the steepness of the belt.
    private readonly int[] tags;
    private readonly float[] facts;
    private double latestEngagement;

    public QuickBounds(Predictor predictor, Score score, SearchIndex index, SetBounds bounds)
    {
        this.score = score;
        this.index = index;
        model = predictor.Model;
        slipEdges = bounds.SlipEdges;
        points = index.Belts.Count;
        revLimit = predictor.Machine.Drivetrain.RevLimitRpm;
        flyweightShare = (1 - predictor.Machine.Drivetrain.FlyweightFrictionShare) * model.Anchor.Flyweight;
        errorPerMiss = Math.Sqrt(points / score.ShiftWeight);
        tolerance = score.ShiftRpm(0, 1) - score.ShiftRpm(0, 0);
        targetTorque = [.. score.ShiftTargets.Select(t => model.TorqueAt(Math.Min(t, revLimit)))];
        targetSquared = [.. score.ShiftTargets.Select(t => flyweightShare * Math.Pow(Rotation.ToRadiansPerSecond(t), 2))];
        leastTorque = new double[points];
        greatestTorque = new double[points];
        steepestTorque = new double[points];
        flyweightSteepness = new double[points];
        tags = ArrayPool<int>.Shared.Rent(Entries);
        facts = ArrayPool<float>.Shared.Rent(Entries * 3 * points);
    }

    /// <summary>The greatest miss that the windows leave room for; 0 before there is one.</summary>
    public double Radius { get; private set; }

    /// <summary>Sets the windows for misses up to a radius, where targets and windows lie below the rev limit.</summary>
    public void Aim(double radius)
    {
        double window = radius * errorPerMiss * tolerance;
        Radius = 0;
        if (!(window < score.ShiftTargets.Min()) || score.ShiftTargets.Max() > revLimit)
            return;
        Radius = radius;
        latestEngagement = double.PositiveInfinity;
        Array.Fill(tags, -1);
        for (int j = 0; j < points; j++)
        {
            double target = score.ShiftTargets[j];
            double from = target - window;
            double to = Math.Min(target + window, revLimit);
            latestEngagement = Math.Min(latestEngagement, from);
            (leastTorque[j], greatestTorque[j]) = model.TorqueRange(from, to);
            steepestTorque[j] = model.SteepestTorque(from, to);
            flyweightSteepness[j] = flyweightShare * Rotation.ToRadiansPerSecond(1)
                * Rotation.ToRadiansPerSecond(2 * target + window);
        }
    }

    /// <summary>True where <see cref="Bound"/> speaks of a box.</summary>
    public bool Covers(in Node node, Cuts cuts) =>
        node.Driven >= 0 && cuts.Widest <= Radius && node.GreatestEngagement < latestEngagement;

    /// <summary>Bounds the miss and the greatest error of the members of a box from below, as far as they count.</summary>
    public BoxVerdict Bound(ref Node node, Cuts cuts, out double leastMiss)
    {
        leastMiss = 0;
        int entry = EntryOf(node.Driven);
        ReadOnlySpan<float> known = facts.AsSpan(entry * 3 * points, 3 * points);
        if (float.IsNaN(known[0]))
            return BoxVerdict.MissesTooMuch;
        ReadOnlySpan<float> springLow = index.Springs.Low(node.Spring);
        ReadOnlySpan<float> springHigh = index.Springs.High(node.Spring);
        ReadOnlySpan<float> flyweightLow = index.Flyweights.Low(node.Flyweight);
        ReadOnlySpan<float> flyweightHigh = index.Flyweights.High(node.Flyweight);
        double engagement = Math.Max(0, Math.Max(
            score.EngagementError(node.LeastEngagement), -score.EngagementError(node.GreatestEngagement)));
        double greatest = 0;
        double squares = 0;
        for (int j = 0; j < points; j++)
        {
            double least = targetSquared[j] * flyweightLow[j] - springHigh[j];
            double most = targetSquared[j] * flyweightHigh[j] - springLow[j];
            double apart = Math.Max(least - known[points + j], known[j] - most) - Slack * (most + known[points + j]);
            if (apart <= 0)
                continue;
            double error = apart / ((flyweightSteepness[j] * flyweightHigh[j] + known[2 * points + j]) * tolerance);
            greatest = Math.Max(greatest, error);
            squares += error * error;
        }

        node.LeastError = Math.Max(engagement, Math.Min(greatest * (1 - Slack), cuts.Widest * errorPerMiss));
        leastMiss = Math.Sqrt(
            score.EngagementWeight * engagement * engagement + score.ShiftWeight * (squares / points) * (1 - Slack));
        return cuts.Exceeded(leastMiss, node.LeastError) ? BoxVerdict.MissesTooMuch : BoxVerdict.Open;
    }

    /// <summary>Gives the memory back.</summary>
    public void Release()
    {
        ArrayPool<int>.Shared.Return(tags);
        ArrayPool<float>.Shared.Return(facts);
    }

    private int EntryOf(int node)
    {
        int entry = node & (Entries - 1);
        if (tags[entry] == node)
            return entry;
        tags[entry] = node;
        Fill(node, facts.AsSpan(entry * 3 * points, 3 * points));
        return entry;
    }

    private void Fill(int node, Span<float> entry)
    {
        ReadOnlySpan<float> low = index.Driven.Low(node);
        ReadOnlySpan<float> high = index.Driven.High(node);
        double factor = model.Anchor.Thrust;
        for (int j = 0; j < points; j++)
        {
            BeltBounds belt = index.Belts[j];
            double radius = model.Positions[j].DriveRadius;
            double tension = targetTorque[j] / radius;
            entry[j] = BoxTree.Below(factor * belt.Least(low[j] + low[points + j] * targetTorque[j], tension, tension));
            entry[points + j] = BoxTree.Above(
                factor * belt.Greatest(high[j] + high[points + j] * targetTorque[j], tension, tension));
            double widest = high[j] + high[points + j] * greatestTorque[j];
            (double least, double greatest) = belt.Steepness(
                low[j] + low[points + j] * leastTorque[j], widest, leastTorque[j] / radius, greatestTorque[j] / radius,
                low[points + j], high[points + j], 1 / radius);
            entry[2 * points + j] = BoxTree.Above(
                factor * steepestTorque[j] * Math.Max(Math.Abs(least), Math.Abs(greatest)));
            double worst = high[j] + high[points + j] * leastTorque[j];
            if (slipEdges.Count > 0 && low[j] >= 0 && leastTorque[j] / radius > slipEdges[j] * worst * (1 + Slack))
            {
                entry[0] = float.NaN;
                return;
            }
        }
    }
}
