using PartPicker.Mechanics;
using UnitsNet;

namespace PartPicker.Selection;

/// <summary>What one axis of a curve is: the end of its points' names, and its dimension, or the unit of a bare number.</summary>
internal readonly record struct Axis(string Name, QuantityInfo? Dimension, string Unit = "");

/// <summary>The points of a curve that decide its value at one place, as parts of that value; counted from 1 along the curve.</summary>
internal static class CurveParts
{
    /// <summary>The two points between which a straight piece runs.</summary>
    /// <param name="first">Where the stated table begins: an end that was set before it counts as 0.</param>
    public static IEnumerable<ExplainedValue> Straight(
        TreeNodes nodes, string name, LinearCurve curve, double first, double x, Axis along, Axis up)
    {
        double[] xs = [curve.From, .. curve.Knots, curve.To];
        int i = Piece(xs, x);
        (double, double)[] points = [.. xs.Select(at => (at, curve.At(at)))];
        return Points(nodes, name, points, i - 1, i, along, up, number: curve.From < first ? 0 : 1);
    }

    /// <summary>The points of a smooth piece and one more on either side, which give it its slopes.</summary>
    public static IEnumerable<ExplainedValue> Smooth(
        TreeNodes nodes, string name, IReadOnlyList<(double X, double Y)> points, double x, Axis along, Axis up)
    {
        int i = Piece([.. points.Select(p => p.X)], x);
        return Points(nodes, name, points, Math.Max(0, i - 2), Math.Min(points.Count - 1, i + 1), along, up);
    }

    /// <summary>Every point of a curve.</summary>
    public static IEnumerable<ExplainedValue> All(
        TreeNodes nodes, string name, IReadOnlyList<(double X, double Y)> points, Axis along, Axis up) =>
        Points(nodes, name, points, 0, points.Count - 1, along, up);

    // Where the piece ends that holds x; the first or the last piece for an x beside the curve.
    private static int Piece(double[] xs, double x)
    {
        int i = Array.FindIndex(xs, knot => knot >= x);
        return i < 0 ? xs.Length - 1 : Math.Max(1, i);
    }

    private static IEnumerable<ExplainedValue> Points(
        TreeNodes nodes, string name, IReadOnlyList<(double X, double Y)> points, int first, int last, Axis along, Axis up,
        int number = 1)
    {
        for (int i = first; i <= last; i++)
        {
            yield return Coordinate(i, points[i].X, along);
            yield return Coordinate(i, points[i].Y, up);
        }

        ExplainedValue Coordinate(int i, double value, Axis axis)
        {
            string part = $"{name}/{i + number}.{axis.Name}";
            return axis.Dimension is { } dimension ? nodes.Input(part, value, dimension) : nodes.Input(part, value, axis.Unit);
        }
    }
}
