using CsCheck;
using PartPicker.Mechanics;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>The cam's turn against its integral, for any list of points.</summary>
public sealed class HelixCamTests
{
    private const double Radius = 0.04;

    // Some neighbours differ by next to nothing, where ln(sin b/sin a) would lose its digits.
    private static readonly Gen<(double Travel, double Angle)[]> PointLists =
        from count in Gen.Int[1, 5]
        from start in Gen.Double[-0.002, 0.004]
        from first in Gen.Double[0.4, 1.2]
        from gaps in Gen.Double[0.001, 0.006].Array[count]
        from changes in Gen.OneOf(Gen.Double[-0.05, 0.05], Gen.Double[-3e-7, 3e-7], Gen.Const(0.0)).Array[count]
        select Enumerable.Range(0, count)
            .Select(i => (start + gaps.Take(i).Sum(), first + changes.Take(i).Sum()))
            .ToArray();

    [Fact]
    public void Turn_is_the_integral_of_travel_over_the_lead() =>
        Gen.Select(PointLists, Gen.Double[0, 0.025]).Sample((points, opening) =>
        {
            var cam = new HelixCam(points, Radius);

            Relative.Equal(Integral(cam, points, opening), cam.Turn(opening), 1e-11);
        });

    // Over one straight piece the turn is ln(sin b/sin a)/(r_c dα/dy): the form in which it is usually
    // written.
    [Fact]
    public void Turn_over_one_slope_is_the_logarithm_of_the_sines() =>
        Gen.Select(Gen.Double[0.5, 0.9], Gen.Double[0.01, 0.3]).Sample((a, rise) =>
        {
            var cam = new HelixCam([(0, a), (0.02, a + rise)], Radius);

            double logarithm = Math.Log(Math.Sin(a + rise) / Math.Sin(a));
            Relative.Equal(logarithm / (Radius * rise / 0.02), cam.Turn(0.02), 1e-12);
        });

    [Fact]
    public void Turn_of_a_straight_helix_is_travel_over_its_lead()
    {
        var cam = new HelixCam([(0, Math.PI / 3)], Radius);

        Assert.Equal(0, cam.Turn(0));
        Relative.Equal(0.25 / Math.Sqrt(3), cam.Turn(0.01), 1e-14);
    }

    [Fact]
    public void Angle_runs_straight_between_points_and_stays_beyond_them()
    {
        var cam = new HelixCam([(0.002, 0.6), (0.006, 0.8)], Radius);

        Assert.Equal(0.6, cam.Angle(0));
        Assert.Equal(0.6, cam.Angle(0.002));
        Assert.Equal(0.65, cam.Angle(0.003), 1e-15);
        Assert.Equal(0.8, cam.Angle(0.006), 1e-15);
        Assert.Equal(0.8, cam.Angle(0.02));
    }

    [Fact]
    public void Angle_range_is_that_of_every_angle_on_the_way() =>
        Gen.Select(PointLists, Gen.Double[0.0001, 0.025]).Sample((points, opening) =>
        {
            var cam = new HelixCam(points, Radius);
            double[] angles = [.. Enumerable.Range(0, 2001).Select(i => cam.Angle(opening * i / 2000))];
            (double least, double greatest) = cam.AngleRange(opening);

            // Between samples a line of 0.05 rad over 1 mm or more moves by less than this.
            Assert.InRange(angles.Min() - least, -1e-12, 7e-4);
            Assert.InRange(greatest - angles.Max(), -1e-12, 7e-4);
        });

    [Fact]
    public void Points_that_make_no_helix_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new HelixCam([], Radius));
        Assert.Throws<ArgumentException>(() => new HelixCam([(0, 0)], Radius));
        Assert.Throws<ArgumentException>(() => new HelixCam([(0, Math.PI / 2)], Radius));
        Assert.Throws<ArgumentException>(() => new HelixCam([(0, double.NaN)], Radius));
        Assert.Throws<ArgumentException>(() => new HelixCam([(0, 0.7), (0.01, 0)], Radius));
        Assert.Throws<ArgumentException>(() => new HelixCam([(0, 0.7), (0, 0.8)], Radius));
        Assert.Throws<ArgumentException>(() => new HelixCam([(0, 0.7)], 0));
    }

    // Simpson's rule over each straight piece of 1/(r_c tan α).
    private static double Integral(HelixCam cam, (double Travel, double Angle)[] points, double opening)
    {
        const int intervals = 200;
        double sum = 0;
        double from = 0;
        foreach (double to in points.Select(p => p.Travel).Where(y => y > 0 && y < opening).Append(opening))
        {
            double h = (to - from) / intervals;
            for (int i = 0; i <= intervals; i++)
            {
                double weight = i is 0 or intervals ? 1 : i % 2 == 1 ? 4 : 2;
                sum += weight * h / 3 / (Radius * Math.Tan(cam.Angle(from + i * h)));
            }

            from = to;
        }

        return sum;
    }
}
