using CsCheck;
using PartPicker.Mechanics;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>Engagement is the greatest speed that any travel before contact asks for.</summary>
public sealed class EngagementTests
{
    private const double Length = 0.07;

    private static readonly Gen<Notched> Cases =
        from contact in Gen.Double[0.001, 0.012]
        from radiusSteps in Gen.Double[0.0001, 0.004].Array[6]
        from tipSteps in Gen.Double[0.0001, 0.003].Array[4]
        from mass in Gen.Double[0.02, 0.08]
        from tip in Gen.Double[0, 0.02]
        from preload in Gen.Double[100, 800]
        from forces in Gen.Double[1, 300].Array[7]
        from friction in Gen.Double[0, 0.1]
        select new Notched(contact, radiusSteps, tipSteps, mass, tip, preload, forces, friction);

    [Fact]
    public void Engagement_is_the_maximum_of_a_dense_grid() => Cases.Sample(IsTheMaximumOfAGrid);

    // Two tops of like height, the lower of which shows the highest sample: found at random, 0.1 % of the
    // speed.
    [Fact]
    public void The_higher_of_two_like_tops_decides() => IsTheMaximumOfAGrid(new Notched(
        Contact: 0.0119,
        RadiusSteps: [0.002836, 0.001972, 0.000431, 0.001666, 0.000616, 0.001896],
        TipSteps: [0.002736, 0.001752, 0.002501, 0.002828],
        Mass: 0.0285,
        Tip: 0,
        Preload: 573,
        ForceSteps: [265, 196, 229.3, 296, 288.5, 114.5, 134.7],
        Friction: 0));

    // With a line of radius and a line of force every piece is known: 400 N at rest, 20 N/mm, 3 arms of 50 g.
    [Fact]
    public void With_straight_curves_contact_decides()
    {
        var arms = new FlyweightSet(3, [(0.05, new SmoothCurve([(0, 0.04), (0.02, 0.05)]))]);
        LinearCurve spring = LinearCurve.Line(Length, 400, -20_000, 0.04, Length);

        Engagement engagement = Engagement.Of(spring, Length, arms, contactTravel: 0.004, frictionShare: 0.1);

        Assert.Equal(0.004, engagement.Travel);
        Relative.Equal(
            30 / Math.PI * Math.Sqrt(480 / (0.9 * 3 * 0.05 * 0.042 * 0.5)), engagement.Rpm, 1e-12);
    }

    // A spring that binds for a moment at 2.05 mm, in between the samples: 600 N there, where r is 41.025 mm.
    [Fact]
    public void A_narrow_hump_of_the_spring_is_not_passed_over()
    {
        var arms = new FlyweightSet(3, [(0.05, new SmoothCurve([(0, 0.04), (0.02, 0.05)]))]);
        LinearCurve spring = LinearCurve.Table([(0.06, 500), (0.06794, 441), (0.06795, 600), (0.06796, 440), (Length, 400)]);

        Engagement engagement = Engagement.Of(spring, Length, arms, contactTravel: 0.004, frictionShare: 0);

        Assert.Equal(0.00205, engagement.Travel, 1e-12);
        Relative.Equal(30 / Math.PI * Math.Sqrt(600 / (3 * 0.05 * 0.041025 * 0.5)), engagement.Rpm, 1e-9);
    }

    [Fact]
    public void A_measured_factor_on_flyweight_thrust_moves_engagement_by_its_root() =>
        Gen.Select(Cases, Gen.Double[0.7, 1.4]).Sample((notched, factor) =>
            Relative.Equal(
                notched.Engage().Rpm / Math.Sqrt(factor),
                Engagement.Of(
                    notched.Spring(), Length, notched.Arms(), notched.Contact, notched.Friction, factor).Rpm,
                1e-9));

    [Fact]
    public void Belt_contact_at_rest_leaves_one_travel_to_pass()
    {
        var arms = new FlyweightSet(3, [(0.05, new SmoothCurve([(0, 0.04), (0.02, 0.05)]))]);

        Engagement engagement = Engagement.Of(
            LinearCurve.Line(Length, 400, -20_000, 0.04, Length), Length, arms, contactTravel: 0, frictionShare: 0);

        Assert.Equal(0, engagement.Travel);
        Relative.Equal(30 / Math.PI * Math.Sqrt(400 / (3 * 0.05 * 0.04 * 0.5)), engagement.Rpm, 1e-12);
    }

    [Fact]
    public void A_spring_that_never_pushes_gives_no_engagement()
    {
        var arms = new FlyweightSet(3, [(0.05, new SmoothCurve([(0, 0.04), (0.02, 0.05)]))]);
        LinearCurve loose = LinearCurve.Line(0.05, 0, -20_000, 0.01, 0.2);

        Assert.Throws<ArgumentException>(() => Engagement.Of(loose, Length, arms, 0.004, 0));
        Assert.Throws<ArgumentException>(() => Engagement.Of(LinearCurve.Line(0, 0, 0, 0.01, 0.2), Length, arms, 0.004, 0));
    }

