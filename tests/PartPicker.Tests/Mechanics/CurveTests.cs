using CsCheck;
using MathNet.Numerics.Interpolation;
using PartPicker.Mechanics;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>Curves through points: what holds for every list of points, and what is refused.</summary>
public sealed class CurveTests
{
    private static readonly Gen<(double X, double Y)[]> Points = PointsWith(Gen.Double[-2, 2]);
    private static readonly Gen<(double X, double Y)[]> RisingPoints =
        PointsWith(Gen.OneOf(Gen.Double[0, 2], Gen.Const(0.0), Gen.Double[0, 1e-6]));

    [Fact]
    public void A_smooth_curve_meets_its_points() =>
        Points.Sample(points =>
        {
            var curve = new SmoothCurve(points);
            foreach ((double x, double y) in points)
                Assert.Equal(y, curve.At(x), 1e-12);
        });

    [Fact]
    public void A_smooth_curve_rises_where_its_points_rise() =>
        RisingPoints.Sample(points =>
        {
            var curve = new SmoothCurve(points);
            double last = double.NegativeInfinity;
            foreach (double x in Dense(curve.From, curve.To))
            {
                Assert.True(curve.At(x) >= last - 1e-12);
                Assert.True(curve.Slope(x) >= -1e-12);
                last = curve.At(x);
            }
        });

    [Fact]
    public void A_smooth_curve_stays_between_neighbouring_points() =>
        Points.Sample(points =>
        {
            var curve = new SmoothCurve(points);
            for (int i = 1; i < points.Length; i++)
            {
                double low = Math.Min(points[i - 1].Y, points[i].Y);
                double high = Math.Max(points[i - 1].Y, points[i].Y);
                foreach (double x in Dense(points[i - 1].X, points[i].X).Skip(1).SkipLast(1))
                    Assert.InRange(curve.At(x), low - 1e-12, high + 1e-12);
            }
        });

    [Fact]
    public void Slope_is_the_derivative_of_the_same_curve() =>
        Gen.Select(Points, Gen.Double[0.001, 0.999]).Sample((points, share) =>
        {
            const double step = 1e-6;
            var curve = new SmoothCurve(points);
            double x = curve.From + step + share * (curve.To - curve.From - 2 * step);

            // The second derivative may jump at a point, so the difference is good to first order only.
            Assert.Equal((curve.At(x + step) - curve.At(x - step)) / (2 * step), curve.Slope(x), 1e-3);
        });

    // A library's own curve of the same kind, at the points and between them.
    [Fact]
    public void A_smooth_curve_has_the_digits_of_the_library() =>
        Gen.Select(Gen.OneOf(Points, RisingPoints), Gen.Double[0, 1].Array[20]).Sample((points, shares) =>
        {
            var curve = new SmoothCurve(points);
            double[] xs = [.. points.Select(p => p.X)];
            double[] ys = [.. points.Select(p => p.Y)];
            IInterpolation library = xs.Length == 2
                ? LinearSpline.InterpolateSorted(xs, ys)
                : CubicSpline.InterpolatePchipSorted(xs, ys);
            foreach (double x in xs.Concat(shares.Select(share => curve.From + share * (curve.To - curve.From))))
            {
                double within = Math.Min(x, curve.To);
                Assert.Equal(library.Interpolate(within), curve.At(x));
                Assert.Equal(library.Differentiate(within), curve.Slope(x));
                Assert.Equal((curve.At(x), curve.Slope(x)), curve.Both(x));
            }
        });

    [Fact]
    public void Least_and_greatest_slope_are_those_of_dense_sampling() =>
        Gen.Select(Points, Gen.Double[0, 1], Gen.Double[0, 1]).Sample((points, a, b) =>
        {
            var curve = new SmoothCurve(points);
            double from = curve.From + Math.Min(a, b) * (curve.To - curve.From);
            double to = curve.From + Math.Max(a, b) * (curve.To - curve.From);
            double[] cuts = [from, .. curve.Knots.Where(x => x > from && x < to), to];
            double[] slopes = [.. cuts.Zip(cuts.Skip(1)).SelectMany(piece => Dense(piece.First, piece.Second).Select(curve.Slope))];
            (double least, double greatest) = curve.SlopeRange(from, to);

            // 2000 samples a piece miss a vertex by 1/4000 of it at most, and the parabola there by the
            // square of that.
            Assert.InRange(slopes.Min() - least, -1e-12, 1e-4);
            Assert.InRange(greatest - slopes.Max(), -1e-12, 1e-4);
            Assert.Equal(least, curve.LeastSlope(from, to));
        });

