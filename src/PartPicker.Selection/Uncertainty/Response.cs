namespace PartPicker.Selection;

/// <summary>How the numbers of a set answer to its uncertain inputs, each by itself.</summary>
/// <remarks>
/// A limit ± a is a rectangular distribution with standard uncertainty u = a/√3 (JCGM 100, 4.3.7). With z in units of u,
/// n(z) = n₀ + Σ g_i(z_i), g_i the quartic without constant through the responses at ± u and at both limits: belt
/// friction bends the low gear so much that a straight line says too little of one side and too much of the other. The
/// band is ± 2 √E[(n − n₀)²]; for straight g_i that is the combination of JCGM 100, 5.1.2 with a coverage factor of 2.
/// Inputs that bend each other are left out. What the model misses of its run is one more input (<see cref="RunMisfit"/>).
/// </remarks>
internal sealed class Response
{
    /// <summary>Points of the sequence that the likelihood counts.</summary>
    public const int PointCount = 4096;

    private const double CoverageFactor = 2;

    /// <summary>a/u of a rectangular distribution.</summary>
    public static readonly double LimitInU = Math.Sqrt(3);

    private static readonly int[] Primes = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47];
    private static readonly float[][] Points = [.. Primes.Select(Dimension)];

    private readonly double[] stated;

    // By input, then by number.
    private readonly Quartic[][] bends;

    private Response(double[] stated, Quartic[][] bends)
    {
        this.stated = stated;
        this.bends = bends;
    }

    public static Response Of(InputModel model, SetUp set)
    {
        MeasuredRun? run = model.Predictor.Run;
        return Of(
            Inputs.Of(set, run?.Set, run is { SolvesFriction: true }, model.TorqueShare, model.Misfit.Any(u => u >= RunMisfit.LeastRpm)),
            (inSet, inRun) => model.Numbers(set, inSet, inRun));
    }

    /// <summary>What changes from one set to another, by a model without a run: what both share cancels.</summary>
    public static Response OfChange(InputModel model, SetUp set, SetUp from) => Of(
        Inputs.Of(set, from, frictionTold: false, model.TorqueShare, misfit: false),
        (inSet, inFrom) =>
        [
            .. model.Numbers(set, inSet, Deviation.None).Zip(model.Numbers(from, inFrom, Deviation.None), (to, was) => to - was),
        ]);

    /// <summary>How numbers answer to inputs: those of the set and those of the other set.</summary>
    public static Response Of(IReadOnlyList<UncertainInput> inputs, Func<Deviation, Deviation, double[]> numbers)
    {
        double[] stated = numbers(Deviation.None, Deviation.None);
        return new Response(stated, [.. inputs.Select(Bend)]);

        Quartic[] Bend(UncertainInput input)
        {
            double[] aboveU = At(input, 1 / LimitInU);
            double[] belowU = At(input, -1 / LimitInU);
            double[] above = At(input, 1);
            double[] below = At(input, -1);
            return
            [
                .. stated.Select((n, i) => Quartic.Through(belowU[i] - n, aboveU[i] - n, below[i] - n, above[i] - n)),
            ];
        }

        double[] At(UncertainInput input, double share) => numbers(input.InSet(share), input.InOther(share));
    }

    /// <summary>Half width of the band of each number: about 19 in 20 true values lie within it; null where there is none.</summary>
    public IReadOnlyList<double?> HalfWidths =>
    [
        .. stated.Select((_, n) => CoverageFactor * Math.Sqrt(MeanSquare(n)))
            .Select(width => double.IsFinite(width) ? (double?)width : null),
    ];

    /// <summary>Each number itself; null where there is none.</summary>
    public IReadOnlyList<double?> Numbers => [.. stated.Select(n => double.IsNaN(n) ? (double?)null : n)];

    /// <summary>The prediction with its bands.</summary>
    public Prediction Banded(Prediction prediction)
    {
        IReadOnlyList<double?> widths = HalfWidths;
        return prediction with
        {
            EngagementBandRpm = widths[0],
            Curve = [.. prediction.Curve.Select((point, j) => point with { UpshiftBandRpm = widths[j + 1] })],
        };
    }

    /// <summary>
    /// Share of the inputs that their limits allow, evenly, for which every number is within tolerance; null where a
    /// number that counts has no band.
    /// </summary>
    /// <param name="targets">Wanted rpm of each number; NaN where none is asked.</param>
    /// <param name="tolerances">By how many rpm each may miss.</param>
    public double? Likelihood(IReadOnlyList<double> targets, IReadOnlyList<double> tolerances)
    {
        IReadOnlyList<double?> widths = HalfWidths;
        int[] asked = [.. Enumerable.Range(0, stated.Length).Where(n => !double.IsNaN(targets[n]))];
        if (asked.Any(n => widths[n] is null))
            return null;
        int hits = 0;
        for (int p = 0; p < PointCount; p++)
        {
            if (Array.TrueForAll(asked, n => Math.Abs(At(n, p) - targets[n]) <= tolerances[n]))
                hits++;
        }

        return hits / (double)PointCount;
    }

    private double MeanSquare(int number)
    {
        double mean = bends.Sum(g => g[number].Mean);
        return mean * mean + bends.Sum(g => g[number].MeanSquare - g[number].Mean * g[number].Mean);
    }

    private double At(int number, int point)
    {
        double sum = stated[number];
        for (int i = 0; i < bends.Length; i++)
            sum += bends[i][number].At(Points[i][point]);
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

    /// <summary>g(z) = a z + b z² + c z³ + d z⁴, z even over ± √3.</summary>
    private readonly record struct Quartic(double A, double B, double C, double D)
    {
        // E z², E z⁴, E z⁶ and E z⁸ of a rectangular distribution over ± √3.
        private const double Fourth = 9.0 / 5;
        private const double Sixth = 27.0 / 7;
        private const double Eighth = 9;

        public double Mean => B + Fourth * D;

        public double MeanSquare => A * A + B * B * Fourth + C * C * Sixth + D * D * Eighth
            + 2 * (A * C * Fourth + B * D * Sixth);

        /// <summary>The quartic through 0 at 0 and through the values at −1, 1, −√3 and √3.</summary>
        public static Quartic Through(double belowU, double aboveU, double below, double above)
        {
            (double oddU, double odd) = ((aboveU - belowU) / 2, (above - below) / 2);
            (double evenU, double even) = ((aboveU + belowU) / 2, (above + below) / 2);
            double c = (odd / LimitInU - oddU) / 2;
            double d = (even / 3 - evenU) / 2;
            return new Quartic(oddU - c, evenU - d, c, d);
        }

        public double At(double z) => z * (A + z * (B + z * (C + z * D)));
    }
}
