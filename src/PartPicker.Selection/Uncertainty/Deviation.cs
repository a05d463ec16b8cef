using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>By how much the true inputs of a set differ from the stated ones. SI; shares are relative.</summary>
internal sealed record Deviation
{
    public static readonly Deviation None = new();

    /// <summary>Of the drive spring's rate, its free length held.</summary>
    public double DriveRateShare { get; init; }

    /// <summary>Of the drive spring's free length (m); a shorter installed length does the same.</summary>
    public double DriveFreeLength { get; init; }

    /// <summary>Of the mass of one arm's body (kg).</summary>
    public double BodyMass { get; init; }

    /// <summary>Of the mass in one station of one arm (kg).</summary>
    public (StationName Station, double Mass) StationMass { get; init; }

    public double DrivenRateShare { get; init; }
    public double DrivenFreeLength { get; init; }
    public double TwistRateShare { get; init; }

    /// <summary>Of ψ₀ (rad).</summary>
    public double PreloadTwist { get; init; }

    /// <summary>Of the helix angle at every point (rad).</summary>
    public double HelixAngle { get; init; }

    /// <summary>Of μ.</summary>
    public double Friction { get; init; }

    /// <summary>Of the engine's torque at every speed.</summary>
    public double TorqueShare { get; init; }

    /// <summary>Of the model itself, in standard uncertainties of <see cref="RunMisfit"/>.</summary>
    public double Misfit { get; init; }
}
