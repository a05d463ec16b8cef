using UnitsNet;

namespace PartPicker.Mechanics;

/// <summary>How the ends of a compression spring are held.</summary>
public enum EndFixing
{
    /// <summary>Both seats flat and parallel: ν = 0.5.</summary>
    BothFixed,

    /// <summary>One seat flat, the other free to tilt: ν = 0.707.</summary>
    FixedAndHinged,

    /// <summary>Both free to tilt: ν = 1.</summary>
    BothHinged,

    /// <summary>One held, the other free to tilt and to wander: ν = 2.</summary>
    FixedAndFree,
}

/// <summary>When a compression spring bows out, alone between its seats.</summary>
public static class SpringBuckling
{
    /// <summary>Deflection at which it bows: s_k = L₀ 0.5/(1 − G/E) [1 − √(1 − (1 − G/E)/(0.5 + G/E) (πD/(ν L₀))²)].</summary>
    /// <param name="freeLength">L₀, free length.</param>
    /// <param name="meanDiameter">D, mean coil diameter.</param>
    /// <param name="elasticModulus">E, Young's modulus.</param>
    /// <param name="shearModulus">G, shear modulus.</param>
    /// <param name="fixing">How the ends are held: ν.</param>
    /// <returns>Null where the root is imaginary: such a spring never bows.</returns>
    /// <remarks>For L₀ and D above 0 and G below E, as of every wire. Source: [EN 13906-1] 9.14, the form from memory.</remarks>
    public static Length? CriticalDeflection(
        Length freeLength, Length meanDiameter, Pressure elasticModulus, Pressure shearModulus, EndFixing fixing)
    {
        double ratio = shearModulus.Pascals / elasticModulus.Pascals;
        double slenderness = Math.PI * meanDiameter.Meters / (Seating(fixing) * freeLength.Meters);
        double root = 1 - (1 - ratio) / (0.5 + ratio) * slenderness * slenderness;
        return root < 0
            ? null
            : Length.FromMeters(freeLength.Meters * 0.5 / (1 - ratio) * (1 - Math.Sqrt(root)));
    }

    /// <summary>Free length below which it never bows: L₀ = (πD/ν) √(2(E − G)/(2G + E)).</summary>
    /// <param name="meanDiameter">D, mean coil diameter.</param>
    /// <param name="elasticModulus">E, Young's modulus.</param>
    /// <param name="shearModulus">G, shear modulus, below E.</param>
    /// <param name="fixing">How the ends are held: ν.</param>
    /// <remarks>Where the root of <see cref="CriticalDeflection"/> is zero. Source: [SHI] ch. 10, Table 10-2.</remarks>
    public static Length StableLength(
        Length meanDiameter, Pressure elasticModulus, Pressure shearModulus, EndFixing fixing)
    {
        double e = elasticModulus.Pascals;
        double g = shearModulus.Pascals;
        return Length.FromMeters(
            Math.PI * meanDiameter.Meters / Seating(fixing) * Math.Sqrt(2 * (e - g) / (2 * g + e)));
    }

    /// <summary>ν, by [SHI] Table 10-2.</summary>
    private static double Seating(EndFixing fixing) => fixing switch
    {
        EndFixing.BothFixed => 0.5,
        EndFixing.FixedAndHinged => 0.707,
        EndFixing.BothHinged => 1,
        EndFixing.FixedAndFree => 2,
        _ => throw new ArgumentOutOfRangeException(nameof(fixing), fixing, "No such fixing."),
    };
}
