using MathNet.Numerics;

namespace PartPicker.Mechanics;

/// <summary>
/// A monotone cubic through points (PCHIP): slopes by the weighted harmonic mean of Fritsch and Butland,
/// three-point limited ends; two points make a line. Refused outside the points. All numbers are SI.
/// </summary>
/// <remarks>Between rising points it rises; between equal ones it is level. Source: [FRI].</remarks>
public sealed class SmoothCurve
{
    private readonly double[] xs;

    // Of each piece: y = c₀ + c₁ t + c₂ t² + c₃ t³, with t from its left end.
    private readonly (double C0, double C1, double C2, double C3)[] pieces;

    /// <exception cref="ArgumentException">
    /// Fewer than two points, x not strictly rising, or a number not finite.
    /// </exception>
    public SmoothCurve(IEnumerable<(double X, double Y)> points)
    {
        (double X, double Y)[] list = [.. points];
        xs = [.. list.Select(p => p.X)];
        double[] ys = [.. list.Select(p => p.Y)];
        if (xs.Length < 2)
            throw new ArgumentException("A curve needs two points or more.", nameof(points));
        if (!xs.Concat(ys).All(double.IsFinite))
            throw new ArgumentException("A curve needs finite numbers.", nameof(points));
        for (int i = 1; i < xs.Length; i++)
        {
            if (xs[i] <= xs[i - 1])
                throw new ArgumentException($"x must rise strictly; {xs[i]} follows {xs[i - 1]}.", nameof(points));
        }

        pieces = xs.Length == 2
            ? [(ys[0], (ys[1] - ys[0]) / (xs[1] - xs[0]), 0, 0)]
            : Cubics(xs, ys);
    }

    /// <summary>Least x that may be asked.</summary>
    public double From => xs[0];

    /// <summary>Greatest x that may be asked.</summary>
    public double To => xs[^1];

    /// <summary>The points' x.</summary>
    public IReadOnlyList<double> Knots => xs;

    /// <summary>True when every x of the span may be asked.</summary>
    public bool Covers(double from, double to) => from >= From - Slack && to <= To + Slack;

    /// <summary>The value at x.</summary>
    /// <exception cref="ArgumentOutOfRangeException">x lies outside the points.</exception>
    public double At(double x)
    {
        double t = InPiece(x, out int piece);
        (double c0, double c1, double c2, double c3) = pieces[piece];
        return c0 + t * (c1 + t * (c2 + t * c3));
    }

    /// <summary>The slope of the same curve at x.</summary>
    /// <exception cref="ArgumentOutOfRangeException">x lies outside the points.</exception>
    public double Slope(double x)
    {
        double t = InPiece(x, out int piece);
        (_, double c1, double c2, double c3) = pieces[piece];
        return c1 + t * (2 * c2 + t * 3 * c3);
    }

    /// <summary>Value and slope at x, which cost little more than one of them.</summary>
    /// <exception cref="ArgumentOutOfRangeException">x lies outside the points.</exception>
    public (double Value, double Slope) Both(double x)
    {
        double t = InPiece(x, out int piece);
        (double c0, double c1, double c2, double c3) = pieces[piece];
        return (c0 + t * (c1 + t * (c2 + t * c3)), c1 + t * (2 * c2 + t * 3 * c3));
    }

    /// <summary>The least slope between two x.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An end lies outside the points.</exception>
    public double LeastSlope(double from, double to) => SlopeRange(from, to).Least;

    /// <summary>The least and the greatest slope between two x.</summary>
    /// <remarks>Between knots the slope is a parabola, and it never jumps: ends and vertices decide.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">An end lies outside the points.</exception>
    public (double Least, double Greatest) SlopeRange(double from, double to)
    {
        double least = double.PositiveInfinity;
        double greatest = double.NegativeInfinity;
        double start = from;
        foreach (double knot in xs)
        {
            if (knot > from && knot < to)
            {
                Piece(start, knot);
                start = knot;
            }
        }

        Piece(start, to);
        return (least, greatest);

        void Piece(double a, double b)
        {
            double left = Slope(a);
            double middle = Slope((a + b) / 2);
            double right = Slope(b);
            Consider(left);
            Consider(middle);
            Consider(right);
            double bend = left - 2 * middle + right;
            double t = 0.5 - (right - left) / (4 * bend);
            if (t is > 0 and < 1)
                Consider(Slope(a + t * (b - a)));
        }

        void Consider(double slope)
        {
            least = Math.Min(least, slope);
            greatest = Math.Max(greatest, slope);
        }
    }

    // A travel that comes back from a ratio may pass the last point by a rounding error.
    private const double Slack = 1e-9;

    // The piece that begins at or before x, and how far x lies in it.
    private double InPiece(double x, out int piece)
    {
        if (!Covers(x, x))
            throw new ArgumentOutOfRangeException(nameof(x), x, $"The curve is known from {From} to {To}.");
        double within = Math.Clamp(x, From, To);
        piece = 0;
        for (int end = pieces.Length; end - piece > 1;)
        {
            int middle = (piece + end) / 2;
            if (xs[middle] <= within)
                piece = middle;
            else
                end = middle;
        }

        return within - xs[piece];
    }

    // Hermite's cubics through the points with the slopes of Fritsch and Butland.
    private static (double C0, double C1, double C2, double C3)[] Cubics(double[] xs, double[] ys)
    {
        int last = xs.Length - 1;
        double[] width = new double[last];
        double[] secant = new double[last];
        for (int i = 0; i < last; i++)
        {
            width[i] = xs[i + 1] - xs[i];
            secant[i] = (ys[i + 1] - ys[i]) / width[i];
        }

        double[] slope = new double[xs.Length];
        slope[0] = EndSlope(width[0], width[1], secant[0], secant[1]);
        slope[last] = EndSlope(width[last - 1], width[last - 2], secant[last - 1], secant[last - 2]);
        for (int i = 1; i < last; i++)
            slope[i] = InnerSlope(width[i - 1], width[i], secant[i - 1], secant[i]);

        var cubics = new (double, double, double, double)[last];
        for (int i = 0; i < last; i++)
        {
            double w = width[i];
            cubics[i] = (
                ys[i],
                slope[i],
                (3 * (ys[i + 1] - ys[i]) / w - 2 * slope[i] - slope[i + 1]) / w,
                (2 * (ys[i] - ys[i + 1]) / w + slope[i] + slope[i + 1]) / (w * w));
        }

        return cubics;
    }

    // The weighted harmonic mean of both secants; level where they do not point the same way.
    private static double InnerSlope(double before, double after, double left, double right)
    {
        if (left.AlmostEqual(0) || right.AlmostEqual(0) || Math.Sign(left) != Math.Sign(right))
            return 0;
        double ofLeft = 2 * after + before;
        double ofRight = after + 2 * before;
        return (ofLeft + ofRight) / (ofLeft / left + ofRight / right);
    }

    // The parabola through three points, limited so that the curve does not turn.
    private static double EndSlope(double width, double next, double secant, double nextSecant)
    {
        double slope = ((2 * width + next) * secant - width * nextSecant) / (width + next);
        if (Math.Sign(slope) != Math.Sign(secant))
            return 0;
        bool turns = Math.Sign(secant) != Math.Sign(nextSecant);
        return turns && Math.Abs(slope) > 3 * Math.Abs(secant) ? 3 * secant : slope;
    }
}
