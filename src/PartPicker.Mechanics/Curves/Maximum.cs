namespace PartPicker.Mechanics;

/// <summary>The greatest value of a smooth piecewise function over a span.</summary>
internal static class Maximum
{
    private const int SamplesPerPiece = 16;
    private const int MaxSteps = 100;
    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    /// <summary>
    /// Samples each piece, then looks between every sample that is no lower than its neighbours and each of these
    /// neighbours, by golden section or by the zero of the slope. A cut is a sample: what lies between two samples
    /// is smooth and short, and holds one top at most.
    /// </summary>
    /// <param name="f">The function.</param>
    /// <param name="cuts">Rising: both ends of the span, and between them every x where a piece ends.</param>
    /// <param name="slope">df/dx where it is known: its zero is sharp where the top is flat.</param>
    public static (double X, double Value) Of(
        Func<double, double> f, IReadOnlyList<double> cuts, Func<double, double>? slope = null)
    {
        double[] xs = Samples(cuts);
        double[] values = [.. xs.Select(f)];
        (double X, double Value) best = (xs[0], values[0]);
        for (int i = 0; i < xs.Length; i++)
        {
            int before = Math.Max(i - 1, 0);
            int after = Math.Min(i + 1, xs.Length - 1);
            if (!(values[i] >= values[before] && values[i] >= values[after]))
                continue;
            Consider(xs[i], values[i]);
            LookBetween(xs[before], xs[i]);
            LookBetween(xs[i], xs[after]);
        }

        return best;

        void LookBetween(double from, double to)
        {
            if (slope is null)
                Refine(GoldenSection(f, from, to));
            else if (slope(from) > 0 && slope(to) < 0)
                Refine(Root.Between(slope, from, to));
        }

        void Refine(double x) => Consider(x, f(x));

        void Consider(double x, double value)
        {
            if (value > best.Value)
                best = (x, value);
        }
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
        // A top is flat: an x good to 1e-8 of the interval gives a value good to the last digit.
        double enough = 1e-8 * (to - from);
        double a = to - Golden * (to - from);
        double b = from + Golden * (to - from);
        double fa = f(a);
        double fb = f(b);
        for (int step = 0; step < MaxSteps && to - from > enough; step++)
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
