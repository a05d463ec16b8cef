using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>What became of a box.</summary>
internal enum BoxVerdict
{
    /// <summary>It may hold sets that count.</summary>
    Open,

    /// <summary>No member shifts through below the rev limit.</summary>
    DoesNotShift,

    /// <summary>Every member slips more than the request allows.</summary>
    Slips,

    /// <summary>No member misses by so little that it counts.</summary>
    MissesTooMuch,
}

/// <summary>Bounds on the miss of every set of a box, for one request.</summary>
/// <remarks>
/// 1. <b>Net thrust.</b> More flyweight thrust, less spring, less clamp: net closing thrust rises at every speed, since
///    the belt's thrust rises with the clamp. So the best corner of a box is never below any member, the worst never
///    above. 2. <b>Floor of a balance.</b> A member balances, or engages balanced, only in a cell where the best corner may
///    reach 0: its greatest flyweight thrust less the belt's least over the whole cell. Cells before the first such
///    one are passed. 3. <b>Ceiling.</b> Where the worst corner closes at the end of a cell at or above every member's
///    engagement, the model, which looks there, has found each member's balance by then. 4. <b>Within its cell</b> a
///    balance has ω² W = F₁ + thrust, so the belt's least and greatest thrust over the cell bound the speed. 5. The miss
///    takes at each position the distance from the target to the span so found, and for engagement likewise. 6. <b>Slip.</b>
///    The margin falls as D/F_s rises; the least of that over the span and the box decides. Every bound is loosened by
///    far more than the rounding of what it bounds.
/// </remarks>
internal sealed class SetBounds
{
    private const double Slack = 1e-9;
    private const double RpmSlack = 1e-6;

    // More than the rounding of a torque that is read between its points.
    private const double TorqueSlack = 1e-12;

    // A wider span than this says little about slip.
    private const int WidestSlipSpan = 64;

    private readonly Predictor predictor;
    private readonly SearchIndex index;
    private readonly Score score;
    private readonly SpeedGrid grid;
    private readonly BeltBounds[] belts;
    private readonly double[] perRadius;

    // The greatest D/F_s that the request allows; none where it asks for no margin, or nothing slips for want of torque.
    private readonly double[] slipEdge;
    private readonly int points;

    // Both ends and the middle tell most: they come first.
    private readonly int[] visit;
    private readonly double flyweightShare;
    private readonly double thrustFactor;
    private readonly double torqueFactor;
    private readonly double shiftSquared;
    private readonly double startSquared;
    private readonly double shiftTorque;

    // How large a single error may be for a miss of 1.
    private readonly double errorPerMiss;
    private readonly int[] targetCell;

    public SetBounds(Predictor predictor, Score score, SearchIndex index, double? slipMargin)
    {
        ShiftModel model = predictor.Model;
        this.score = score;
        belts = index.BeltsOf(predictor);
        points = belts.Length;
        visit = [.. Enumerable.Range(0, points).OrderBy(j => j == 0 || j == points - 1 ? 0 : j == points / 2 ? 1 : 2)];
        grid = predictor.Machine.Speeds;
        perRadius = [.. model.Positions.Select(p => 1 / p.DriveRadius)];
        thrustFactor = model.Anchor.Thrust;
        torqueFactor = predictor.TorqueFactor;
        errorPerMiss = Math.Sqrt(points / score.ShiftWeight);
        targetCell = [.. score.ShiftTargets.Select(grid.CellOf)];
        double shift = Math.Min(score.ShiftTargets.Average(), grid.End[grid.Count]);
        shiftTorque = model.TorqueAt(shift);
        shiftSquared = Math.Pow(Rotation.ToRadiansPerSecond(shift), 2);
        startSquared = Math.Pow(Rotation.ToRadiansPerSecond(score.EngagementTarget ?? shift / 4), 2);
        flyweightShare = (1 - predictor.Machine.Drivetrain.FlyweightFrictionShare) * model.Anchor.Flyweight;
        slipEdge = slipMargin is { } margin && model.PeakPower > 0
            ? [.. Enumerable.Range(0, points).Select(j => model.LoadAtSlipMargin(margin, j))]
            : [];
        this.predictor = predictor;
        this.index = index;
    }

