namespace PartPicker.Mechanics;

/// <summary>A driven spring in a hole with a helix: F_s = standing + perTorque Q at each position, up and back.</summary>
/// <param name="HelixAngle">α at each position (rad).</param>
/// <param name="CamTurn">Θ at each position (rad).</param>
/// <param name="Upshift">The clamp with the sheave forced open, α − φ.</param>
/// <param name="Backshift">The clamp with the sheave closing, α + φ.</param>
public sealed record DrivenSide(double[] HelixAngle, double[] CamTurn, ClampLine[] Upshift, ClampLine[] Backshift);

/// <summary>A clamp that is linear in engine torque: standing force (N) and force per torque (1/m).</summary>
public readonly record struct ClampLine(double Standing, double PerTorque)
{
    /// <summary>F_s (N) at an engine torque Q (N·m).</summary>
    public double At(double engineTorque) => Standing + PerTorque * engineTorque;
}
