namespace PartPicker.Selection;

/// <summary>A small named rule that says whether a candidate fits a machine.</summary>
/// <param name="Name">Stable name, as in "drive-spring-outside-diameter".</param>
/// <param name="Meaning">One sentence for a person: what must hold, and why.</param>
/// <param name="NeededToCompute">True where the model has no answer for a candidate that breaks it.</param>
/// <param name="Check">Measures the candidate against the machine.</param>
/// <param name="NamedWhenUnknown">True where a missing number may break something: such a gap is named part by part.</param>
internal sealed record FitRule<T>(
    string Name, string Meaning, bool NeededToCompute, Func<T, MachineModel, FitCheck> Check, bool NamedWhenUnknown = false);

/// <summary>What all rules share.</summary>
internal static class FitTolerance
{
    /// <summary>
    /// Lengths that differ by less than this are the same: rounding to a thousandth of an inch or a hundredth
    /// of a millimetre must never decide whether a part fits.
    /// </summary>
    /// <remarks>
    /// A twentieth of a millimetre, and a nanometre: no two lengths that people write differ by exactly this, so the
    /// last digit of a double, which inch and metric do not share, never decides either.
    /// </remarks>
    public const double LengthM = 0.050001e-3;

    /// <summary>Angles likewise (rad).</summary>
    public const double AngleRad = 1e-6;

    /// <summary>Stresses that differ by less than this are the same (Pa).</summary>
    public const double StressPa = 1e3;

    /// <summary>Least force of a spring that counts as pushing.</summary>
    public const double ForceN = 0.1;

    /// <summary>A torque below zero by less than this is zero: two printed torques carry rounding to their line.</summary>
    public const double TorqueNm = 0.1;
}
