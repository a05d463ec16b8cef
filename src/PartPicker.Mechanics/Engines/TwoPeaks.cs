namespace PartPicker.Mechanics;

/// <summary>
/// Full-throttle torque from the two peaks that a brochure prints, greatest torque and greatest power, both met exactly.
/// </summary>
/// <remarks>
/// Q(n) = Q_M [1 − ½ (1 − n/n_T)²] below n_T; Q_M − (Q_M − Q_P) u^p with u = (n − n_T)/(n_P − n_T) between; Q_P (2 − n/n_P)
/// above n_P. p = (Q_P/n_P)(n_P − n_T)/(Q_M − Q_P), so that n Q has its top at n_P and no slope jumps there. With p below 1
/// the torque would drop at once behind its peak and power would have its top elsewhere: refused. Common practice, no
/// source: two points say nothing of dips, so the curve is a stand-in until there is a table. Valid from 0 to 2 n_P.
/// </remarks>
public sealed class TwoPeaks
{
    // Round numbers of a brochure may mean a p of 1, which a rounding must not refuse.
    private const double Slack = 1e-9;

    private readonly double torqueRpm;
    private readonly double mostTorque;
    private readonly double powerRpm;
    private readonly double torqueAtPower;
    private readonly double exponent;

    /// <param name="torqueRpm">n_T, rpm of greatest torque.</param>
    /// <param name="mostTorqueNm">Q_M (N·m).</param>
    /// <param name="powerRpm">n_P, rpm of greatest power, above n_T.</param>
    /// <param name="mostPowerW">P (W), of which Q_P = P/ω_P.</param>
    /// <exception cref="ArgumentException">The peaks do not belong to one engine.</exception>
    public TwoPeaks(double torqueRpm, double mostTorqueNm, double powerRpm, double mostPowerW)
    {
        this.torqueRpm = torqueRpm;
        this.powerRpm = powerRpm;
        mostTorque = mostTorqueNm;
        torqueAtPower = mostPowerW / Rotation.ToRadiansPerSecond(powerRpm);
        if (!(torqueRpm > 0 && torqueRpm < powerRpm))
            throw new ArgumentException("The greatest torque lies at a lower rpm than the greatest power.");
        if (!(torqueAtPower > 0 && torqueAtPower < mostTorqueNm))
        {
            throw new ArgumentException(
                $"The greatest power means {torqueAtPower:0.##} N·m at {powerRpm:0} rpm; the greatest torque, "
                + $"{mostTorqueNm:0.##} N·m, must be above that.");
        }

        exponent = torqueAtPower / powerRpm * (powerRpm - torqueRpm) / (mostTorqueNm - torqueAtPower);
        if (!(exponent >= 1 - Slack))
        {
            throw new ArgumentException(
                $"From {mostTorqueNm:0.##} N·m at {torqueRpm:0} rpm the torque would have to drop at once to "
                + $"{torqueAtPower:0.##} N·m at {powerRpm:0} rpm, and power would be greatest before that "
                + $"(p = {exponent:0.###}, at least 1 is needed).");
        }

        exponent = Math.Max(1, exponent);
    }

    /// <summary>Where its pieces end.</summary>
    public IReadOnlyList<double> Knots => [torqueRpm, powerRpm];

    /// <summary>Where it has fallen to nothing: 2 n_P.</summary>
    public double LastRpm => 2 * powerRpm;

    /// <summary>Q (N·m) at an rpm from 0 to <see cref="LastRpm"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The rpm lies outside.</exception>
    public double At(double rpm)
    {
        if (!(rpm >= 0 && rpm <= LastRpm))
            throw new ArgumentOutOfRangeException(nameof(rpm), rpm, $"The curve is known from 0 to {LastRpm} rpm.");
        if (rpm <= torqueRpm)
            return mostTorque * (1 - Math.Pow(1 - rpm / torqueRpm, 2) / 2);
        return rpm < powerRpm
            ? mostTorque - (mostTorque - torqueAtPower) * Math.Pow((rpm - torqueRpm) / (powerRpm - torqueRpm), exponent)
            : torqueAtPower * (2 - rpm / powerRpm);
    }

    /// <summary>dQ/dn (N·m per rpm).</summary>
    public double Slope(double rpm)
    {
        if (rpm <= torqueRpm)
            return mostTorque * (1 - rpm / torqueRpm) / torqueRpm;
        double span = powerRpm - torqueRpm;
        return rpm < powerRpm
            ? -(mostTorque - torqueAtPower) * exponent / span * Math.Pow((rpm - torqueRpm) / span, exponent - 1)
            : -torqueAtPower / powerRpm;
    }
}
