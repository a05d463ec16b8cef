using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>What a look at a pair gave.</summary>
internal enum Sight
{
    /// <summary>Clamps are wanted: choices can be told apart.</summary>
    Clear,

    /// <summary>At some position nothing can be told.</summary>
    Unclear,

    /// <summary>No choice makes a set that counts.</summary>
    Nothing,
}

/// <summary>What a drive pair asks of the driven side, for misses within reach.</summary>
/// <remarks>
/// At each position <see cref="WantedClamp"/> tells the clamp that the pair wants and what a newton away from it costs at
/// least, so that a choice errs by its distance from the wanted clamp over the steepest slope. A greater reach allows more
/// speeds: slopes only grow, so what was found within a lesser one is found again.
/// </remarks>
internal sealed class PairSight
{
    private const double Slack = 1e-9;

    // Of errors, in tolerances: far more than a balance is narrowed to.
    private const double ErrorSlack = 1e-7;

    private readonly Score score;
    private readonly SearchIndex index;
    private readonly WantedClamp[] positions;
    private readonly int points;
    private readonly double rpmPerError;
    private readonly double errorPerMiss;
    private readonly double ofFlyweights;
    private readonly double ofSpring;
    private readonly double[] targetTorque;
    private readonly (double Least, double Greatest)[] perTorque;
    private readonly Wanted[] wanted;
    private readonly double[] torqueFall;
    private readonly double[] torqueRise;
    private readonly double[] perNewtonUnit;

    // Both ends and the middle tell most: they come first.
    private readonly int[] visit;
    private readonly float[][] at;

    // By helix of the pool, by direction: how far the torques at the target move its clamps.
    private readonly double[] moved;
    private readonly double[] clamps;
    private readonly float[] seen;
    private readonly double[] perNewton;
    private readonly double[] places;

    public PairSight(Predictor predictor, Score score, SearchIndex index, BeltBounds[] belts, double[] slipEdge, double flyweightShare,
        Workbench bench)
    {
        ShiftModel model = predictor.Model;
        this.score = score;
        this.index = index;
        points = belts.Length;
        rpmPerError = score.ShiftRpm(0, 1) - score.ShiftRpm(0, 0);
        errorPerMiss = Math.Sqrt(points / score.ShiftWeight);
        ofSpring = 1 / model.Anchor.Thrust;
        ofFlyweights = flyweightShare * ofSpring;
        double revLimit = predictor.Machine.Drivetrain.RevLimitRpm;
        positions = new WantedClamp[points];
        perTorque = new (double, double)[points];
        wanted = new Wanted[points];
        torqueFall = new double[points];
        torqueRise = new double[points];
        perNewtonUnit = [.. index.Scale.Unit.Select(unit => 1 / unit)];
        visit = [.. Enumerable.Range(0, points).OrderBy(j => j == 0 || j == points - 1 ? 0 : j == points / 2 ? 1 : 2)];
        clamps = new double[points];
        places = new double[points];
        seen = new float[points];
        perNewton = new double[points];
        targetTorque = new double[points];
        for (int j = 0; j < points; j++)
        {
            double target = score.ShiftTargets[j];
            (double Least, double Greatest) flyweights = (
                ofFlyweights * index.Flyweights.Low(0)[j], ofFlyweights * index.Flyweights.High(0)[j]);
            double speed = Rotation.ToRadiansPerSecond(target);
            positions[j] = new WantedClamp(
                model, belts[j], j, target, revLimit, slipEdge.Length > 0 ? slipEdge[j] : double.PositiveInfinity, flyweights,
                flyweights.Greatest * speed * speed - ofSpring * index.Springs.Low(0)[j], bench.TableOf(j));
            perTorque[j] = (index.Driven.Low(0)[points + j], index.Driven.High(0)[points + j]);
            targetTorque[j] = positions[j].Torque;
        }

        ClampFrame frame = index.Levels.Frame;
        moved = bench.Moved(index.Pools.Driven.Helices.Count * points);
        Span<double> added = stackalloc double[points];
        foreach (int helix in index.Levels.All.Helices)
        {
            ReadOnlySpan<double> line = index.Clamps.PerTorqueOf(helix);
            for (int j = 0; j < points; j++)
                added[j] = line[j] * targetTorque[j];
            for (int i = 0; i < points; i++)
                moved[helix * points + i] = frame.SeenMoved(i, added);
        }

        at = new float[DrivenLevels.Count][];
        for (int changes = 0; changes < at.Length; changes++)
        {
            DrivenLevels.Level level = index.Levels[changes];
            at[changes] = bench.At(changes, level.Boxes.Places);
            level.Boxes.At(moved, level.Helices, at[changes]);
        }
    }

    /// <summary>Where the boxes of a level's helices lie with the torques at the target.</summary>
    public float[] At(int level) => at[level];

    /// <summary>What the pair wants at a position.</summary>
    public Wanted WantedAt(int j) => wanted[j];

    /// <summary>The wanted clamps along each direction.</summary>
    public ReadOnlySpan<float> Seen => seen;

    /// <summary>Where among the standing clamps of a helix the wanted ones lie, along the widest direction and across it.</summary>
    /// <param name="helix">Its place in the pool.</param>
    public (double Along, double Across) PlaceOf(int helix)
    {
        ClampFrame frame = index.Levels.Frame;
        return (places[frame.Widest] - moved[helix * points + frame.Widest], places[frame.Second] - moved[helix * points + frame.Second]);
    }

    /// <summary>How far off the wanted clamps may be, in units.</summary>
    public double Apart { get; private set; }

    /// <summary>Error, in tolerances, for each unit away from them at least.</summary>
    public double PerUnit { get; private set; }

