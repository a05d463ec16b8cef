using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>At one position and its target speed: which clamp the belt needs for a thrust, and how steeply clamps part beside it.</summary>
/// <remarks>
/// 1. <b>Wanted clamp.</b> At the target the tension is known, and the clamp m(T) that goes with a thrust T is convex, since
///    the belt's thrust is concave in the clamp: chords lie above it, the extension of a neighbouring chord below. 2.
///    <b>Steepness.</b> A choice with clamp c(n) balances at n near the target t where c(n) = m(n); so |c − m| at t is at
///    most |n − t| M, with M ≥ |m′ − c′| at all speeds within reach. The greatest m′ is convex in the flyweights' share of
///    the thrust, the least concave: between the least and the greatest share of all flyweights their chords lie outside.
///    c′ hangs on the helix alone. 3. Cells of thrust are filled when a pair first falls into them.
/// </remarks>
internal sealed class WantedClamp
{
    private const int Cells = 128;
    private const double Slack = 1e-9;

    private readonly ShiftModel model;
    private readonly BeltBounds belt;
    private readonly int position;
    private readonly double target;
    private readonly double revLimit;
    private readonly double tension;
    private readonly (double Least, double Greatest) flyweights;
    private readonly double deadRatio;
    private readonly double from;
    private readonly double width;
    private readonly double perWidth;
    private readonly double[] low;
    private readonly double[] high;
    private readonly Cell[] cells;
    private Reach reach;

    /// <param name="model">Its air and its anchor count.</param>
    /// <param name="belt">The belt at this position.</param>
    /// <param name="position">Which one.</param>
    /// <param name="target">The wanted speed (rpm).</param>
    /// <param name="revLimit">Rpm.</param>
    /// <param name="slipEdge">The greatest D/F_s that the request allows; infinite where it asks for no margin.</param>
    /// <param name="flyweights">(1 − f) a_f W/a_b of all flyweights, least and greatest.</param>
    /// <param name="greatestThrust">The greatest thrust of any pair at the target (N).</param>
    /// <param name="table">An empty one; it is filled.</param>
    public WantedClamp(
        ShiftModel model, BeltBounds belt, int position, double target, double revLimit, double slipEdge,
        (double Least, double Greatest) flyweights, double greatestThrust, Table table)
    {
        this.model = model;
        this.belt = belt;
        this.position = position;
        this.target = target;
        this.revLimit = revLimit;
        this.flyweights = flyweights;
        (low, high, cells) = (table.Low, table.High, table.Cells);
        Known = target > 0 && target <= revLimit && belt.Inverts;
        if (!Known)
            return;
        Torque = model.TorqueAt(target);
        tension = Torque / model.Positions[position].DriveRadius;
        deadRatio = belt.LeastRatio(slipEdge) * (1 - Slack);
        from = belt.Beyond * tension * (1 + Slack);
        width = (greatestThrust - from) / Cells;
        Known = tension > 0 && width > 0;
        perWidth = 1 / width;
    }

    /// <summary>False where nothing can be told at any reach.</summary>
    public bool Known { get; }

    /// <summary>Q at the target (N·m); 0 where the engine has no such speed.</summary>
    public double Torque { get; }

    /// <summary>Where the reach begins (rpm).</summary>
    public double From { get; private set; }

    /// <summary>The least dQ/dn within reach (N·m per rpm).</summary>
    public double TorqueFall { get; private set; }

    /// <summary>And the greatest.</summary>
    public double TorqueRise { get; private set; }

    /// <summary>Makes ready for balances within so many rpm of the target; false where they tell nothing.</summary>
    public bool TryReach(double rpm)
    {
        double least = Math.Max(0, target - rpm);
        double greatest = Math.Min(revLimit, target + rpm);
        if (!Known)
            return false;
        (double leastTorque, double greatestTorque) = model.TorqueRange(least, greatest);
        if (!(leastTorque > 0))
            return false;
        double perRadius = 1 / model.Positions[position].DriveRadius;
        double perRpm = Rotation.ToRadiansPerSecond(1) * Rotation.ToRadiansPerSecond(1);
        (double fall, double rise) = model.TorqueSlopeRange(least, greatest);
        (TorqueFall, TorqueRise) = (fall, rise);
        From = least;
        reach = new Reach(
            perRpm * least * least, perRpm * target * target, perRpm * greatest * greatest, leastTorque, greatestTorque,
            leastTorque * perRadius, greatestTorque * perRadius, fall * perRadius, rise * perRadius,
            2 * perRpm * least, 2 * perRpm * greatest);
        for (int i = 0; i < Cells; i++)
            cells[i].Fall = double.NaN;
        return true;
    }