    // Written out plainly, with a list of everything that is looked at: the digits must be the same.
    [Fact]
    public void Engagement_has_the_digits_of_a_plain_search() => Cases.Sample(notched =>
    {
        (double travel, double ratio) = PlainMaximum(
            x => notched.Spring().At(Length - x) / notched.Arms().ThrustPerSpeedSquared(x),
            [0, .. notched.Corners.Where(x => x > 0 && x < notched.Contact).Distinct().Order(), notched.Contact]);

        Assert.Equal(
            new Engagement(Rotation.ToRpm(Math.Sqrt(ratio / (1 - notched.Friction))), travel), notched.Engage());
    });

    private static (double X, double Value) PlainMaximum(Func<double, double> f, double[] cuts)
    {
        List<double> xs = [.. cuts.Skip(1).SelectMany((end, i) =>
            Enumerable.Range(0, 16).Select(s => cuts[i] + (end - cuts[i]) * s / 16)), cuts[^1]];
        double[] values = [.. xs.Select(f)];
        (double X, double Value) best = (xs[0], values[0]);
        for (int i = 0; i < xs.Count; i++)
        {
            if ((i > 0 && values[i] < values[i - 1]) || (i < xs.Count - 1 && values[i] < values[i + 1]))
                continue;
            int before = Math.Max(i - 1, 0);
            int after = Math.Min(i + 1, xs.Count - 1);
            foreach (double place in new[] { xs[i], Golden(xs[before], xs[i]), Golden(xs[i], xs[after]) })
                best = f(place) > best.Value ? (place, f(place)) : best;
        }

        return best;

        // The larger part of the bracket, again and again, to 1e-8 of what it was; knots may lie one rounding apart.
        double Golden(double from, double to)
        {
            double share = (Math.Sqrt(5) - 1) / 2;
            double enough = 1e-8 * (to - from);
            (double a, double b) = (to - share * (to - from), from + share * (to - from));
            for (int step = 0; step < 100 && to - from > enough; step++)
            {
                if (f(a) > f(b))
                {
                    (to, b) = (b, a);
                    a = to - share * (to - from);
                }
                else
                {
                    (from, a) = (a, b);
                    b = from + share * (to - from);
                }
            }

            return (from + to) / 2;
        }
    }

    private static void IsTheMaximumOfAGrid(Notched notched)
    {
        Engagement engagement = notched.Engage();
        double grid = Enumerable.Range(0, 10_001).Select(i => notched.Contact * i / 10_000)
            .Concat(notched.Corners)
            .Max(notched.RpmAt);

        // The grid cannot be above the maximum, and misses a smooth top between its points by little.
        Assert.InRange(engagement.Rpm / grid, 1 - 1e-12, 1 + 2e-6);
        Assert.InRange(engagement.Travel, 0, notched.Contact);
        Relative.Equal(engagement.Rpm, notched.RpmAt(engagement.Travel), 1e-12);
    }

    private sealed record Notched(
        double Contact, double[] RadiusSteps, double[] TipSteps, double Mass, double Tip, double Preload,
        double[] ForceSteps, double Friction)
    {
        /// <summary>Where a curve has a point, and the speed may have a corner.</summary>
        public IEnumerable<double> Corners =>
            Arms().Knots.Concat(Spring().Knots.Select(l => Length - l)).Where(x => x >= 0 && x <= Contact);

        public Engagement Engage() => Engagement.Of(Spring(), Length, Arms(), Contact, Friction);

        public double RpmAt(double travel) => 30 / Math.PI * Math.Sqrt(
            Spring().At(Length - travel) / ((1 - Friction) * Arms().ThrustPerSpeedSquared(travel)));

        // The ends of a smooth curve may be level: a little mass on a line keeps some thrust everywhere.
        public FlyweightSet Arms() => arms ??= new FlyweightSet(
            3,
            [
                (Mass, Radius(RadiusSteps)),
                (Tip, Radius(TipSteps)),
                (0.002, new SmoothCurve([(0, 0.04), (0.012, 0.05)])),
            ]);

        public LinearCurve Spring() => spring ??= LinearCurve.Table(
            Sums(ForceSteps).Select((more, i) => (Length - 0.002 * i, Preload + more)).Reverse());

        private FlyweightSet? arms;
        private LinearCurve? spring;

        private static SmoothCurve Radius(double[] steps) =>
            new(Sums(steps).Select((more, i) => (0.012 * i / steps.Length, 0.04 + more)));

        private static IEnumerable<double> Sums(double[] steps) =>
            Enumerable.Range(0, steps.Length + 1).Select(i => steps.Take(i).Sum());
    }
}
