namespace PartPicker.Mechanics;

/// <summary>Straight lines between points, valid over a stated range and refused outside it.</summary>
/// <remarks>
/// A spring, however it is known, becomes one of these: force over length, or torque over twist. All numbers
/// are SI. A line given by two points or by a rate may be valid beyond them; a measured table is not.
/// </remarks>
public sealed class LinearCurve
{
    private readonly double[] xs;
    private readonly double[] ys;

    private LinearCurve(double[] xs, double[] ys, double from, double to)
    {
        this.xs = xs;
        this.ys = ys;
        From = from;
        To = to;
        Knots = [.. xs.Where(x => x > from && x < to)];
    }

    /// <summary>Least x that may be asked.</summary>
    public double From { get; }

    /// <summary>Greatest x that may be asked.</summary>
    public double To { get; }

    /// <summary>Where a straight piece ends; the ends of the range are not among them.</summary>
    public IReadOnlyList<double> Knots { get; }

    /// <summary>
    /// A straight line through a point: y = y₀ + slope (x − x₀), valid from <paramref name="from"/> to
    /// <paramref name="to"/>.
    /// </summary>
    /// <exception cref="ArgumentException">A number is not finite or the range is empty.</exception>
    public static LinearCurve Line(double x0, double y0, double slope, double from, double to) =>
        Create([x0, x0 + 1], [y0, y0 + slope], from, to);

    /// <summary>
    /// A straight line through two points, valid from <paramref name="from"/> to <paramref name="to"/>.
    /// </summary>
    /// <exception cref="ArgumentException">
    /// The points share their x, a number is not finite or the range is empty.
    /// </exception>
    public static LinearCurve Through(
        (double X, double Y) first, (double X, double Y) second, double from, double to) =>
        first.X <= second.X
            ? Create([first.X, second.X], [first.Y, second.Y], from, to)
            : Create([second.X, first.X], [second.Y, first.Y], from, to);

    /// <summary>Straight lines between measured points, valid from the first to the last.</summary>
    /// <exception cref="ArgumentException">
    /// Fewer than two points, x not strictly rising, or a number not finite.
    /// </exception>
    public static LinearCurve Table(IEnumerable<(double X, double Y)> points)
    {
        (double X, double Y)[] list = [.. points];
        if (list.Length < 2)
            throw new ArgumentException("A table needs two points or more.", nameof(points));
        return Create([.. list.Select(p => p.X)], [.. list.Select(p => p.Y)], list[0].X, list[^1].X);
    }

    /// <summary>This curve with the same amount on every value.</summary>
    public LinearCurve Raised(double amount) => Create(xs, [.. ys.Select(y => y + amount)], From, To);

    /// <summary>This curve moved along x and scaled: y′(x) = scale · y(x − shift).</summary>
    /// <param name="shift">Distance moved (unit of x).</param>
    /// <param name="scale">Factor on y.</param>
    /// <param name="play">How far the range is widened at both ends, where the outermost pieces go on.</param>
    public LinearCurve Moved(double shift, double scale, double play) => Create(
        [.. xs.Select(x => x + shift)], [.. ys.Select(y => y * scale)], From + shift - play, To + shift + play);

    /// <summary>True when every x of the span may be asked.</summary>
    public bool Covers(double from, double to) => from >= From - Slack && to <= To + Slack;

    /// <summary>The value at x.</summary>
    /// <exception cref="ArgumentOutOfRangeException">x lies outside the range: nothing is extrapolated.</exception>
    public double At(double x)
    {
        if (!Covers(x, x))
            throw new ArgumentOutOfRangeException(nameof(x), x, $"The curve is known from {From} to {To}.");
        int i = 1;
        while (i < xs.Length - 1 && x > xs[i])
            i++;
        double t = (x - xs[i - 1]) / (xs[i] - xs[i - 1]);
        return ys[i - 1] + t * (ys[i] - ys[i - 1]);
    }

    /// <summary>
    /// The area under the curve: ∫ y dx, as the energy of a spring between two lengths; negative from right to left.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">An end lies outside the range.</exception>
    public double Integral(double from, double to)
    {
        if (to < from)
            return -Integral(to, from);
        double[] cuts = [from, .. Knots.Where(x => x > from && x < to), to];
        double area = 0;
        for (int i = 1; i < cuts.Length; i++)
            area += (At(cuts[i - 1]) + At(cuts[i])) / 2 * (cuts[i] - cuts[i - 1]);
        return area;
    }

    // A travel that comes back from a ratio may pass the end of a table by a rounding error.
    private const double Slack = 1e-9;

    private static LinearCurve Create(double[] xs, double[] ys, double from, double to)
    {
        if (!xs.Concat(ys).Append(from).Append(to).All(double.IsFinite))
            throw new ArgumentException("A curve needs finite numbers.");
        for (int i = 1; i < xs.Length; i++)
        {
            if (xs[i] <= xs[i - 1])
                throw new ArgumentException($"x must rise strictly; {xs[i]} follows {xs[i - 1]}.");
        }

        if (from >= to)
            throw new ArgumentException($"The range from {from} to {to} is empty.");
        return new LinearCurve(xs, ys, from, to);
    }
}
