using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>How far inputs may be from what is stated, where nothing better is known. Common practice, no source.</summary>
/// <remarks>Each is a limit: the truth lies evenly anywhere within ± of it.</remarks>
internal static class InputTolerances
{
    /// <summary>Of a spring's rate, axial or in twist, without a stated grade.</summary>
    public const double RateShare = 0.05;

    /// <summary>Of a spring's free length (m).</summary>
    public const double FreeLengthM = 1e-3;

    /// <summary>Of the mass of one arm (kg).</summary>
    public const double ArmMassKg = 0.3e-3;

    /// <summary>Of the friction of belt on sheave.</summary>
    public const double Friction = 0.02;

    /// <summary>Of the torque of an engine known by a measured curve.</summary>
    public const double TorqueShare = 0.03;

    /// <summary>Of the torque of an engine known by the two peaks of a brochure.</summary>
    public const double BrochureTorqueShare = 0.06;

    public static double Torque(Engine engine) => engine.TorqueCurve.Count > 0 ? TorqueShare : BrochureTorqueShare;

    /// <summary>The limits of a drive spring: those of its grade where its standard covers it.</summary>
    public static SpringLimits Of(DriveSpring spring)
    {
        if (spring is not { ToleranceGrade: { } grade, WireDiameter: { } wire, OutsideDiameter: { } outside, ActiveCoils: >= 2 and { } coils }
            || SpringModels.ComputedRate(spring) is not { } rate
            || !SpringTolerance.Covers(wire, outside - wire))
        {
            return new(RateShare, FreeLengthM);
        }

        return new(
            SpringTolerance.StiffnessShare(grade),
            SpringTolerance.FreeLength(wire, outside - wire, coils, rate, grade).Meters);
    }

    /// <summary>The limits of a driven spring pushed together.</summary>
    public static SpringLimits Of(DrivenSpring _) => new(RateShare, FreeLengthM);

    /// <summary>
    /// The limit of a driven spring's torque by its grade, at any twist, as the twist that makes it (rad); null where no
    /// grade says it: of its standard only grade 2 was seen.
    /// </summary>
    public static double? TwistRad(DrivenSpring spring) =>
        spring is { ToleranceGrade: 2, WireDiameter: { } wire, OutsideDiameter: { } outside, ActiveCoils: { } coils, Material: { } wireName }
        && WireMaterial.Find(wireName) is { } material
        && SpringModels.TwistRate(spring) is > 0 and { } rate
            ? SpringTolerance.TorqueOfGradeTwo(
                wire, SpringModels.Mean(outside, wire), coils, material.Treatment == WireTreatment.Austenitic).NewtonMeters / rate
            : null;
}

/// <summary>Limits of a spring: share of its rates, and free length in m.</summary>
internal readonly record struct SpringLimits(double RateShare, double FreeLengthM);
