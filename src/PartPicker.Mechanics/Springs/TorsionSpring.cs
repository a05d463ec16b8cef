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
    /// <param name="form">Without coil friction, unless said.</param>
    /// <remarks>
    /// Coil friction is left out unless the form allows for it: with 10.8 per turn it reads 6 % softer.
    /// Source: [EN 13906-3]; [SHI] eq. 10-50, 10-51.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A length or the coil number is not positive.</exception>
    public static RotationalStiffness TwistRate(
        Pressure elasticModulus, Length wireDiameter, Length meanDiameter, double activeCoils,
        TwistForm form = TwistForm.Plain)
    {
        double e = elasticModulus.Pascals;
        double d = wireDiameter.Meters;
        double D = meanDiameter.Meters;
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(d, nameof(wireDiameter));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(D, nameof(meanDiameter));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(activeCoils);
        return RotationalStiffness.FromNewtonMetersPerRadian(e * Math.Pow(d, 4) / (PerRadian(form) * D * activeCoils));
    }

    /// <summary>Mean diameter of a body wound up by a twist: D′ = N_b D / (N_b + θ_b).</summary>
    /// <param name="meanDiameter">D, mean coil diameter at rest.</param>
    /// <param name="bodyCoils">N_b, coils of the body.</param>
    /// <param name="bodyTwistTurns">θ_b, twist of the body in turns, positive where it closes; above −N_b.</param>
    /// <remarks>The wire keeps its length, so more turns share it. Source: [SHI] eq. 10-53; [JIN] ex. 8-9.</remarks>
    public static Length WoundMeanDiameter(Length meanDiameter, double bodyCoils, double bodyTwistTurns) =>
        Length.FromMeters(bodyCoils * meanDiameter.Meters / (bodyCoils + bodyTwistTurns));

    /// <summary>Active coils with the share of the legs: Nₐ = N_b + (l₁ + l₂)/(3πD).</summary>
    /// <param name="bodyCoils">N_b, coils of the body.</param>
    /// <param name="bothLegs">l₁ + l₂, straight length of both legs.</param>
    /// <param name="meanDiameter">D, mean coil diameter.</param>
    /// <remarks>Source: [SHI] eq. 10-47, 10-48; [JIN] ex. 8-9.</remarks>
    public static double ActiveCoils(double bodyCoils, Length bothLegs, Length meanDiameter) =>
        bodyCoils + bothLegs.Meters / (3 * Math.PI * meanDiameter.Meters);

    /// <summary>Length of the wound body with all coils touching: d (N_b + 1 + θ).</summary>
    /// <param name="wireDiameter">d, wire diameter.</param>
    /// <param name="bodyCoils">N_b, coils of the body.</param>
    /// <param name="twistTurns">θ, twist in turns, positive where it closes.</param>
    /// <remarks>Source: [JIN] ch. 8; [EN 13906-3].</remarks>
    public static Length WoundSolidLength(Length wireDiameter, double bodyCoils, double twistTurns) =>
        Length.FromMeters(wireDiameter.Meters * (bodyCoils + 1 + twistTurns));

    private static double PerRadian(TwistForm form) => form switch
    {
        TwistForm.Plain => 64,
        TwistForm.WithCoilFriction => 10.8 * 2 * Math.PI,
        _ => throw new ArgumentOutOfRangeException(nameof(form), form, "No such form."),
    };
}

/// <summary>Two forms of the twist rate; a catalog is computed with one of them only.</summary>
public enum TwistForm
{
    /// <summary>64 per radian: bending alone.</summary>
    Plain,

    /// <summary>10.8 per turn: friction between coils and arbor allowed for.</summary>
    WithCoilFriction,
}
