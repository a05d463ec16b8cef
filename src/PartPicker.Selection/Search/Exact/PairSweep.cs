using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>For one drive pair the driven choices whose miss may be at most a radius, found by boxes of clamp alone.</summary>
/// <remarks>
/// 1. <b>Wanted clamp.</b> With the pair given, the belt needs at speed n one clamp m(n): the one whose thrust the pair
///    just has. 2. <b>Distance.</b> A choice with c = A + B Q(t) balances at n near the target t where A + B Q(n) = m(n),
///    so |c − m(t)| ≤ |n − t| M, with M ≥ |m′ − B Q′| at all speeds that a miss up to the radius allows. So its error is at
///    least |c − m(t)|/M, and a box of choices errs by its distance from m(t) over M. 3. <b>Slip.</b> Near the target the
///    pair needs a clamp and has a tension: where the margin is too low for all of these speeds, no choice helps.
///    4. A position where this cannot be told, with the belt near its edge or the clutch engaged balanced, adds nothing.
///    A greater radius allows more speeds: M only grows, so what was found with a lesser one is found again.
/// </remarks>
internal sealed class PairSweep
{
    private const double FirstRpm = 10;
    private const double NextRung = 1.6;
    private const int Rungs = 11;

    // Further rungs that a look may take at once: it saves looks, but tells less of each choice.
    private const int MostSkipped = 1;

    private const double Slack = 1e-9;

    // Of errors, in tolerances: far more than a balance is narrowed to.
    private const double ErrorSlack = 1e-7;

    private readonly ShiftModel model;
    private readonly Score score;
    private readonly SearchIndex index;
    private readonly BeltBounds[] belts;
    private readonly double[] slipEdge;
    private readonly double flyweightShare;
    private readonly double revLimit;
    private readonly double rpmPerError;
    private readonly double errorPerMiss;
    private readonly int points;
    private readonly double[] leastPerTorque;
    private readonly double[] greatestPerTorque;
    private readonly Rung?[] rungs;
    private readonly PairView now;
    private readonly PairView before;

    public PairSweep(
        ShiftModel model, Score score, SearchIndex index, BeltBounds[] belts, double[] slipEdge,
        double flyweightShare, double revLimit)
    {
        this.model = model;
        this.score = score;
        this.index = index;
        this.slipEdge = slipEdge;
        this.flyweightShare = flyweightShare;
        this.revLimit = revLimit;
        this.belts = belts;
        points = belts.Length;
        rpmPerError = score.ShiftRpm(0, 1) - score.ShiftRpm(0, 0);
        errorPerMiss = Math.Sqrt(points / score.ShiftWeight);
        ReadOnlySpan<float> low = index.Driven.Low(0);
        ReadOnlySpan<float> high = index.Driven.High(0);
        leastPerTorque = new double[points];
        greatestPerTorque = new double[points];
        var targetTorque = new double[points];
        for (int j = 0; j < points; j++)
        {
            (leastPerTorque[j], greatestPerTorque[j]) = (low[points + j], high[points + j]);
            double target = score.ShiftTargets[j];
            targetTorque[j] = target >= 0 && target <= revLimit ? model.TorqueAt(target) : 0;
        }

        rungs = new Rung?[Rungs];
        (double[] Low, double[] High) frames = index.Frames.At(targetTorque);
        now = new PairView(index, targetTorque, frames);
        before = new PairView(index, targetTorque, frames);
    }

    /// <summary>The first rung from one on whose radius exceeds a miss; false where there is none.</summary>
    /// <param name="aim">Where a further rung reaches this, that one: it saves looks.</param>
    public bool TryNext(int from, double miss, double aim, out int rung)
    {
        rung = from;
        while (rung < Rungs && !(RadiusOf(rung) > miss))
            rung++;
        int last = Math.Min(rung + MostSkipped, Rungs - 1);
        while (rung < last && !(RadiusOf(rung) > aim))
            rung++;
        return rung < Rungs;
    }

    /// <summary>A pair as a rung sees it; valid until the next look.</summary>
    public PairView Look(in Node node, int rung)
    {
        Look(now, node, rung);
        return now;
    }

    /// <summary>A pair as an earlier rung has seen it; valid until the next look back.</summary>
    public PairView LookAgain(in Node node, int rung)
    {
        Look(before, node, rung);
        return before;
    }

    /// <summary>The greatest Σe_j² that a miss allows beside an error of engagement.</summary>
    public double Limit(double miss, double engagementError)
    {
        double left = miss * miss - score.EngagementWeight * engagementError * engagementError;
        if (left < 0)
            return -1;
        if (score.ShiftWeight == 0)
            return double.PositiveInfinity;
        double reach = Math.Sqrt(left) * errorPerMiss + ErrorSlack;
        return reach * reach;
    }

    /// <summary>The least miss with these errors.</summary>
    public double Miss(double engagementError, double squares)
    {
        double shift = Math.Max(0, Math.Sqrt(squares) - ErrorSlack);
        return Math.Sqrt(score.EngagementWeight * engagementError * engagementError + score.ShiftWeight * (shift * shift / points));
    }

