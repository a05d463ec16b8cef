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
    public static (double X, double Value) Of<TFunction>(
        TFunction f, ReadOnlySpan<double> cuts, Func<double, double>? slope = null)
        where TFunction : struct, IFunction
    {
        int count = cuts[0] == cuts[^1] ? 1 : SamplesPerPiece * (cuts.Length - 1) + 1;
        double x = cuts[0];
        double value = f.At(x);
        (double X, double Value) best = (x, value);
        (double X, double Value) before = best;
        for (int i = 1; i <= count; i++)
        {
            double next = i < count ? Sample(cuts, i) : x;
            double nextValue = i < count ? f.At(next) : value;
            if (value >= before.Value && value >= nextValue)
            {
                Consider(x, value);
                LookBetween(before.X, x);
                LookBetween(x, next);
            }

            before = (x, value);
            (x, value) = (next, nextValue);
        }

        return best;

        void LookBetween(double from, double to)
        {
            if (from == to)
                return;
            if (slope is null)
                Refine(GoldenSection(f, from, to));
            else if (slope(from) > 0 && slope(to) < 0)
                Refine(Root.Between(slope, from, to));
        }

        void Refine(double at) => Consider(at, f.At(at));

        void Consider(double at, double found)
        {
            if (found > best.Value)
                best = (at, found);
        }
    }

    /// <summary>Likewise, of any function.</summary>
    public static (double X, double Value) Of(
        Func<double, double> f, ReadOnlySpan<double> cuts, Func<double, double>? slope = null) =>
        Of(new AnyFunction(f), cuts, slope);

    private static double Sample(ReadOnlySpan<double> cuts, int i)
    {
        int piece = i / SamplesPerPiece;
        int s = i % SamplesPerPiece;
        return s == 0 ? cuts[piece] : cuts[piece] + (cuts[piece + 1] - cuts[piece]) * s / SamplesPerPiece;
    }

    private static double GoldenSection<TFunction>(TFunction f, double from, double to)
        where TFunction : struct, IFunction
    {
        // A top is flat: an x good to 1e-8 of the interval gives a value good to the last digit.
        double enough = 1e-8 * (to - from);
        double a = to - Golden * (to - from);
        double b = from + Golden * (to - from);
        double fa = f.At(a);
        double fb = f.At(b);
        for (int step = 0; step < MaxSteps && to - from > enough; step++)
        {
            if (fa > fb)
            {
                (to, b, fb) = (b, a, fa);
                a = to - Golden * (to - from);
                fa = f.At(a);
            }
            else
            {
                (from, a, fa) = (a, b, fb);
                b = from + Golden * (to - from);
                fb = f.At(b);
            }
        }

        return (from + to) / 2;
    }

    private readonly struct AnyFunction(Func<double, double> f) : IFunction
    {
        public double At(double x) => f(x);
    }
}

/// <summary>A function of one number; as a struct it costs no call.</summary>
internal interface IFunction
{
    double At(double x);
}