    /// <summary>True where no balance lies within reach, however the belt is clamped.</summary>
    /// <param name="flyweights">(1 − f) a_f W/a_b.</param>
    /// <param name="spring">F₁/a_b (N).</param>
    public bool IsDead(double flyweights, double spring) =>
        flyweights * reach.ToSquared - spring < deadRatio * reach.LeastTension;

    /// <summary>Between which thrusts (N) pairs lie at the speeds within reach.</summary>
    public (double Least, double Greatest) Thrust(
        (double Least, double Greatest) share, (double Least, double Greatest) spring) => (
        share.Least * reach.FromSquared - spring.Greatest - Slack * spring.Greatest,
        share.Greatest * reach.ToSquared - spring.Least + Slack * spring.Greatest);

    /// <summary>Between which thrusts (N) the belt asks at the speeds within reach; clamps too low for the request count as slipping.</summary>
    public (double Least, double Greatest) BeltThrust(
        (double Least, double Greatest) standing, (double Least, double Greatest) line) => (
        Math.Max(
            belt.Least(standing.Least + line.Least * reach.LeastTorque, reach.LeastTension, reach.GreatestTension),
            deadRatio * reach.LeastTension),
        belt.Greatest(standing.Greatest + line.Greatest * reach.GreatestTorque, reach.LeastTension, reach.GreatestTension));

    /// <summary>What a pair wants here; false where it cannot be told.</summary>
    /// <param name="flyweights">(1 − f) a_f W/a_b.</param>
    /// <param name="spring">F₁/a_b (N).</param>
    /// <param name="wanted">What it wants.</param>
    public bool TryLook(double flyweights, double spring, out Wanted wanted)
    {
        double thrust = flyweights * reach.AtSquared - spring;
        double at = (thrust - from) * perWidth;
        if (!(at >= 0))
        {
            wanted = default;
            return false;
        }

        int i = Math.Min((int)at, Cells - 1);
        ref Cell cell = ref cells[i];
        if (double.IsNaN(cell.Fall))
            Fill(i);
        double clamp = cell.Clamp + (at - i) * cell.Rise;
        wanted = new Wanted(
            clamp, cell.Loose + Slack * clamp, cell.Fall + flyweights * cell.FallPerFlyweights,
            cell.Climb + flyweights * cell.ClimbPerFlyweights);
        return cell.Told;
    }

    private void Fill(int i)
    {
        ref Cell cell = ref cells[i];
        if (cell.Clamp == 0)
            FillClamp(i);
        cell.Told = false;
        cell.Fall = 0;
        double leastThrust = from + i * width - flyweights.Greatest * (reach.AtSquared - reach.FromSquared);
        double mostThrust = from + (i + 1) * width + flyweights.Greatest * (reach.ToSquared - reach.AtSquared);
        if (!(leastThrust > belt.Beyond * reach.GreatestTension * (1 + Slack)))
            return;
        double leastLoad = belt.LoadOf(mostThrust / reach.LeastTension).Low;
        double mostLoad = belt.LoadOf(leastThrust / reach.GreatestTension).High;
        if (!belt.TrySlopes(leastLoad, mostLoad, out double slopeLow, out double slopeHigh))
            return;
        double perForceLow = belt.Chord(leastLoad) - leastLoad * slopeHigh;
        double perForceHigh = belt.Ceiling(mostLoad) - mostLoad * slopeLow;
        if (!(perForceLow > 0))
            return;
        (double torqueFall, double torqueRise) = Products(slopeLow, slopeHigh, reach.TensionFall, reach.TensionRise);
        (cell.Fall, cell.FallPerFlyweights) = Chord(
            Fall(flyweights.Least), Fall(flyweights.Greatest));
        (cell.Climb, cell.ClimbPerFlyweights) = Chord(
            Climb(flyweights.Least), Climb(flyweights.Greatest));
        cell.Told = true;

        double Fall(double share)
        {
            double least = share * reach.LeastSpeedSlope - torqueRise;
            return least / (least < 0 ? perForceLow : perForceHigh);
        }

        double Climb(double share)
        {
            double most = share * reach.GreatestSpeedSlope - torqueFall;
            return most / (most < 0 ? perForceHigh : perForceLow);
        }
    }