    /// <summary>Looks at drive pairs with the same belts and edges.</summary>
    /// <param name="bench">Not used by anything else as long as the pairs are looked at.</param>
    public PairSight Sight(Workbench bench) => new(predictor, score, index, belts, slipEdge, flyweightShare, bench);

    /// <summary>Numbers of a window: first and last cell at each position.</summary>
    public int WindowLength => 2 * points;

    /// <summary>A window that excludes nothing.</summary>
    public void Open(Span<ushort> window)
    {
        window[..points].Fill(1);
        window[points..].Fill((ushort)(grid.Count + 1));
    }

    /// <summary>Between which speeds (rpm) the pairs of a box engage.</summary>
    public (double Least, double Greatest) Engagement(
        ReadOnlySpan<float> springLow, ReadOnlySpan<float> springHigh,
        ReadOnlySpan<float> flyweightLow, ReadOnlySpan<float> flyweightHigh)
    {
        double floor = StartTerms.Floor(springLow[points..], flyweightLow[points..]) / flyweightShare;
        double ceiling = StartTerms.Ceiling(springHigh[points..], flyweightHigh[points..]) / flyweightShare;
        return (Rotation.ToRpm(Math.Sqrt(floor)) - RpmSlack, Rotation.ToRpm(Math.Sqrt(ceiling)) + RpmSlack);
    }

    /// <summary>Between which speeds (rpm) the pairs of a box engage.</summary>
    public (double Least, double Greatest) Engagement(in Node node) => Engagement(
        index.Springs.Low(node.Spring), index.Springs.High(node.Spring),
        index.Flyweights.Low(node.Flyweight), index.Flyweights.High(node.Flyweight));

    /// <summary>How wide a node is, in newtons: what decides which side is halved next, and proves nothing.</summary>
    /// <remarks>Engagement weighs more than one position of the curve, and stands or falls with contact, the first one.</remarks>
    public double SpringWidth(BoxTree springs, int node) => Width(springs.Low(node), springs.High(node), 1, 1);

    /// <inheritdoc cref="SpringWidth"/>
    public double FlyweightWidth(BoxTree flyweights, int node) => Width(
        flyweights.Low(node), flyweights.High(node), flyweightShare * shiftSquared, flyweightShare * startSquared);

    /// <inheritdoc cref="SpringWidth"/>
    public double DrivenWidth(BoxTree driven, int node)
    {
        ReadOnlySpan<float> low = driven.Low(node);
        ReadOnlySpan<float> high = driven.High(node);
        double sum = 0;
        for (int j = 0; j < points; j++)
            sum += high[j] - low[j] + shiftTorque * (high[points + j] - low[points + j]);
        return thrustFactor * sum / points;
    }

    private double Width(ReadOnlySpan<float> low, ReadOnlySpan<float> high, double ofShift, double ofStart)
    {
        double sum = 0;
        for (int j = 0; j < points; j++)
            sum += high[j] - low[j];
        return ofShift * sum / points + 2 * ofStart * (high[0] - low[0]);
    }

