using UnitsNet;

namespace PartPicker.Mechanics;

/// <summary>What a shear stress is multiplied by.</summary>
public enum ShearFactor
{
    /// <summary>Nothing: pure torsion of a straight wire, as [EN 13906-1] compares it at solid.</summary>
    None,

    /// <summary>K_s = 1 + 0.5/C: direct shear only, for static load after the set is removed.</summary>
    Direct,

    /// <summary>K_w = (4C − 1)/(4C − 4) + 0.615/C: direct shear and curvature.</summary>
    Wahl,

    /// <summary>K_B = (4C + 2)/(4C − 3): the same, within 1 %; [EN 13906-1] writes it (w + 0.5)/(w − 0.75).</summary>
    Bergstraesser,
}

/// <summary>Stress in the round wire of a helical spring, pushed and twisted.</summary>
public static class SpringStress
{
    /// <summary>The factor K of an index C = D/d.</summary>
    /// <param name="factor">Which one; the equations stand beside each.</param>
    /// <param name="index">C, above 1; good practice is 4 to 20.</param>
    /// <remarks>Source: [SHI] ch. 10; [EN 13906-1].</remarks>
    /// <exception cref="ArgumentOutOfRangeException">C is not above 1, or there is no such factor.</exception>
    public static double Factor(ShearFactor factor, double index)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(index, 1);
        return factor switch
        {
            ShearFactor.None => 1,
            ShearFactor.Direct => 1 + 0.5 / index,
            ShearFactor.Wahl => (4 * index - 1) / (4 * index - 4) + 0.615 / index,
            ShearFactor.Bergstraesser => (4 * index + 2) / (4 * index - 3),
            _ => throw new ArgumentOutOfRangeException(nameof(factor), factor, "No such factor."),
        };
    }

    /// <summary>Shear stress under an axial force: τ = K · 8 F D/(π d³).</summary>
    /// <param name="force">F, axial force.</param>
    /// <param name="wireDiameter">d, wire diameter.</param>
    /// <param name="meanDiameter">D, mean coil diameter.</param>
    /// <param name="factor">K.</param>
    /// <remarks>Within the elastic range; good practice for C = D/d is 4 to 20. Source: [SHI] ch. 10; [EN 13906-1].</remarks>
    /// <exception cref="ArgumentOutOfRangeException">C is not above 1.</exception>
    public static Pressure Shear(Force force, Length wireDiameter, Length meanDiameter, ShearFactor factor)
    {
        double d = wireDiameter.Meters;
        double k = Factor(factor, meanDiameter.Meters / d);
        return Pressure.FromPascals(k * 8 * force.Newtons * meanDiameter.Meters / (Math.PI * d * d * d));
    }

    /// <summary>Curvature factor of bending at the inside of the coil: K_i = (4C² − C − 1)/(4C(C − 1)).</summary>
    /// <remarks>Source: [SHI] ch. 10; [JIN] ex. 8-9.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">C is not above 1.</exception>
    public static double InnerFactor(double index)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(index, 1);
        return (4 * index * index - index - 1) / (4 * index * (index - 1));
    }

    /// <summary>The same as a standard writes it: q = (w + 0.07)/(w − 0.75).</summary>
    /// <remarks>Within 2 % of <see cref="InnerFactor"/>. Source: [EN 13906-3].</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The index is not above 1.</exception>
    public static double InnerFactorOfStandard(double index)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(index, 1);
        return (index + 0.07) / (index - 0.75);
    }

    /// <summary>Bending stress under a twisting moment: σ = K_i · 32 M/(π d³).</summary>
    /// <param name="moment">M, about the axis of the coil.</param>
    /// <param name="wireDiameter">d, wire diameter.</param>
    /// <param name="meanDiameter">D, mean coil diameter.</param>
    /// <remarks>Within the elastic range; good practice for C = D/d is 4 to 20. Source: [SHI] ch. 10.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">C is not above 1.</exception>
    public static Pressure Bending(Torque moment, Length wireDiameter, Length meanDiameter)
    {
        double d = wireDiameter.Meters;
        return Pressure.FromPascals(
            InnerFactor(meanDiameter.Meters / d) * 32 * moment.NewtonMeters / (Math.PI * d * d * d));
    }

    /// <summary>Both at once, by distortion energy: √(σ² + 3τ²).</summary>
    /// <param name="bending">σ, bending stress.</param>
    /// <param name="shear">τ, shear stress.</param>
    /// <remarks>No published example of a spring under both was found: derived from the two above.</remarks>
    public static Pressure Combined(Pressure bending, Pressure shear) => Pressure.FromPascals(
        Math.Sqrt(bending.Pascals * bending.Pascals + 3 * shear.Pascals * shear.Pascals));
}
