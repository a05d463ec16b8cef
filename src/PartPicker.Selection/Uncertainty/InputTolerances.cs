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

    /// <summary>Of the engine's torque.</summary>
    public const double TorqueShare = 0.03;

    /// <summary>The limits of a spring; a part that states its own belongs here.</summary>
    public static SpringTolerance Of(Part spring) => new(RateShare, FreeLengthM);
}

/// <summary>Limits of a spring: share of its rates, and free length in m.</summary>
internal readonly record struct SpringTolerance(double RateShare, double FreeLengthM);