    /// <summary>Narrows the window of a box and bounds the miss and the greatest error of its members from below.</summary>
    /// <param name="window">As it was for a box around this one.</param>
    public BoxVerdict Bound(
        ReadOnlySpan<float> springLow, ReadOnlySpan<float> springHigh,
        ReadOnlySpan<float> flyweightLow, ReadOnlySpan<float> flyweightHigh,
        ReadOnlySpan<float> drivenLow, ReadOnlySpan<float> drivenHigh,
        Cuts cuts, ref Node node, Span<ushort> window, out double leastMiss)
    {
        leastMiss = 0;
        double engagement = LeastEngagementError(node);
        double greatest = engagement;
        double squares = 0;
        int start = grid.CellOf(node.LeastEngagement);
        foreach (int j in visit)
        {
            var best = new Corner(
                flyweightShare * flyweightHigh[j], springLow[j], drivenLow[j], drivenLow[points + j]);
            var worst = new Corner(
                flyweightShare * flyweightLow[j], springHigh[j], drivenHigh[j], drivenHigh[points + j]);
            BoxVerdict verdict = Narrow(best, worst, j, start, node, window, cuts, out double error);
            if (verdict != BoxVerdict.Open)
                return verdict;
            greatest = Math.Max(greatest, error);
            squares += error * error;
            if (cuts.Exceeded(Miss(), greatest))
                return BoxVerdict.MissesTooMuch;
        }

        node.LeastError = greatest;
        leastMiss = Miss();
        return BoxVerdict.Open;

        double Miss() =>
            Math.Sqrt(score.EngagementWeight * engagement * engagement + score.ShiftWeight * (squares / points));
    }

    /// <summary>No member's |e₀| is less.</summary>
    public double LeastEngagementError(in Node node) => Distance(
        score.EngagementError(node.LeastEngagement), score.EngagementError(node.GreatestEngagement));

    private static double Distance(double least, double greatest) => Math.Max(0, Math.Max(least, -greatest));

    // A balance is looked for only on the side of the target where it may be kept away: mostly one look tells.
    private BoxVerdict Narrow(
        in Corner best, in Corner worst, int j, int start, in Node node, Span<ushort> window, Cuts cuts, out double error)
    {
        error = 0;
        int first = Math.Max(window[j], start);
        int last = window[points + j];
        int target = targetCell[j];
        bool whole = cuts.Widest == double.PositiveInfinity;
        if (whole || first > target || (target <= grid.Count && Excluded(best, j, target, 0, out _)))
        {
            first = FirstCell(best, j, first, out double thrust);
            if (first > grid.Count)
                return BoxVerdict.DoesNotShift;
            error = ErrorAbove(best, j, first, thrust, node);
        }

        if (whole || (first <= target && (last < target || (target > 1 && Closes(worst, j, target - 1, node.GreatestEngagement)))))
        {
            last = LastCell(worst, j, whole ? last : Math.Min(last, target - 1), first, node.GreatestEngagement);
            if (first <= target)
                error = Math.Max(error, ErrorBelow(worst, j, last, node));
        }

        window[j] = (ushort)first;
        window[points + j] = (ushort)last;
        return slipEdge.Length > 0 && Slips(worst, j, first, Math.Min(last, grid.Count), cuts)
            ? whole ? BoxVerdict.Slips : BoxVerdict.MissesTooMuch
            : BoxVerdict.Open;
    }

    // Step 2: in growing and then in shrinking steps, each over cells that are excluded together.
    private int FirstCell(in Corner best, int j, int cell, out double thrust)
    {
        int span = 0;
        bool growing = true;
        while (true)
        {
            while (span > 0 && cell + (1 << span) - 1 > grid.Count)
                span--;
            if (cell > grid.Count)
            {
                thrust = 0;
                return cell;
            }

            if (Excluded(best, j, cell, span, out thrust))
            {
                cell += 1 << span;
                span = growing ? Math.Min(span + 1, SpeedGrid.Spans - 1) : span;
            }
            else if (span == 0)
            {
                return cell;
            }
            else
            {
                growing = false;
                span--;
            }
        }
    }

    private bool Excluded(in Corner best, int j, int cell, int span, out double thrust)
    {
        double least = LeastTorque(cell, span);
        double greatest = GreatestTorque(cell, span);
        thrust = thrustFactor * belts[j].Least(best.Clamp(least), least * perRadius[j], greatest * perRadius[j]);
        double available = best.Flyweights * grid.SpeedSquared[cell + (1 << span) - 1];
        return available - best.Spring < thrust - Slack * (available + thrust);
    }

