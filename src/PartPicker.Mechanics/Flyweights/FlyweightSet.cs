namespace PartPicker.Mechanics;

/// <summary>All flyweights of a drive clutch: equal arms, each a body and its station masses.</summary>
/// <remarks>
/// By virtual work the axial thrust is F_fly(x, ω) = ½ ω² dJ/dx = ω² W(x), with W(x) = z Σ m r r′: z arms,
/// masses m (kg) at radii of gyration r(x) (m) about the shaft over sheave travel x (m). A lever with r′
/// constant is a Hartnell governor; a roller in a ramp is r′ = cot(ramp angle). Valid where r′ is positive and
/// x lies within the points of every curve. Source: virtual work; [KG] ch. 18 for the lever.
/// </remarks>
public sealed class FlyweightSet
{
    /// <summary>Radius gained per travel: below this an arm stands still and its engagement speed has no meaning.</summary>
    public const double LeastRadiusSlope = 1e-6;

    private readonly int armCount;
    private readonly (double Mass, SmoothCurve Radius)[] masses;

    /// <param name="armCount">z, number of arms.</param>
    /// <param name="masses">Mass of one arm's body and stations (kg), each with its radius over travel (m).</param>
    /// <exception cref="ArgumentException">No arm, no mass, or a mass that is negative or not finite.</exception>
    public FlyweightSet(int armCount, IEnumerable<(double MassKg, SmoothCurve Radius)> masses)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(armCount, 1);
        this.armCount = armCount;
        this.masses = [.. masses];
        if (this.masses.Any(m => !(m.Mass >= 0 && double.IsFinite(m.Mass)))
            || !(this.masses.Sum(m => m.Mass) > 0))
        {
            throw new ArgumentException("A flyweight set needs mass, and none that is negative.", nameof(masses));
        }
    }

    /// <summary>z, number of arms.</summary>
    public int ArmCount => armCount;

    /// <summary>Mass of one arm's body and stations (kg), each with its radius over travel (m), as they were given.</summary>
    public IReadOnlyList<(double Mass, SmoothCurve Radius)> Masses => masses;

    /// <summary>Every travel where a curve has a point.</summary>
    public IEnumerable<double> Knots => masses.SelectMany(m => m.Radius.Knots);

    /// <summary>W(x) = z Σ m r r′, in kg·m: thrust per squared engine speed (rad/s)².</summary>
    /// <exception cref="ArgumentOutOfRangeException">x lies outside a radius curve.</exception>
    public double ThrustPerSpeedSquared(double travel)
    {
        double sum = 0;
        foreach ((double mass, SmoothCurve radius) in masses)
        {
            (double at, double slope) = radius.Both(travel);
            sum += mass * at * slope;
        }

        return armCount * sum;
    }

    /// <summary>Two numbers (kg·m) between which W stays over a span of travel; near each other where the span is short.</summary>
    /// <remarks>Each mass by itself: from the least and the greatest slope r stays between two lines, and so does r r′.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The span leaves a radius curve.</exception>
    public (double Least, double Greatest) ThrustRange(double from, double to)
    {
        double least = 0;
        double greatest = 0;
        foreach ((double mass, SmoothCurve radius) in masses)
        {
            (double flat, double steep) = radius.SlopeRange(from, to);
            double start = radius.At(from);
            double low = flat >= 0 ? start : start + flat * (to - from);
            double high = flat >= 0 ? radius.At(to) : start + Math.Max(0, steep) * (to - from);
            least += mass * Math.Min(flat * low, flat * high);
            greatest += mass * Math.Max(steep * low, steep * high);
        }

        return (armCount * least, armCount * greatest);
    }

    /// <summary>F_fly(x, ω) = ω² W(x), in N.</summary>
    /// <param name="travel">x, sheave travel from rest (m).</param>
    /// <param name="speed">ω, engine speed (rad/s).</param>
    /// <exception cref="ArgumentOutOfRangeException">x lies outside a radius curve.</exception>
    public double Thrust(double travel, double speed) => speed * speed * ThrustPerSpeedSquared(travel);
}
