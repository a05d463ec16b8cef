using UnitsNet;

namespace PartPicker.Mechanics;

/// <summary>Closed-form relations for round-wire helical springs that are twisted.</summary>
public static class TorsionSpring
{
    /// <summary>Twist stiffness per radian: κ = E d⁴ / (64 D Nₐ).</summary>
    /// <param name="elasticModulus">E, Young's modulus of the wire.</param>
    /// <param name="wireDiameter">d, wire diameter.</param>
    /// <param name="meanDiameter">D, mean coil diameter: outside diameter less one wire.</param>
    /// <param name="activeCoils">Nₐ, coils that deflect, the legs' share included.</param>
    /// <remarks>
    /// Coil friction is left out; the form with 10.8 per turn, which allows for it, reads 6 % softer and is
    /// not used here. Source: [EN 13906-3]; [SHI] eq. 10-50.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A length or the coil number is not positive.</exception>
    public static RotationalStiffness TwistRate(
        Pressure elasticModulus, Length wireDiameter, Length meanDiameter, double activeCoils)
    {
        double e = elasticModulus.Pascals;
        double d = wireDiameter.Meters;
        double D = meanDiameter.Meters;
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(d, nameof(wireDiameter));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(D, nameof(meanDiameter));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(activeCoils);
        return RotationalStiffness.FromNewtonMetersPerRadian(e * Math.Pow(d, 4) / (64 * D * activeCoils));
    }

    /// <summary>Mean diameter of a body wound up by a twist: D′ = N_b D / (N_b + θ_b).</summary>
    /// <param name="meanDiameter">D, mean coil diameter at rest.</param>
    /// <param name="bodyCoils">N_b, coils of the body.</param>
    /// <param name="bodyTwistTurns">θ_b, twist of the body in turns, positive where it closes; above −N_b.</param>
    /// <remarks>The wire keeps its length, so more turns share it. Source: [SHI] eq. 10-53; [JIN] ex. 8-9.</remarks>
    public static Length WoundMeanDiameter(Length meanDiameter, double bodyCoils, double bodyTwistTurns) =>
        Length.FromMeters(bodyCoils * meanDiameter.Meters / (bodyCoils + bodyTwistTurns));
}