    // Step 3: from the last known cell downwards, in growing and then in shrinking steps.
    private int LastCell(in Corner worst, int j, int cell, int first, double engagement)
    {
        if (cell > grid.Count)
        {
            if (!Closes(worst, j, grid.Count, engagement))
                return cell;
            cell = grid.Count;
        }

        int step = 1;
        while (cell - step >= first && Closes(worst, j, cell - step, engagement))
        {
            cell -= step;
            step *= 2;
        }

        for (step /= 2; step > 0; step /= 2)
        {
            if (cell - step >= first && Closes(worst, j, cell - step, engagement))
                cell -= step;
        }

        return cell;
    }

    private bool Closes(in Corner worst, int j, int cell, double engagement)
    {
        if (grid.End[cell] < engagement)
            return false;
        double torque = torqueFactor * grid.Torque[cell];
        double tension = torque * perRadius[j];
        double thrust = thrustFactor * belts[j].Greatest(worst.Clamp(torque), tension, tension);
        double available = worst.Flyweights * grid.SpeedSquared[cell];
        return available - worst.Spring >= thrust + Slack * (available + thrust);
    }

    // Steps 4 and 5, where every balance lies above the target.
    private double ErrorAbove(in Corner best, int j, int first, double thrust, in Node node)
    {
        double least = Math.Max(
            Math.Max(grid.End[first - 1], node.LeastEngagement), best.Speed(thrust * (1 - Slack)) - RpmSlack);
        return Math.Max(0, score.ShiftError(j, least));
    }

    // Likewise where every balance lies below it.
    private double ErrorBelow(in Corner worst, int j, int last, in Node node)
    {
        if (last > grid.Count)
            return 0;
        double from = LeastTorque(last);
        double to = GreatestTorque(last);
        double most = thrustFactor * belts[j].Greatest(worst.Clamp(to), from * perRadius[j], to * perRadius[j]);
        double speed = Math.Min(grid.End[last], worst.Speed(most * (1 + Slack)) + RpmSlack);
        double greatest = Math.Max(Math.Max(grid.End[last - 1], node.GreatestEngagement), speed);
        return Math.Max(0, -score.ShiftError(j, greatest));
    }

    // Step 6. A set that counts balances near the target: only there need the belt hold.
    private bool Slips(in Corner worst, int j, int first, int last, Cuts cuts)
    {
        if (!(worst.Standing >= 0))
            return false;
        double widest = cuts.Widest * errorPerMiss;
        if (widest < double.PositiveInfinity)
        {
            first = Math.Max(first, grid.CellOf(score.ShiftRpm(j, -widest)));
            last = Math.Min(last, grid.CellOf(score.ShiftRpm(j, widest)));
        }

        if (last - first > WidestSlipSpan || first > last)
            return false;
        double torque = double.PositiveInfinity;
        for (int cell = first; cell <= last; cell++)
            torque = Math.Min(torque, LeastTorque(cell));
        return torque * perRadius[j] > slipEdge[j] * worst.Clamp(torque) * (1 + Slack);
    }

    // In this air, from a cell on over 2^span cells.
    private double LeastTorque(int cell, int span = 0) => torqueFactor * grid.LeastTorque(span)[cell] * (1 - TorqueSlack);

    private double GreatestTorque(int cell, int span = 0) => torqueFactor * grid.GreatestTorque(span)[cell] * (1 + TorqueSlack);

    /// <summary>A corner of a box at one position.</summary>
    /// <param name="Flyweights">(1 − f) a_f W.</param>
    /// <param name="Spring">F₁.</param>
    private readonly record struct Corner(double Flyweights, double Spring, double Standing, double PerTorque)
    {
        public double Clamp(double torque) => Standing + PerTorque * torque;

        /// <summary>The rpm at which the flyweights carry the spring and a thrust; 0 where the spring alone pulls shut.</summary>
        public double Speed(double thrust) =>
            Rotation.ToRpm(Math.Sqrt(Math.Max(0, (thrust + Spring) / Flyweights)));
    }
}
