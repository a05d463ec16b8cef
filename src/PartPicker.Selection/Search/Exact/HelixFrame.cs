using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace PartPicker.Selection;

/// <summary>The standing clamps of all choices with one helix, seen along the directions in which they differ.</summary>
/// <remarks>
/// Springs and holes move the clamps of a helix in two ways, or up to four where it is curved: all together, and more at
/// one end than at the other. Along the principal axes of the clamps the other widths are next to nothing, so that a
/// wanted curve of another shape is told at once, whatever spring and hole may do. Clamps are counted in shares of a
/// usual one, so that the positions weigh alike.
/// </remarks>
internal sealed class HelixFrame
{
    private const int SampledPoints = 1024;

    // More than the rounding of a projection.
    private const double Rounding = 1e-12;

    private readonly int points;
    private readonly double[] axes;
    private readonly double[] low;
    private readonly double[] high;
    private readonly double[] usual;

    /// <param name="items">The choices.</param>
    /// <param name="clamps">Standing clamps of every choice, one after the other.</param>
    /// <param name="stride">Numbers that a choice has among them.</param>
    /// <param name="usual">A usual clamp (N) at each position.</param>
    public HelixFrame(ReadOnlySpan<int> items, double[] clamps, int stride, double[] usual)
    {
        this.usual = usual;
        points = usual.Length;
        low = new double[points];
        high = new double[points];
        Array.Fill(low, double.PositiveInfinity);
        Array.Fill(high, double.NegativeInfinity);
        axes = PrincipalAxes(items, clamps, stride);
        Span<double> row = stackalloc double[points];
        Span<double> seen = stackalloc double[points];
        foreach (int item in items)
        {
            for (int j = 0; j < points; j++)
                row[j] = clamps[item * stride + j] / usual[j];
            Project(row, seen);
            for (int i = 0; i < points; i++)
                (low[i], high[i]) = (Math.Min(low[i], seen[i] - Rounding), Math.Max(high[i], seen[i] + Rounding));
        }
    }

    /// <summary>False where every member is further from a wanted row than a limit, of squares summed.</summary>
    /// <param name="wanted">Standing clamps that are wanted, as shares of the usual ones.</param>
    /// <param name="apart">How far off each may be in shares, summed: it loosens every distance.</param>
    public bool MayHold(ReadOnlySpan<double> wanted, double apart, double limit)
    {
        double squares = 0;
        for (int i = points - 1; i >= 0; i--)
        {
            double seen = 0;
            ReadOnlySpan<double> axis = axes.AsSpan(i * points, points);
            for (int j = 0; j < wanted.Length; j++)
                seen += axis[j] * wanted[j];
            double distance = Math.Max(0, Math.Max(low[i] - seen, seen - high[i]) - apart);
            squares += distance * distance;
            if (squares > limit)
                return false;
        }

        return true;
    }

    private void Project(ReadOnlySpan<double> row, Span<double> seen)
    {
        for (int i = 0; i < seen.Length; i++)
        {
            double sum = 0;
            for (int j = 0; j < row.Length; j++)
                sum += axes[i * points + j] * row[j];
            seen[i] = sum;
        }
    }

    // Any directions would do for the proof; these make the widths small.
    private double[] PrincipalAxes(ReadOnlySpan<int> items, double[] clamps, int stride)
    {
        int step = Math.Max(1, items.Length / SampledPoints);
        var rows = new List<double[]>();
        for (int i = 0; i < items.Length; i += step)
            rows.Add([.. Enumerable.Range(items[i] * stride, points).Select((at, j) => clamps[at] / usual[j])]);
        Matrix<double> sample = Matrix<double>.Build.DenseOfRowArrays(rows);
        Vector<double> mean = sample.ColumnSums() / rows.Count;
        Matrix<double> apart = Matrix<double>.Build.Dense(rows.Count, points, (r, c) => sample[r, c] - mean[c]);
        Evd<double> spread = apart.TransposeThisAndMultiply(apart).Evd(Symmetricity.Symmetric);
        return [.. Enumerable.Range(0, points).SelectMany(i => spread.EigenVectors.Column(points - 1 - i))];
    }
}

/// <summary>Driven choices that change the same slots, and share a helix where there are many.</summary>
/// <param name="Root">Their node of the driven tree.</param>
/// <param name="Changes">How many slots they change.</param>
/// <param name="PerTorque">Clamp per torque (1/m) of the helix that they share; empty where they have several.</param>
/// <param name="Frame">Their clamps seen along their own directions; null where they have several helices.</param>
internal sealed record DrivenGroup(int Root, int Changes, double[] PerTorque, HelixFrame? Frame);