    // A slope for the least and the greatest share of all flyweights.
    private (double Base, double PerShare) Chord(double light, double heavy)
    {
        double perShare = flyweights.Greatest > flyweights.Least ? (heavy - light) / (flyweights.Greatest - flyweights.Least) : 0;
        return (light - perShare * flyweights.Least, perShare);
    }

    private void FillClamp(int i)
    {
        ref Cell cell = ref cells[i];
        for (int knot = Math.Max(0, i - 1); knot <= Math.Min(i + 2, Cells + 1); knot++)
            FillKnot(knot);
        double rise = high[i + 1] - high[i];
        double before = i == 0 ? double.PositiveInfinity : Math.Max(0, rise - (low[i] - high[i - 1]));
        double after = i + 2 > Cells + 1 ? double.PositiveInfinity : Math.Max(0, high[i + 2] - low[i + 1] - rise);
        double noiseBefore = high[i] - low[i];
        double noiseAfter = high[i + 1] - low[i + 1];

        // The chord may lie above the curve by no more than where the extensions of both neighbours meet.
        double gap = double.IsPositiveInfinity(before) ? noiseAfter + after
            : double.IsPositiveInfinity(after) ? noiseBefore + before
            : before + after == 0 ? Math.Max(noiseBefore, noiseAfter)
            : (after * noiseBefore + before * noiseAfter + before * after) / (before + after);
        cell.Clamp = high[i] - gap / 2;
        cell.Rise = rise;
        cell.Loose = gap / 2;
    }

    private void FillKnot(int i)
    {
        if (!double.IsNaN(low[i]))
            return;
        (double least, double most) = belt.LoadOf((from + i * width) / tension);
        low[i] = tension / most * (1 - Slack);
        high[i] = tension / least * (1 + Slack);
    }

    private static (double Least, double Greatest) Products(double a, double b, double c, double d)
    {
        double w = a * c;
        double x = a * d;
        double y = b * c;
        double z = b * d;
        return (Math.Min(Math.Min(w, x), Math.Min(y, z)), Math.Max(Math.Max(w, x), Math.Max(y, z)));
    }

    /// <summary>Room for the cells of thrust and the clamps at their ends.</summary>
    internal sealed class Table
    {
        public double[] Low { get; } = new double[WantedClamp.Cells + 2];

        public double[] High { get; } = new double[WantedClamp.Cells + 2];

        public Cell[] Cells { get; } = new Cell[WantedClamp.Cells];

        /// <summary>Forgets everything: what is not known yet has no number.</summary>
        public void Clear()
        {
            Array.Fill(Low, double.NaN);
            Array.Clear(Cells);
        }
    }

    internal struct Cell
    {
        public double Clamp;
        public double Rise;
        public double Loose;
        public double Fall;
        public double FallPerFlyweights;
        public double Climb;
        public double ClimbPerFlyweights;
        public bool Told;
    }

    private readonly record struct Reach(
        double FromSquared, double AtSquared, double ToSquared, double LeastTorque, double GreatestTorque, double LeastTension, double GreatestTension,
        double TensionFall, double TensionRise, double LeastSpeedSlope,
        double GreatestSpeedSlope);
}

/// <summary>What a pair wants at one position.</summary>
/// <param name="Clamp">The wanted clamp (N).</param>
/// <param name="Loose">How far from it the true one may lie (N).</param>
/// <param name="Fall">The least m′ within reach (N per rpm).</param>
/// <param name="Climb">And the greatest.</param>
internal readonly record struct Wanted(double Clamp, double Loose, double Fall, double Climb);
