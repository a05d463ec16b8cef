using MathNet.Numerics.Interpolation;

namespace PartPicker.Mechanics;

/// <summary>
/// A monotone cubic through points (PCHIP): slopes by the weighted harmonic mean of Fritsch and Butland,
/// three-point limited ends; two points make a line. Refused outside the points. All numbers are SI.
/// </summary>
/// <remarks>Between rising points it rises; between equal ones it is level. Source: [FRI].</remarks>
public sealed class SmoothCurve
{
    private readonly double[] xs;
    private readonly IInterpolation curve;

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

        curve = xs.Length == 2
            ? LinearSpline.InterpolateSorted(xs, ys)
            : CubicSpline.InterpolatePchipSorted(xs, ys);
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
    public double At(double x) => curve.Interpolate(Checked(x));

    /// <summary>The slope of the same curve at x.</summary>
    /// <exception cref="ArgumentOutOfRangeException">x lies outside the points.</exception>
    public double Slope(double x) => curve.Differentiate(Checked(x));

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
        double[] cuts = [from, .. xs.Where(x => x > from && x < to), to];
        for (int i = 1; i < cuts.Length; i++)
        {
            double a = cuts[i - 1];
            double b = cuts[i];
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

        return (least, greatest);

        void Consider(double slope)
        {
            least = Math.Min(least, slope);
            greatest = Math.Max(greatest, slope);
        }
    }

    // A travel that comes back from a ratio may pass the last point by a rounding error.
    private const double Slack = 1e-9;

    private double Checked(double x)
    {
        if (!Covers(x, x))
            throw new ArgumentOutOfRangeException(nameof(x), x, $"The curve is known from {From} to {To}.");
        return Math.Clamp(x, From, To);
    }
}