    private void Look(PairView view, in Node node, int step)
    {
        Rung rung = RungAt(step);
        view.Radius = rung.Radius;
        view.Sight = Sight.Nothing;
        Place[] places = rung.Places;
        ReadOnlySpan<float> springLow = index.Springs.Low(node.Spring);
        ReadOnlySpan<float> springHigh = index.Springs.High(node.Spring);
        ReadOnlySpan<float> flyLow = index.Flyweights.Low(node.Flyweight);
        ReadOnlySpan<float> flyHigh = index.Flyweights.High(node.Flyweight);
        double perThrust = 1 / model.Anchor.Thrust;
        int told = 0;
        for (int j = 0; j < points; j++)
        {
            view.PerNewton[j] = 0;
            ref readonly Place place = ref places[j];
            if (!place.Known || node.GreatestEngagement >= place.From)
                continue;
            BeltBounds belt = belts[j];
            double lowShare = flyweightShare * flyLow[j];
            double highShare = flyweightShare * flyHigh[j];
            double leastThrust = perThrust * (lowShare * place.FromSquared - springHigh[j]) - Slack * springHigh[j];
            double mostThrust = perThrust * (highShare * place.ToSquared - springLow[j]) + Slack * springHigh[j];
            double leastTension = place.LeastTorque * place.PerRadius;
            double mostTension = place.GreatestTorque * place.PerRadius;
            if (!belt.Inverts)
                continue;
            if (mostThrust < belt.Beyond * leastTension * (1 - Slack))
                return;
            if (!(leastThrust > belt.Beyond * mostTension * (1 + Slack)))
                continue;
            double leastLoad = belt.LoadOf(mostThrust / leastTension).Low;
            double mostLoad = belt.LoadOf(leastThrust / mostTension).High;
            if (slipEdge.Length > 0 && leastLoad > slipEdge[j] * (1 + Slack))
                return;
            if (!belt.TrySlopes(leastLoad, mostLoad, out double slopeLow, out double slopeHigh))
                continue;
            double perForceLow = belt.Chord(leastLoad) - leastLoad * slopeHigh;
            double perForceHigh = belt.Ceiling(mostLoad) - mostLoad * slopeLow;
            if (!(perForceLow > 0))
                continue;

            (double torqueFall, double torqueRise) = Products(
                slopeLow * place.PerRadius, slopeHigh * place.PerRadius, place.LeastSlope, place.GreatestSlope);
            double least = perThrust * lowShare * place.LeastSpeedSlope - torqueRise;
            double most = perThrust * highShare * place.GreatestSpeedSlope - torqueFall;
            least /= least < 0 ? perForceLow : perForceHigh;
            most /= most < 0 ? perForceHigh : perForceLow;
            (double clampFall, double clampRise) = Products(
                leastPerTorque[j], greatestPerTorque[j], place.LeastSlope, place.GreatestSlope);
            double steepest = Math.Max(Math.Abs(most - clampFall), Math.Abs(least - clampRise)) * (1 + Slack);

            double tension = place.Torque * place.PerRadius;
            double atLeast = perThrust * (lowShare * place.SpeedSquared - springHigh[j]) - Slack * springHigh[j];
            double atMost = perThrust * (highShare * place.SpeedSquared - springLow[j]) + Slack * springHigh[j];
            view.WantedLow[j] = tension / belt.LoadOf(atLeast / tension).High * (1 - Slack);
            view.WantedHigh[j] = tension / belt.LoadOf(atMost / tension).Low * (1 + Slack);
            view.PerNewton[j] = 1 / (steepest * rpmPerError);
            told++;
        }

        view.Sight = 2 * told < points ? Sight.Unclear : Sight.Clear;
        view.Close();
    }

    private double RadiusOf(int rung) => FirstRpm * Math.Pow(NextRung, rung) / rpmPerError / errorPerMiss;

    private Rung RungAt(int step) => rungs[step] ??= new Rung(
        RadiusOf(step), [.. Enumerable.Range(0, points).Select(j => PlaceOf(j, FirstRpm * Math.Pow(NextRung, step)))]);

    private static (double Least, double Greatest) Products(double a, double b, double c, double d)
    {
        double w = a * c;
        double x = a * d;
        double y = b * c;
        double z = b * d;
        return (Math.Min(Math.Min(w, x), Math.Min(y, z)), Math.Max(Math.Max(w, x), Math.Max(y, z)));
    }

    private Place PlaceOf(int j, double reach)
    {
        double target = score.ShiftTargets[j];
        double from = Math.Max(0, target - reach);
        double to = Math.Min(revLimit, target + reach);
        if (!(target > 0 && target <= revLimit))
            return default;
        (double least, double greatest) = model.TorqueRange(from, to);
        (double leastSlope, double greatestSlope) = model.TorqueSlopeRange(from, to);
        double perRpm = Rotation.ToRadiansPerSecond(1) * Rotation.ToRadiansPerSecond(1);
        return new Place(
            least > 0, from, perRpm * from * from, perRpm * to * to, perRpm * target * target, model.TorqueAt(target),
            1 / model.Positions[j].DriveRadius, least, greatest, leastSlope, greatestSlope,
            2 * perRpm * from, 2 * perRpm * to);
    }

    private sealed record Rung(double Radius, Place[] Places);

    private readonly record struct Place(
        bool Known, double From, double FromSquared, double ToSquared, double SpeedSquared, double Torque,
        double PerRadius, double LeastTorque, double GreatestTorque, double LeastSlope, double GreatestSlope,
        double LeastSpeedSlope, double GreatestSpeedSlope);
}