    /// <summary>Makes ready for misses up to one; false where nothing can be told so far off.</summary>
    /// <param name="insideOnly">True where no set counts that is not within tolerance.</param>
    public bool TryReach(double miss, bool insideOnly)
    {
        double rpm = insideOnly ? Math.Min(RpmOf(miss), (1 + ErrorSlack) * rpmPerError) : RpmOf(miss);
        bool told = true;
        for (int j = 0; j < points; j++)
        {
            told = told && positions[j].TryReach(rpm);
            (torqueFall[j], torqueRise[j]) = (positions[j].TorqueFall, positions[j].TorqueRise);
        }

        return told;
    }

    // How far from its target a single balance may lie in a set of this miss.
    private double RpmOf(double miss) => (miss * errorPerMiss + ErrorSlack) * rpmPerError;

    /// <summary>The miss of a set whose only error is so many rpm at one position of the curve.</summary>
    public double MissOf(double rpm) => rpm / rpmPerError / errorPerMiss;

    /// <summary>Between which thrusts (N) the pairs of a box lie at position j, at the speeds within reach.</summary>
    public (double Least, double Greatest) Thrust(
        int j, (double Least, double Greatest) flyweights, (double Least, double Greatest) spring) =>
        positions[j].Thrust(
            (ofFlyweights * flyweights.Least, ofFlyweights * flyweights.Greatest),
            (ofSpring * spring.Least, ofSpring * spring.Greatest));

    /// <summary>Between which thrusts (N) the belt asks at position j, at the speeds within reach, for clamps between two lines.</summary>
    public (double Least, double Greatest) BeltThrust(
        int j, (double Least, double Greatest) standing, (double Least, double Greatest) perTorque) =>
        positions[j].BeltThrust(standing, perTorque);

    /// <summary>Where the reach begins at a position (rpm).</summary>
    public double From(int j) => positions[j].From;

    /// <summary>Looks at a pair by its places in the pools; what was seen is valid until the next look.</summary>
    /// <param name="engagement">It engages no later (rpm): from there on it may balance without its thrust being the belt's.</param>
    public Sight Look(int spring, int flyweight, double engagement)
    {
        ReadOnlySpan<double> forces = index.SpringForces.AsSpan(spring * points, points);
        ReadOnlySpan<double> thrusts = index.FlyweightThrusts.AsSpan(flyweight * points, points);
        bool told = true;
        double mostUnits = 0;
        double apart = 0;
        for (int j = 0; j < forces.Length; j++)
        {
            double force = ofSpring * forces[j];
            double thrust = ofFlyweights * thrusts[j];
            WantedClamp position = positions[j];
            if (position.IsDead(thrust, force))
                return Sight.Nothing;
            if (engagement >= position.From || !position.TryLook(thrust, force, out wanted[j]))
            {
                told = false;
                continue;
            }

            double inUnits = perNewtonUnit[j];
            clamps[j] = wanted[j].Clamp;
            mostUnits = Math.Max(
                mostUnits, Math.Max(Steepest(j, perTorque[j].Least), Steepest(j, perTorque[j].Greatest)) * inUnits);
            double off = wanted[j].Loose * inUnits;
            apart += off * off;
        }

        PerUnit = (1 - Slack) / (mostUnits * rpmPerError);
        Apart = Math.Sqrt(apart) * (1 + Slack);
        if (!told)
            return Sight.Unclear;
        ClampFrame frame = index.Levels.Frame;
        for (int i = 0; i < points; i++)
        {
            places[i] = frame.Seen(i, clamps);
            seen[i] = (float)places[i];
        }

        return Sight.Clear;
    }

    // M for a helix with so much clamp per torque; over several it is the greatest at one end of them.
    private double Steepest(int j, double perTorque)
    {
        ref readonly Wanted at = ref wanted[j];
        return Math.Max(at.Climb - perTorque * torqueFall[j], perTorque * torqueRise[j] - at.Fall);
    }

    /// <summary>Error, in tolerances, for each unit away from the wanted clamps at least, for the choices of one helix.</summary>
    /// <param name="line">Its clamp per torque at each position.</param>
    public double PerUnitOf(ReadOnlySpan<double> line)
    {
        double mostUnits = 0;
        for (int j = 0; j < line.Length; j++)
            mostUnits = Math.Max(mostUnits, Steepest(j, line[j]) * perNewtonUnit[j]);
        return (1 - Slack) / (mostUnits * rpmPerError);
    }

    /// <summary>Makes ready for the choices of a helix.</summary>
    /// <param name="line">Its clamp per torque at each position.</param>
    public void MakeReady(ReadOnlySpan<double> line)
    {
        for (int j = 0; j < line.Length; j++)
            perNewton[j] = (1 - Slack) / (Steepest(j, line[j]) * rpmPerError);
    }

    /// <summary>The greatest Σe_j² that a miss allows beside an error of engagement; below 0: none.</summary>
    public double Limit(double miss, double engagementError)
    {
        double left = miss * miss - score.EngagementWeight * engagementError * engagementError;
        if (!(left >= 0))
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

    /// <summary>Σe_j² that a choice of the helix that was made ready does not fall below; more than the limit where it is exceeded.</summary>
    public double SquaresOf(in DrivenClamps.Choice choice, double limit, out double greatest)
    {
        double squares = 0;
        greatest = 0;
        foreach (int j in visit)
        {
            if (squares > limit)
                return squares;
            double clamp = choice.Standing(j) + choice.PerTorque(j) * targetTorque[j];
            double apart = Math.Abs(clamp - wanted[j].Clamp) - wanted[j].Loose - Slack * clamp;
            double error = Math.Max(0, apart) * perNewton[j];
            squares += error * error;
            greatest = Math.Max(greatest, error);
        }

        return squares;
    }
}
