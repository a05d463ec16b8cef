using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;
using Lane = System.Numerics.Vector<double>;

namespace PartPicker.Selection;

/// <summary>The standing clamps of the choices of each helix, seen along the directions in which they differ.</summary>
/// <remarks>
/// Springs and holes move the clamps of a helix in two ways, or up to four where it is curved: all together, and more at
/// one end than at the other. Along the principal axes of the clamps the other widths are next to nothing, so that a
/// wanted curve of another shape is told at once, whatever spring and hole may do. Clamps are counted in shares of a
/// usual one, so that the positions weigh alike. Numbers of all helices stand side by side, one vector lane for each:
/// a lane adds and multiplies in the same order whatever the width, so that every processor drops the same helices.
/// </remarks>
internal sealed class HelixFrames
{
    private const int SampledPoints = 1024;

    // Of the widest vector; the lanes left over hold nothing.
    private const int MostLanes = 8;

    // More than the rounding of a projection.
    private const double Rounding = 1e-12;

    private readonly int points;
    private readonly double[] usual;

    // By axis, the one with the least width first, by position, by helix.
    private readonly double[] axes;
    private readonly double[] low;
    private readonly double[] high;

    // Of the clamp per torque, by axis, by position, by helix: times the torque at the target.
    private readonly double[] perTorque;

    /// <param name="members">The choices of each helix.</param>
    /// <param name="driven">Standing clamps and clamps per torque of every choice, one after the other.</param>
    /// <param name="usual">A usual clamp (N) at each position.</param>
    public HelixFrames(IReadOnlyList<int[]> members, double[] driven, double[] usual)
    {
        this.usual = usual;
        points = usual.Length;
        Count = members.Count;
        Lanes = (Count + MostLanes - 1) / MostLanes * MostLanes;
        axes = new double[points * points * Lanes];
        perTorque = new double[points * points * Lanes];
        low = new double[points * Lanes];
        high = new double[points * Lanes];
        Array.Fill(low, double.PositiveInfinity);
        Array.Fill(high, double.NegativeInfinity);
        for (int g = 0; g < Count; g++)
            Fill(g, members[g], driven);
    }

    /// <summary>Helices.</summary>
    public int Count { get; }

    /// <summary>As many as <see cref="Count"/>, filled up to whole vectors.</summary>
    public int Lanes { get; }

    /// <summary>Bytes held.</summary>
    public long Bytes => 8L * (axes.Length + perTorque.Length + low.Length + high.Length);

    /// <summary>Where the clamps lie with torques added: least and greatest along each axis, by helix.</summary>
    public (double[] Low, double[] High) At(ReadOnlySpan<double> torque)
    {
        double[] least = [.. low];
        double[] most = [.. high];
        for (int i = 0; i < points; i++)
        {
            for (int j = 0; j < points; j++)
            {
                for (int g = 0; g < Lanes; g++)
                {
                    double added = perTorque[(i * points + j) * Lanes + g] * torque[j];
                    least[i * Lanes + g] += added;
                    most[i * Lanes + g] += added;
                }
            }
        }

        return (least, most);
    }

    /// <summary>Σ of squared distances (shares) from a wanted row that no choice of a helix falls below; more than a limit where that is exceeded.</summary>
    /// <param name="at">Where the clamps lie: see <see cref="At"/>.</param>
    /// <param name="wanted">Wanted clamps as shares of the usual ones.</param>
    /// <param name="apart">How far off the wanted row may be, in shares: it shortens every distance.</param>
    /// <param name="limits">For each helix the squares up to which it matters.</param>
    /// <param name="squares">For each helix the squares.</param>
    public void Squares(
        (double[] Low, double[] High) at, ReadOnlySpan<double> wanted, double apart, ReadOnlySpan<double> limits, Span<double> squares)
    {
        var loosened = new Lane(apart);
        for (int g = 0; g < Lanes; g += Lane.Count)
        {
            var limit = new Lane(limits[g..]);
            Lane sum = Lane.Zero;
            for (int i = 0; i < points && System.Numerics.Vector.LessThanOrEqualAny(sum, limit); i++)
            {
                Lane seen = Lane.Zero;
                for (int j = 0; j < wanted.Length; j++)
                    seen += new Lane(axes, (i * points + j) * Lanes + g) * new Lane(wanted[j]);
                Lane outside = System.Numerics.Vector.Max(
                    new Lane(at.Low, i * Lanes + g) - seen, seen - new Lane(at.High, i * Lanes + g));
                Lane distance = System.Numerics.Vector.Max(Lane.Zero, outside - loosened);
                sum += distance * distance;
            }

            sum.CopyTo(squares[g..]);
        }
    }

    /// <summary>The same of one helix, without vectors: what <see cref="Squares"/> must equal to the last bit.</summary>
    public double SquaresOf(int g, (double[] Low, double[] High) at, ReadOnlySpan<double> wanted, double apart)
    {
        double sum = 0;
        for (int i = 0; i < points; i++)
        {
            double seen = 0;
            for (int j = 0; j < wanted.Length; j++)
                seen += axes[(i * points + j) * Lanes + g] * wanted[j];
            double outside = Math.Max(at.Low[i * Lanes + g] - seen, seen - at.High[i * Lanes + g]);
            double distance = Math.Max(0, outside - apart);
            sum += distance * distance;
        }

        return sum;
    }

    private void Fill(int g, int[] members, double[] driven)
    {
        int stride = 2 * points;
        double[] own = PrincipalAxes(members, driven);
        double[] row = new double[points];
        for (int i = 0; i < points; i++)
        {
            for (int j = 0; j < points; j++)
            {
                axes[(i * points + j) * Lanes + g] = own[i * points + j];
                perTorque[(i * points + j) * Lanes + g] =
                    own[i * points + j] * driven[members[0] * stride + points + j] / usual[j];
            }
        }

        foreach (int item in members)
        {
            for (int j = 0; j < points; j++)
                row[j] = driven[item * stride + j] / usual[j];
            for (int i = 0; i < points; i++)
            {
                double seen = 0;
                for (int j = 0; j < points; j++)
                    seen += own[i * points + j] * row[j];
                int at = i * Lanes + g;
                (low[at], high[at]) = (Math.Min(low[at], seen - Rounding), Math.Max(high[at], seen + Rounding));
            }
        }
    }

    // Any directions would do for the proof; these make the widths small.
    private double[] PrincipalAxes(int[] members, double[] driven)
    {
        int step = Math.Max(1, members.Length / SampledPoints);
        var rows = new List<double[]>();
        for (int i = 0; i < members.Length; i += step)
            rows.Add([.. usual.Select((of, j) => driven[members[i] * 2 * points + j] / of)]);
        Matrix<double> sample = Matrix<double>.Build.DenseOfRowArrays(rows);
        MathNet.Numerics.LinearAlgebra.Vector<double> mean = sample.ColumnSums() / rows.Count;
        Matrix<double> apart = Matrix<double>.Build.Dense(rows.Count, points, (r, c) => sample[r, c] - mean[c]);
        Evd<double> spread = apart.TransposeThisAndMultiply(apart).Evd(Symmetricity.Symmetric);
        return [.. Enumerable.Range(0, points).SelectMany(i => spread.EigenVectors.Column(i))];
    }
}
