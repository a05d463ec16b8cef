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
    /// <remarks>For d and N_t above 0. Source: [SHI] Table 10-1 (plain and closed: d(N_t + 1); plain ground and closed ground: d N_t).</remarks>
    public static Length SolidLength(Length wireDiameter, double totalCoils, bool groundEnds) =>
        Length.FromMeters(wireDiameter.Meters * (groundEnds ? totalCoils : totalCoils + 1));

    /// <summary>Clearance that shall remain between active coils: S_a = Nₐ (0.0015 D²/d + 0.1 d).</summary>
    /// <param name="wireDiameter">d, wire diameter.</param>
    /// <param name="meanDiameter">D, mean coil diameter.</param>
    /// <param name="activeCoils">Nₐ, coils that deflect.</param>
    /// <remarks>For cold-coiled springs under static load, d, D and Nₐ above 0. Source: [EN 13906-1].</remarks>
    public static Length CoilClearance(Length wireDiameter, Length meanDiameter, double activeCoils)
    {
        double d = wireDiameter.Meters;
        double D = meanDiameter.Meters;
        return Length.FromMeters(activeCoils * (0.0015 * D * D / d + 0.1 * d));
    }

    /// <summary>Index within which the relations are good practice: C = D/d.</summary>
    public static readonly ValidRange IndexRange = new(
        "spring-index", "mean coil diameter over wire diameter", 4, 20, "",
        "Below, the inside of the coil is overstressed and hard to wind; above, the coil is limp.", "[EN 15800]; [SHI] ch. 10");

    /// <summary>Active coils: Nₐ = N_t − N_e.</summary>
    /// <param name="totalCoils">N_t, all coils; above N_e, or none deflects.</param>
    /// <param name="ends">How the ends are made: N_e.</param>
    /// <remarks>Source: [SHI] Table 10-1.</remarks>
    public static double ActiveCoils(double totalCoils, CoilEnds ends) => totalCoils - ends.DeadCoils;

    /// <summary>Pitch at a length: p = (L − w d)/(Nₐ + e), with w wires in the ends, e = 1 for open ground ends and else 0.</summary>
    /// <param name="length">L, free or compressed length.</param>
    /// <param name="wireDiameter">d, wire diameter.</param>
    /// <param name="activeCoils">Nₐ, coils that deflect.</param>
    /// <param name="ends">How the ends are made.</param>
    /// <remarks>For L above the wires of the ends and Nₐ above 0. Source: [SHI] Table 10-1: (L − d)/Nₐ, L/(Nₐ + 1), (L − 3d)/Nₐ, (L − 2d)/Nₐ.</remarks>
    public static Length Pitch(Length length, Length wireDiameter, double activeCoils, CoilEnds ends) => Length.FromMeters(
        (length.Meters - ends.EndWires * wireDiameter.Meters) / (activeCoils + ends.ClimbingDeadCoils));

    /// <summary>Outside diameter when compressed: D_e = √(D² + (p₀² − p²)/π²) + d.</summary>
    /// <param name="wireDiameter">d, wire diameter.</param>
    /// <param name="meanDiameter">D, mean coil diameter at free length.</param>
    /// <param name="freePitch">p₀, pitch at free length.</param>
    /// <param name="pitch">p, pitch as compressed, no larger than p₀.</param>
    /// <remarks>The wire keeps its length and the coils their number; NaN where p is far above p₀. Source: [SHI] ch. 10, at solid; else derived.</remarks>
    public static Length GrownOutsideDiameter(Length wireDiameter, Length meanDiameter, Length freePitch, Length pitch)
    {
        double D = meanDiameter.Meters;
        double climb = (freePitch.Meters * freePitch.Meters - pitch.Meters * pitch.Meters) / (Math.PI * Math.PI);
        return Length.FromMeters(Math.Sqrt(D * D + climb) + wireDiameter.Meters);
    }

    /// <summary>Most that the outside diameter grows to solid: ΔD_e = 0.1 (m² − 0.8 m d − 0.2 d²)/D.</summary>
    /// <param name="wireDiameter">d, wire diameter.</param>
    /// <param name="meanDiameter">D, mean coil diameter.</param>
    /// <param name="freePitch">m, pitch of the active coils at free length: (s_c + n d)/n with s_c the way to solid.</param>
    /// <remarks>For ends that may turn: a bound on <see cref="GrownOutsideDiameter"/>. Source: [EN 13906-1].</remarks>
    public static Length GreatestGrowth(Length wireDiameter, Length meanDiameter, Length freePitch)
    {
        double d = wireDiameter.Meters;
        double m = freePitch.Meters;
        return Length.FromMeters(0.1 * (m * m - 0.8 * m * d - 0.2 * d * d) / meanDiameter.Meters);
    }

    /// <summary>First frequency of the spring by itself between fixed ends: f = d/(2√2 π Nₐ D²) √(G/ρ).</summary>
    /// <param name="shearModulus">G, shear modulus of the wire.</param>
    /// <param name="density">ρ, density of the wire: 7850 kg/m³ for steel.</param>
    /// <param name="wireDiameter">d, wire diameter.</param>
    /// <param name="meanDiameter">D, mean coil diameter.</param>
    /// <param name="activeCoils">Nₐ, coils that deflect.</param>
    /// <remarks>For all above 0. It is ½ √(k/m) with m the mass of the active coils. Source: [SHI] ch. 10; [EN 13906-1] 9.12.</remarks>
    public static Frequency Surge(
        Pressure shearModulus, Density density, Length wireDiameter, Length meanDiameter, double activeCoils) =>
        Frequency.FromHertz(
            wireDiameter.Meters / (2 * Math.Sqrt(2) * Math.PI * activeCoils * meanDiameter.Meters * meanDiameter.Meters)
            * Math.Sqrt(shearModulus.Pascals / density.KilogramsPerCubicMeter));

    /// <summary>By how much a twist stiffens the axial rate: (1 + θ/Nₐ)².</summary>
    /// <param name="twistTurns">θ, twist that closes the coil, in turns; above −Nₐ.</param>
    /// <param name="activeCoils">Nₐ, coils that deflect.</param>
    /// <remarks>
    /// Wound up, the same wire has Nₐ + θ coils of D Nₐ/(Nₐ + θ), and the rate goes by 1/(D³ Nₐ). Derived, not published.
    /// </remarks>
    public static double TwistStiffening(double twistTurns, double activeCoils) =>
        (1 + twistTurns / activeCoils) * (1 + twistTurns / activeCoils);
}
