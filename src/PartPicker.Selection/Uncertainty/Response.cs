namespace PartPicker.Selection;

/// <summary>How the numbers of a set answer to its uncertain inputs, each by itself.</summary>
/// <remarks>
/// Along each input, in units of its standard uncertainty u = a/√3 of a limit ± a (a rectangular distribution, JCGM 100
/// 4.3.7): n(z) = n₀ + Σ (c_i z_i + ½ d_i z_i²), c and d from central differences with a half-step of u. The band is
/// ± 2 √(Σ c_i²) (JCGM 100 5.1.2, coverage factor 2); the bend d serves the likelihood alone. Inputs that bend each
/// other are left out.
/// </remarks>
internal sealed class Response
{
    /// <summary>Points of the sequence that the likelihood counts.</summary>
    public const int PointCount = 4096;

    private const double CoverageFactor = 2;
    private static readonly double LimitInU = Math.Sqrt(3);
    private static readonly int[] Primes = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43];
    private static readonly Lazy<float[][]> Points = new(() => [.. Primes.Select(Dimension)]);

    private readonly double[] stated;
    private readonly double[][] slopes;
    private readonly double[][] bends;

    private Response(double[] stated, double[][] slopes, double[][] bends)
    {
        this.stated = stated;
        this.slopes = slopes;
        this.bends = bends;
    }

    public static Response Of(InputModel model, SetUp set)
    {
        double[] stated = model.Numbers(set, Deviation.None, Deviation.None);
        IReadOnlyList<UncertainInput> inputs = Inputs.Of(set, model.Predictor.Run);
        var slopes = new double[inputs.Count][];
        var bends = new double[inputs.Count][];
        for (int i = 0; i < inputs.Count; i++)
        {
            double[] above = At(inputs[i], 1 / LimitInU);
            double[] below = At(inputs[i], -1 / LimitInU);
            slopes[i] = [.. stated.Select((_, n) => (above[n] - below[n]) / 2)];
            bends[i] = [.. stated.Select((s, n) => above[n] - 2 * s + below[n])];
        }

        return new Response(stated, slopes, bends);

        double[] At(UncertainInput input, double share) => model.Numbers(set, input.InSet(share), input.InRun(share));
    }

    /// <summary>Half width of the band of each number: about 19 in 20 true values lie within it; null where there is none.</summary>
    public IReadOnlyList<double?> HalfWidths =>
    [
        .. stated.Select((_, n) => CoverageFactor * Math.Sqrt(slopes.Sum(s => s[n] * s[n])))
            .Select(width => double.IsFinite(width) ? (double?)width : null),
    ];

    /// <summary>
    /// Share of the inputs that their limits allow, evenly, for which every number is within tolerance; null where a
    /// number that counts has no band.
    /// </summary>
    /// <param name="targets">Wanted rpm of each number; NaN where none is asked.</param>
    /// <param name="tolerances">By how many rpm each may miss.</param>
    /// <param name="bent">False: leave the bend out, to see what it does.</param>
    public double? Likelihood(IReadOnlyList<double> targets, IReadOnlyList<double> tolerances, bool bent = true)
    {
        int[] asked = [.. Enumerable.Range(0, stated.Length).Where(n => !double.IsNaN(targets[n]))];
        if (asked.Any(n => HalfWidths[n] is null))
            return null;
        int hits = 0;
        for (int p = 0; p < PointCount; p++)
        {
            if (Array.TrueForAll(asked, n => Math.Abs(At(n, p, bent) - targets[n]) <= tolerances[n]))
                hits++;
        }

        return hits / (double)PointCount;
    }

    private double At(int number, int point, bool bent)
    {
        double sum = stated[number];
        for (int i = 0; i < slopes.Length; i++)
        {
            double z = Points.Value[i][point];
            sum += z * (slopes[i][number] + (bent ? z * bends[i][number] / 2 : 0));
        }

        return sum;
    }

    /// <summary>One dimension of a Halton sequence, spread over ± the limit, from its first point that is not 0.</summary>
    private static float[] Dimension(int prime)
    {
        var points = new float[PointCount];
        for (int p = 0; p < PointCount; p++)
        {
            double value = 0;
            double part = 1;
            for (int digits = p + 1; digits > 0; digits /= prime)
            {
                part /= prime;
                value += part * (digits % prime);
            }

            points[p] = (float)(LimitInU * (2 * value - 1));
        }

        return points;
    }
}
