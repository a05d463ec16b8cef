using System.Runtime.InteropServices;

namespace PartPicker.Mechanics;

/// <summary>The engine speed at which the drive clutch takes the belt.</summary>
/// <param name="Rpm">ω_e as rpm.</param>
/// <param name="Travel">The travel (m) that decides it.</param>
public readonly record struct Engagement(double Rpm, double Travel)
{
    /// <summary>
    /// The sheave must pass every travel before contact: ω_e = max over 0 ≤ x ≤ x_c of √(F₁(x) / ((1 − f) a_f W(x))).
    /// </summary>
    /// <param name="spring">Force (N) of the drive spring over its length (m).</param>
    /// <param name="springLength">l₁, its length at x = 0 (m); F₁(x) = F(l₁ − x).</param>
    /// <param name="flyweights">The flyweight set, with W positive up to contact.</param>
    /// <param name="contactTravel">x_c (m).</param>
    /// <param name="frictionShare">f, share of flyweight thrust lost to friction.</param>
    /// <param name="flyweightFactor">a_f, factor on flyweight thrust from a measured run; 1 without.</param>
    /// <remarks>
    /// At x_c alone the answer is too low wherever a notch in the arm holds the flyweight back. A spring that
    /// is loose at rest does not fit and is refused before. Source: balance of spring and virtual work.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The travel leaves a curve.</exception>
    /// <exception cref="ArgumentException">The spring nowhere pushes, or the flyweights have no thrust.</exception>
    public static Engagement Of(
        LinearCurve spring,
        double springLength,
        FlyweightSet flyweights,
        double contactTravel,
        double frictionShare,
        double flyweightFactor = 1)
    {
        List<double> cuts = [0, contactTravel];
        for (int i = 0; i < flyweights.Masses.Count; i++)
        {
            foreach (double x in flyweights.Masses[i].Radius.Knots)
                Add(x);
        }

        foreach (double length in spring.Knots)
            Add(springLength - length);
        cuts.Sort();
        (double travel, double ratio) = Maximum.Of(
            new ForceOverThrust(spring, springLength, flyweights), CollectionsMarshal.AsSpan(cuts));
        if (!(ratio > 0 && double.IsFinite(ratio)))
            throw new ArgumentException("Before contact the drive spring and the flyweights must both push.");
        double speed = Math.Sqrt(ratio / ((1 - frictionShare) * flyweightFactor));
        return new Engagement(Rotation.ToRpm(speed), travel);

        void Add(double x)
        {
            if (x > 0 && x < contactTravel && !cuts.Contains(x))
                cuts.Add(x);
        }
    }

    private readonly struct ForceOverThrust(LinearCurve spring, double springLength, FlyweightSet flyweights) : IFunction
    {
        public double At(double x) => spring.At(springLength - x) / flyweights.ThrustPerSpeedSquared(x);
    }
}