    [Fact]
    public void Two_points_make_a_line() =>
        Gen.Select(Gen.Double[-2, 2], Gen.Double[0.1, 3], Gen.Double[-2, 2], Gen.Double[-2, 2], Gen.Double[0, 1])
            .Sample((x, width, y0, y1, share) =>
            {
                var curve = new SmoothCurve([(x, y0), (x + width, y1)]);

                Assert.Equal(y0 + share * (y1 - y0), curve.At(x + share * width), 1e-12);
                Assert.Equal((y1 - y0) / width, curve.Slope(x + share * width), 1e-10);
                Assert.Equal((y1 - y0) / width, curve.LeastSlope(x, x + width), 1e-10);
            });

    // A travel that comes back from a ratio by a rounding error is still on the curve; anything more is not.
    [Fact]
    public void Nothing_is_read_outside_the_points()
    {
        var smooth = new SmoothCurve([(1, 5), (2, 6), (3, 8)]);
        LinearCurve table = LinearCurve.Table([(1, 5), (2, 6), (3, 8)]);

        Assert.Equal(5, smooth.At(1 - 5e-10), 1e-9);
        Assert.Equal(8, table.At(3 + 5e-10), 1e-8);
        foreach (double x in new[] { 1 - 1e-8, 3 + 1e-8, double.NaN, double.PositiveInfinity })
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => smooth.At(x));
            Assert.Throws<ArgumentOutOfRangeException>(() => smooth.Slope(x));
            Assert.Throws<ArgumentOutOfRangeException>(() => table.At(x));
            Assert.False(smooth.Covers(x, 2) && smooth.Covers(2, x));
            Assert.False(table.Covers(x, 2) && table.Covers(2, x));
        }
    }

    [Fact]
    public void Points_that_make_no_curve_are_refused()
    {
        (double X, double Y)[][] refused =
        [
            [],
            [(1, 2)],
            [(1, 2), (1, 3)],
            [(2, 2), (1, 3)],
            [(1, double.NaN), (2, 3)],
            [(1, 2), (double.PositiveInfinity, 3)],
        ];
        foreach ((double X, double Y)[] points in refused)
        {
            Assert.Throws<ArgumentException>(() => new SmoothCurve(points));
            Assert.Throws<ArgumentException>(() => LinearCurve.Table(points));
        }

        Assert.Contains("two points", Assert.Throws<ArgumentException>(() => new SmoothCurve([(1, 2)])).Message);
    }

    [Fact]
    public void Knots_lie_between_the_ends_of_the_range()
    {
        Assert.Equal([1, 2], LinearCurve.Table([(0, 5), (1, 6), (2, 8), (3, 9)]).Knots);
        Assert.Equal([0.1], LinearCurve.Line(x0: 0.1, y0: 50, slope: -20_000, from: 0.02, to: 0.2).Knots);
    }

    [Fact]
    public void A_table_runs_straight_between_its_points() =>
        Gen.Select(Points, Gen.Double[0, 1]).Sample((points, share) =>
        {
            LinearCurve table = LinearCurve.Table(points);
            for (int i = 1; i < points.Length; i++)
            {
                ((double x0, double y0), (double x1, double y1)) = (points[i - 1], points[i]);
                Assert.Equal(y0 + share * (y1 - y0), table.At(x0 + share * (x1 - x0)), 1e-12);
            }
        });

    // A force of two straight pieces: 100 to 300 N over 20 mm, then to 600 N over 10 mm more.
    [Fact]
    public void Energy_between_two_lengths_is_the_area_under_the_table()
    {
        LinearCurve force = LinearCurve.Table([(0, 100), (0.02, 300), (0.03, 600)]);

        Relative.Equal(200 * 0.02 + 450 * 0.01, force.Integral(0, 0.03), 1e-12);
        Relative.Equal(250 * 0.01 + 375 * 0.005, force.Integral(0.01, 0.025), 1e-12);
        Relative.Equal(-(200 * 0.02 + 450 * 0.01), force.Integral(0.03, 0), 1e-12);
        Assert.Equal(0, force.Integral(0.01, 0.01));
        Relative.Equal(150 * 0.01, LinearCurve.Table([(0, 100), (0.02, 300), (0.03, 600), (0.05, 700)]).Integral(0, 0.01), 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => force.Integral(0, 0.031));
    }

    // 10 at 1 and 30 at 2, moved by 0.5 and doubled: 20 at 1.5 and 60 at 2.5, and the last piece goes on for 0.25.
    [Fact]
    public void A_curve_is_moved_scaled_and_raised()
    {
        LinearCurve table = LinearCurve.Table([(0, 0), (1, 10), (2, 30)]);
        LinearCurve moved = table.Moved(shift: 0.5, scale: 2, play: 0.25);

        Assert.Equal(20, moved.At(1.5), 1e-12);
        Assert.Equal(60, moved.At(2.5), 1e-12);
        Assert.Equal(70, moved.At(2.75), 1e-12);
        Assert.Equal(-5, moved.At(0.25), 1e-12);
        Assert.Equal((0.25, 2.75), (moved.From, moved.To));
        Assert.Equal(23, table.Raised(3).At(1.5), 1e-12);
        Assert.Equal((0, 2), (table.Raised(3).From, table.Raised(3).To));
    }

    // A zigzag: 1, 5, 2, 7 at 0, 1, 2, 3; between 0.5 and 2.5 the tops and the ends decide.
    [Theory]
    [InlineData(0.5, 2.5, 2, 5)]
    [InlineData(0.5, 0.75, 3, 4)]
    [InlineData(0, 3, 1, 7)]
    [InlineData(1, 2, 2, 5)]
    public void Ends_and_knots_between_them_hold_the_extremes(double from, double to, double least, double greatest)
    {
        LinearCurve zigzag = LinearCurve.Table([(0, 1), (1, 5), (2, 2), (3, 7)]);
        Assert.Equal((least, greatest), Extremes.Of(zigzag.At, [0, 1, 2, 3], from, to));
    }

    [Fact]
    public void A_line_is_the_same_by_slope_and_by_two_points_in_either_order()
    {
        LinearCurve bySlope = LinearCurve.Line(x0: 0.1, y0: 50, slope: -20_000, from: 0.02, to: 0.2);
        LinearCurve byPoints = LinearCurve.Through((0.1, 50), (0.05, 1050), 0.02, 0.2);
        LinearCurve turned = LinearCurve.Through((0.05, 1050), (0.1, 50), 0.02, 0.2);

        foreach (double x in new[] { 0.02, 0.05, 0.07, 0.1, 0.2 })
        {
            Assert.Equal(50 - 20_000 * (x - 0.1), bySlope.At(x), 1e-9);
            Assert.Equal(bySlope.At(x), byPoints.At(x), 1e-9);
            Assert.Equal(bySlope.At(x), turned.At(x), 1e-9);
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => bySlope.At(0.019));
    }

    [Fact]
    public void A_line_without_slope_or_range_is_refused()
    {
        Assert.Throws<ArgumentException>(() => LinearCurve.Through((0.1, 50), (0.1, 60), 0, 1));
        Assert.Throws<ArgumentException>(() => LinearCurve.Line(0, 0, 1, from: 1, to: 1));
        Assert.Throws<ArgumentException>(() => LinearCurve.Line(0, 0, double.NaN, 0, 1));
    }

    private static IEnumerable<double> Dense(double from, double to) =>
        Enumerable.Range(0, 2001).Select(i => from + (to - from) * (i / 2000.0));

    private static Gen<(double X, double Y)[]> PointsWith(Gen<double> rises) =>
        from count in Gen.Int[2, 8]
        from start in Gen.Double[-1, 1]
        from level in Gen.Double[-1, 1]
        from gaps in Gen.Double[0.1, 2].Array[count]
        from steps in rises.Array[count]
        select Enumerable.Range(0, count)
            .Select(i => (start + gaps.Take(i).Sum(), level + steps.Take(i).Sum()))
            .ToArray();
}
