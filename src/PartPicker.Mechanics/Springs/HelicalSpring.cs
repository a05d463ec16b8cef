using UnitsNet;

namespace PartPicker.Mechanics;

/// <summary>Closed-form relations for round-wire helical springs under compression.</summary>
public static class HelicalSpring
{
    /// <summary>Axial stiffness: k = G d⁴ / (8 D³ Nₐ).</summary>
    /// <param name="shearModulus">G, shear modulus of the wire.</param>
    /// <param name="wireDiameter">d, wire diameter.</param>
    /// <param name="meanDiameter">D, mean coil diameter: outside diameter less one wire.</param>
    /// <param name="activeCoils">Nₐ, coils that deflect; closed end coils are left out.</param>
    /// <remarks>Good practice for the index D/d is 4 to 20. Source: [SHI] eq. 10-9; [KG], [BHA] ch. 10.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A length or the coil number is not positive.</exception>
    public static ForcePerLength Rate(
        Pressure shearModulus, Length wireDiameter, Length meanDiameter, double activeCoils)
    {
        double g = shearModulus.Pascals;
        double d = wireDiameter.Meters;
        double D = meanDiameter.Meters;
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(d, nameof(wireDiameter));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(D, nameof(meanDiameter));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(activeCoils);
        return ForcePerLength.FromNewtonsPerMeter(g * Math.Pow(d, 4) / (8 * Math.Pow(D, 3) * activeCoils));
    }

    /// <summary>Length with all coils touching: L_s = d (N_t + 1), or d N_t where the ends are ground.</summary>
    /// <param name="wireDiameter">d, wire diameter.</param>
    /// <param name="totalCoils">N_t, all coils.</param>
    /// <param name="groundEnds">True where the ends are ground flat.</param>
    /// <remarks>Source: [SHI] Table 10-1 (plain and closed: d(N_t + 1); plain ground and closed ground: d N_t).</remarks>
    public static Length SolidLength(Length wireDiameter, double totalCoils, bool groundEnds) =>
        Length.FromMeters(wireDiameter.Meters * (groundEnds ? totalCoils : totalCoils + 1));

    /// <summary>Clearance that shall remain between active coils: S_a = Nₐ (0.0015 D²/d + 0.1 d).</summary>
    /// <param name="wireDiameter">d, wire diameter.</param>
    /// <param name="meanDiameter">D, mean coil diameter.</param>
    /// <param name="activeCoils">Nₐ, coils that deflect.</param>
    /// <remarks>For cold-coiled springs under static load. Source: [EN 13906-1].</remarks>
    public static Length CoilClearance(Length wireDiameter, Length meanDiameter, double activeCoils)
    {
        double d = wireDiameter.Meters;
        double D = meanDiameter.Meters;
        return Length.FromMeters(activeCoils * (0.0015 * D * D / d + 0.1 * d));
    }
}
