using UnitsNet;

namespace PartPicker.Mechanics;

/// <summary>What a spring may differ from its drawing, by the grade of its standard: 1 is the finest, 3 the coarsest.</summary>
/// <remarks>
/// [EN 15800] (cold-coiled compression springs, formerly DIN 2095) and [DIN 2194] (torsion springs), both through a
/// secondary source. The standards write numbers in N and mm.
/// </remarks>
public static class SpringTolerance
{
    private const double LoadShare = 0.015;

    /// <summary>Wire that the standard of compression springs covers.</summary>
    public static readonly ValidRange WireRange = new(
        "tolerance-wire-diameter", "wire diameter of a spring with a tolerance grade", 0.07, 16, "mm",
        "The formula of the grade covers no other wire.", "[EN 15800]");

    /// <summary>Coils that it covers.</summary>
    public static readonly ValidRange DiameterRange = new(
        "tolerance-mean-diameter", "mean coil diameter of a spring with a tolerance grade", 0.63, 200, "mm",
        "The formula of the grade covers no other coil.", "[EN 15800]");

    /// <summary>True where the formulas of the grades cover a spring.</summary>
    public static bool Covers(Length wireDiameter, Length meanDiameter) =>
        WireRange.Holds(wireDiameter.Millimeters)
        && DiameterRange.Holds(meanDiameter.Millimeters)
        && HelicalSpring.IndexRange.Holds(meanDiameter / wireDiameter);

    /// <summary>± of a load at a length: A_F = (a_F k_F + 0.015 F) Q.</summary>
    /// <param name="wireDiameter">d, 0.07 to 16 mm.</param>
    /// <param name="meanDiameter">D, 0.63 to 200 mm.</param>
    /// <param name="activeCoils">n, 2 or more.</param>
    /// <param name="load">F, load at that length.</param>
    /// <param name="grade">1, 2 or 3: Q = 0.63, 1, 1.6.</param>
    /// <remarks>
    /// a_F = 65.92 d^3.3/D^1.6 [−0.84 (w/10)³ + 3.781 (w/10)² − 4.244 (w/10) + 2.274] N with w = D/d, and
    /// k_F = −1/(3n²) + 8/(5n) + 0.803. The minus of k_F is from memory; the secondary source has a plus there, but a
    /// minus in its torsion springs: 11 % apart at 2 coils, 1.7 % at 6.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The spring lies outside the standard, or there is no such grade.</exception>
    public static Force Load(Length wireDiameter, Length meanDiameter, double activeCoils, Force load, int grade) =>
        Force.FromNewtons(
            (Base(wireDiameter, meanDiameter, activeCoils) + LoadShare * load.Newtons) * Share(grade));

    /// <summary>± of the free length: A_L0 = a_F k_F Q/R.</summary>
    /// <param name="wireDiameter">d, 0.07 to 16 mm.</param>
    /// <param name="meanDiameter">D, 0.63 to 200 mm.</param>
    /// <param name="activeCoils">n, 2 or more.</param>
    /// <param name="rate">R, axial rate.</param>
    /// <param name="grade">1, 2 or 3.</param>
    /// <remarks>As <see cref="Load"/>.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The spring lies outside the standard, or there is no such grade.</exception>
    public static Length FreeLength(
        Length wireDiameter, Length meanDiameter, double activeCoils, ForcePerLength rate, int grade) =>
        Length.FromMeters(
            Base(wireDiameter, meanDiameter, activeCoils) * Share(grade) / rate.NewtonsPerMeter);

    /// <summary>± of a load that no error of length explains, as a share of the load: 0.015 Q.</summary>
    /// <param name="grade">1, 2 or 3.</param>
    /// <remarks>A_F = R A_L0 + 0.015 Q F: an error of length and one of stiffness. As <see cref="Load"/>.</remarks>
    public static double StiffnessShare(int grade) => LoadShare * Share(grade);

    /// <summary>± of a torque: 1.3 K d³/(n^0.24 √w) N·mm, with K 104 for steel wire and 90 for stainless wire.</summary>
    /// <param name="wireDiameter">d, wire diameter.</param>
    /// <param name="meanDiameter">D, mean coil diameter; w = D/d.</param>
    /// <param name="activeCoils">n, coils that deflect.</param>
    /// <param name="stainless">True for stainless wire.</param>
    /// <remarks>Grade 2; the other grades were not seen. Source: [DIN 2194].</remarks>
    public static Torque TorqueOfGradeTwo(
        Length wireDiameter, Length meanDiameter, double activeCoils, bool stainless)
    {
        double d = wireDiameter.Millimeters;
        double w = meanDiameter.Millimeters / d;
        return Torque.FromNewtonMillimeters(
            1.3 * (stainless ? 90 : 104) * d * d * d / (Math.Pow(activeCoils, 0.24) * Math.Sqrt(w)));
    }

    /// <summary>± of the angle between the legs at rest: 2.4 n^0.76 √w degrees.</summary>
    /// <param name="index">w = D/d.</param>
    /// <param name="activeCoils">n, coils that deflect.</param>
    /// <remarks>Grade 2; the other grades were not seen. Source: [DIN 2194].</remarks>
    public static Angle FreeAngleOfGradeTwo(double index, double activeCoils) =>
        Angle.FromDegrees(2.4 * Math.Pow(activeCoils, 0.76) * Math.Sqrt(index));

    /// <summary>a_F k_F (N).</summary>
    private static double Base(Length wireDiameter, Length meanDiameter, double activeCoils)
    {
        double d = wireDiameter.Millimeters;
        double mean = meanDiameter.Millimeters;
        if (!WireRange.Holds(d))
            throw new ArgumentOutOfRangeException(nameof(wireDiameter), d, $"The standard covers {WireRange.Span}.");
        if (!DiameterRange.Holds(mean))
            throw new ArgumentOutOfRangeException(nameof(meanDiameter), mean, $"The standard covers {DiameterRange.Span}.");
        ArgumentOutOfRangeException.ThrowIfLessThan(activeCoils, 2);
        double t = mean / d / 10;
        if (!HelicalSpring.IndexRange.Holds(mean / d))
            throw new ArgumentOutOfRangeException(nameof(meanDiameter), mean / d, $"The standard covers D/d from {HelicalSpring.IndexRange.Span}.");
        double a = 65.92 * Math.Pow(d, 3.3) / Math.Pow(mean, 1.6) * (((-0.84 * t + 3.781) * t - 4.244) * t + 2.274);
        return a * (-1 / (3 * activeCoils * activeCoils) + 8 / (5 * activeCoils) + 0.803);
    }

    private static double Share(int grade) => grade switch
    {
        1 => 0.63,
        2 => 1.00,
        3 => 1.60,
        _ => throw new ArgumentOutOfRangeException(nameof(grade), grade, "There are grades 1, 2 and 3."),
    };
}
