using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>The clamp lines of every driven choice, without keeping a line for each: spring, hole and helix suffice.</summary>
internal sealed class DrivenClamps
{
    private readonly DrivenPool pool;
    private readonly double[][] axial;
    private readonly LinearCurve[] twist;
    private readonly double?[] stiffeningCoils;
    private readonly double[,] preload;
    private readonly double[][] turn;
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

    /// <summary>Standing clamp (N) on the upshift at each position.</summary>
    public void Standing(int item, Span<double> clamp)
    {
        (int s, int h, int x) = pool.Code(item);
        LinearCurve torque = twist[s];
        for (int j = 0; j < clamp.Length; j++)
        {
            double at = Math.Clamp(preload[s, h] + turn[x][j], torque.From, torque.To);
            double stiffening = stiffeningCoils[s] is { } coils
                ? HelicalSpring.TwistStiffening((preload[s, h] + turn[x][j]) / (2 * Math.PI), coils)
                : 1;
            clamp[j] = stiffening * axial[s][j] + torque.At(at) / lever[x][j];
        }
    }

    /// <summary>Clamp per torque (1/m) on the upshift at each position.</summary>
    public ReadOnlySpan<double> PerTorque(int item) => perTorque[pool.Code(item).Helix];
}
