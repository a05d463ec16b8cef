using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>The clamp lines of every driven choice, without keeping a line for each: spring, hole and helix suffice.</summary>
/// <remarks>What is kept is put together as <see cref="ShiftModel.Driven"/> does it: the lines are the model's, to the last bit.</remarks>
internal sealed class DrivenClamps
{
    private readonly DrivenPool pool;
    private readonly double[][] axial;
    private readonly LinearCurve[] twist;
    private readonly double?[] stiffeningCoils;
    private readonly double[,] preload;
    private readonly double[][] turn;
    private readonly double[] wholeTurn;
    private readonly double[][] lever;
    private readonly double[][] perTorque;

    /// <param name="model">Any model of the machine at the positions that are wanted.</param>
    public DrivenClamps(DrivenPool pool, MachineModel machine, ShiftModel model)
    {
        this.pool = pool;
        Drivetrain drivetrain = machine.Drivetrain;
        axial = new double[pool.Springs.Count][];
        twist = new LinearCurve[pool.Springs.Count];
        stiffeningCoils = new double?[pool.Springs.Count];
        preload = new double[pool.Springs.Count, pool.Holes.Count];
        turn = new double[pool.Helices.Count][];
        wholeTurn = new double[pool.Helices.Count];
        lever = new double[pool.Helices.Count][];
        perTorque = new double[pool.Helices.Count][];
        for (int s = 0; s < axial.Length; s++)
        {
            LinearCurve force = Predictor.DrivenForce(machine, pool.Springs[s]);
            axial[s] = [.. model.Positions.Select(p => force.At(drivetrain.DrivenSpringLength - p.OpeningTravel))];
            for (int h = 0; h < pool.Holes.Count; h++)
                preload[s, h] = new DrivenChoice(pool.Springs[s], pool.Holes[h], pool.Helices[0]).PreloadTwist;
            var choice = new DrivenChoice(pool.Springs[s], pool.Holes[0], pool.Helices[0]);
            twist[s] = SpringModels.Twist(choice, machine)!;
            stiffeningCoils[s] = Predictor.StiffeningCoils(machine, choice);
        }

        for (int x = 0; x < turn.Length; x++)
        {
            HelixCam cam = HelixRules.Cam(pool.Helices[x], machine);
            turn[x] = [.. model.Positions.Select(p => cam.Turn(p.OpeningTravel))];
            wholeTurn[x] = cam.Turn(machine.FullShift.OpeningTravel);
            lever[x] =
            [
                .. model.Positions.Select(p =>
                    drivetrain.CamRadius * Math.Tan(cam.Angle(p.OpeningTravel) - drivetrain.CamFrictionAngle)),
            ];
            perTorque[x] =
            [
                .. model.Positions.Select((p, j) =>
                    drivetrain.CamTorqueShare * drivetrain.BeltEfficiency * p.Ratio / lever[x][j]),
            ];
        }
    }

    /// <summary>One choice.</summary>
    public Choice Of(int item) => OfJoint(pool.Joint(item));

    /// <summary>The same, by <see cref="DrivenPool.Joint"/>.</summary>
    public Choice OfJoint(int joint)
    {
        (int spring, int hole, int helix) = pool.Split(joint);
        return new Choice(this, spring, hole, helix);
    }

    /// <inheritdoc cref="DrivenPool.Joint"/>
    public int Joint(int item) => pool.Joint(item);

    /// <summary>Standing clamp (N) on the upshift at each position.</summary>
    public void Standing(int item, Span<double> clamp)
    {
        Choice choice = Of(item);
        for (int j = 0; j < clamp.Length; j++)
            clamp[j] = choice.Standing(j);
    }

    /// <summary>Reads standing clamps (N), then clamps per torque (1/m), on the upshift, from one of them on.</summary>
    public void Read(int item, int from, Span<double> to)
    {
        int points = perTorque[0].Length;
        int standing = Math.Clamp(points - from, 0, to.Length);
        if (standing > 0)
        {
            Choice choice = Of(item);
            for (int j = 0; j < standing; j++)
                to[j] = choice.Standing(from + j);
        }

        if (standing < to.Length)
            PerTorque(item).Slice(from + standing - points, to.Length - standing).CopyTo(to[standing..]);
    }

    /// <summary>Clamp per torque (1/m) on the upshift at each position.</summary>
    public ReadOnlySpan<double> PerTorque(int item) => perTorque[pool.Code(item).Helix];

    /// <summary>The mean over all choices at each position.</summary>
    public double[] MeanPerTorque()
    {
        double[] mean = new double[perTorque[0].Length];
        for (int item = 0; item < pool.Count; item++)
        {
            double[] own = perTorque[pool.Code(item).Helix];
            for (int j = 0; j < mean.Length; j++)
                mean[j] += own[j] / pool.Count;
        }

        return mean;
    }

    /// <summary>The same of a helix by its place among the helices.</summary>
    public ReadOnlySpan<double> PerTorqueOf(int helix) => perTorque[helix];

    /// <summary>The clamp lines on the upshift at each position.</summary>
    public void Lines(int item, Span<ClampLine> lines)
    {
        Choice choice = Of(item);
        for (int j = 0; j < lines.Length; j++)
            lines[j] = new ClampLine(choice.Standing(j), choice.PerTorque(j));
    }

    /// <summary>A choice by the places of its spring, its hole and its helix.</summary>
    internal readonly struct Choice(DrivenClamps clamps, int spring, int hole, int helix)
    {
        private readonly double preload = clamps.preload[spring, hole];
        private readonly LinearCurve torque = Predictor.Reaching(
            clamps.twist[spring], clamps.preload[spring, hole], clamps.wholeTurn[helix]);

        /// <summary>Standing clamp (N) on the upshift at a position.</summary>
        public double Standing(int j)
        {
            double twist = preload + clamps.turn[helix][j];
            double stiffening = clamps.stiffeningCoils[spring] is { } coils
                ? HelicalSpring.TwistStiffening(twist / (2 * Math.PI), coils)
                : 1;
            return stiffening * clamps.axial[spring][j] + torque.At(twist) / clamps.lever[helix][j];
        }

        /// <summary>Clamp per torque (1/m) on the upshift at a position.</summary>
        public double PerTorque(int j) => clamps.perTorque[helix][j];
    }
}
