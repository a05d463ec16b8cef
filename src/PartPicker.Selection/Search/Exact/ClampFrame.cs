using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace PartPicker.Selection;

/// <summary>Directions at right angles in which rows of clamps are seen, one number for each position.</summary>
/// <remarks>
/// Springs and holes move the clamps of a helix in two ways mostly, whatever the helix: all together, and more at one end
/// than at the other. Seen along the principal axes of what varies within helices, the choices of a helix are wide in
/// these two directions and next to a point in the others: a wanted row of another shape is told at once. Clamps are
/// counted in units that weigh alike at every position. Any directions would do for the proof.
/// </remarks>
internal sealed class ClampFrame
{
    private const int SampledChoices = 200;

    // Farther off nothing is kept anyway (units).
    private const double MostTold = 50;

    private readonly double[][] directions;
    private readonly double[] center;
    private readonly double usualTorque;
    private readonly double[][] perNewton = [];

    /// <param name="members">The choices of each helix.</param>
    /// <param name="clamps">The clamps of every choice.</param>
    /// <param name="scale">How clamps are counted, and what is usual.</param>
    public ClampFrame(IReadOnlyList<int[]> members, DrivenClamps clamps, ClampScale scale)
    {
        double[] unit = scale.Unit;
        usualTorque = scale.Torque;
        directions = [.. Enumerable.Range(0, unit.Length).Select(_ => Array.Empty<double>())];
        center = new double[unit.Length];
        if (members.Count == 0)
            return;
        List<double[]>[] samples = [.. members.Select(m => Sample(m, clamps, scale))];
        Matrix<double> within = Matrix<double>.Build.Dense(unit.Length, unit.Length);
        foreach (List<double[]> rows in samples)
        {
            Matrix<double> sample = Matrix<double>.Build.DenseOfRowArrays(rows);
            Vector<double> mean = sample.ColumnSums() / rows.Count;
            Matrix<double> apart = Matrix<double>.Build.Dense(rows.Count, unit.Length, (r, c) => sample[r, c] - mean[c]);
            within += apart.TransposeThisAndMultiply(apart) / rows.Count;
        }

        Evd<double> spread = within.Evd(Symmetricity.Symmetric);
        double[][] axes = [.. Enumerable.Range(0, unit.Length).Select(i => spread.EigenVectors.Column(i).ToArray())];

        // MathNet gives the widest last.
        (double[] widest, double[] second) = (axes[^1], axes[^2]);
        directions = [.. axes.OrderByDescending(axis => Told(axis, samples, scale.Wanted))];
        Widest = Array.IndexOf(directions, widest);
        Second = Array.IndexOf(directions, second);
        for (int i = 0; i < directions.Length; i++)
            center[i] = samples.Average(rows => Dot(directions[i], rows[0]));
        perNewton = [.. directions.Select(axis => axis.Zip(unit, (share, of) => share / of).ToArray())];
    }

    /// <summary>Directions, as many as positions; the one that tells most comes first.</summary>
    public int Count => directions.Length;

    /// <summary>The direction in which choices of a helix differ most.</summary>
    public int Widest { get; }

    /// <summary>And the next.</summary>
    public int Second { get; }

    /// <summary>A row of clamps (N) along a direction, from the middle of everything.</summary>
    public double Seen(int direction, ReadOnlySpan<double> clamps) => SeenMoved(direction, clamps) - center[direction];

    /// <summary>By how much a row of clamps (N) that is added to another moves it along a direction.</summary>
    public double SeenMoved(int direction, ReadOnlySpan<double> clamps)
    {
        double[] row = perNewton[direction];
        double sum = 0;
        for (int j = 0; j < clamps.Length; j++)
            sum += row[j] * clamps[j];
        return sum;
    }

    /// <summary>Where a choice lies along the first direction under a usual torque.</summary>
    public double UsualPlace(ReadOnlySpan<double> standing, ReadOnlySpan<double> perTorque) =>
        Seen(0, standing) + usualTorque * SeenMoved(0, perTorque);

    /// <summary>Bytes that it takes at most while it is made: the sampled rows.</summary>
    public static long BytesToBuild(long choices, long helices, int points) =>
        Math.Min(choices, 2 * SampledChoices * helices) * (8L * points + 40);

    // Some choices of a helix under a usual torque, in units.
    private static List<double[]> Sample(int[] members, DrivenClamps clamps, ClampScale scale)
    {
        int step = Math.Max(1, members.Length / SampledChoices);
        var rows = new List<double[]>();
        for (int i = 0; i < members.Length; i += step)
        {
            DrivenClamps.Choice choice = clamps.Of(members[i]);
            rows.Add([.. scale.Unit.Select((of, j) => (choice.Standing(j) + scale.Torque * choice.PerTorque(j)) / of)]);
        }

        return rows;
    }

    // By how much wanted rows lie beyond the choices: which axis is asked first proves nothing, but saves time.
    private static double Told(double[] axis, List<double[]>[] samples, IReadOnlyList<double[]> wanted)
    {
        double told = 0;
        double[] seen = [.. wanted.Select(row => Dot(axis, row))];
        foreach (List<double[]> rows in samples)
        {
            double low = rows.Min(row => Dot(axis, row));
            double high = rows.Max(row => Dot(axis, row));
            foreach (double at in seen)
            {
                double outside = Math.Min(MostTold, Math.Max(0, Math.Max(low - at, at - high)));
                told += outside * outside;
            }
        }

        return told;
    }

    private static double Dot(double[] x, double[] y)
    {
        double sum = 0;
        for (int j = 0; j < x.Length; j++)
            sum += x[j] * y[j];
        return sum;
    }
}

/// <summary>How clamps are counted where distances between them matter, and what is usual.</summary>
/// <param name="Unit">What counts as one (N) at each position.</param>
/// <param name="Torque">A usual torque (N·m).</param>
/// <param name="Wanted">Rows, in units, that some drive pairs want at that torque.</param>
internal sealed record ClampScale(double[] Unit, double Torque, IReadOnlyList<double[]> Wanted)
{
    /// <summary>Positions.</summary>
    public int Points => Unit.Length;
}
