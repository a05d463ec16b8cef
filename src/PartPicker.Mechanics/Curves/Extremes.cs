namespace PartPicker.Mechanics;

/// <summary>The least and the greatest value of a function that is monotone between knots.</summary>
public static class Extremes
{
    /// <summary>Both ends and the knots between them decide.</summary>
    /// <param name="f">The function.</param>
    /// <param name="knots">Every x where it may turn.</param>
    /// <param name="from">One end of the span.</param>
    /// <param name="to">The other one, above it.</param>
    public static (double Least, double Greatest) Of(
        Func<double, double> f, IEnumerable<double> knots, double from, double to)
    {
        double start = f(from);
        double end = f(to);
        (double least, double greatest) = (Math.Min(start, end), Math.Max(start, end));
        foreach (double knot in knots)
        {
            if (!(knot > from && knot < to))
                continue;
            double value = f(knot);
            (least, greatest) = (Math.Min(least, value), Math.Max(greatest, value));
        }

        return (least, greatest);
    }
}
