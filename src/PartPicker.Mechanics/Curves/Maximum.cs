namespace PartPicker.Mechanics;

/// <summary>The greatest value of a smooth piecewise function over a span.</summary>
internal static class Maximum
{
    private const int SamplesPerPiece = 16;
    private const int MaxSteps = 100;
    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    /// <summary>
    /// Samples each piece, then narrows the neighbourhood of the best sample, by golden section or by the zero of
    /// the slope. The pieces are smooth and short, so one neighbourhood holds one top.
    /// </summary>
    /// <param name="f">The function.</param>
    /// <param name="cuts">Rising: both ends of the span, and between them every x where a piece ends.</param>
    /// <param name="slope">df/dx where it is known: its zero is sharp where the top is flat.</param>
    public static (double X, double Value) Of(
        Func<double, double> f, IReadOnlyList<double> cuts, Func<double, double>? slope = null)
    {
        double[] xs = Samples(cuts);
        int best = 0;
        double bestValue = double.NegativeInfinity;
        for (int i = 0; i < xs.Length; i++)
        {
            double value = f(xs[i]);
            if (value > bestValue)
                (best, bestValue) = (i, value);
        }

        double from = xs[Math.Max(best - 1, 0)];
        double to = xs[Math.Min(best + 1, xs.Length - 1)];
        double x = slope is null ? GoldenSection(f, from, to)
            : slope(from) > 0 && slope(to) < 0 ? Root.Between(slope, from, to)
            : xs[best];
        double refined = f(x);
        return refined > bestValue ? (x, refined) : (xs[best], bestValue);
    }

    private static double[] Samples(IReadOnlyList<double> cuts)
    {
        if (cuts.Count == 1 || cuts[0] == cuts[^1])
            return [cuts[0]];
        var xs = new List<double> { cuts[0] };
        for (int i = 1; i < cuts.Count; i++)
        {
            for (int s = 1; s < SamplesPerPiece; s++)
                xs.Add(cuts[i - 1] + (cuts[i] - cuts[i - 1]) * s / SamplesPerPiece);
            xs.Add(cuts[i]);
        }

        return [.. xs];
    }

    private static double GoldenSection(Func<double, double> f, double from, double to)
    {
        double a = to - Golden * (to - from);
        double b = from + Golden * (to - from);
        double fa = f(a);
        double fb = f(b);
        for (int step = 0; step < MaxSteps && to - from > 1e-12 * Math.Max(1e-3, Math.Abs(to)); step++)
        {
            if (fa > fb)
            {
                (to, b, fb) = (b, a, fa);
                a = to - Golden * (to - from);
                fa = f(a);
            }
            else
            {
                (from, a, fa) = (a, b, fb);
                b = from + Golden * (to - from);
                fb = f(b);
            }
        }

        return (from + to) / 2;
    }
}
