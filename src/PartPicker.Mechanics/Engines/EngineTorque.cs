namespace PartPicker.Mechanics;

/// <summary>
/// Full-throttle torque over engine speed: a monotone cubic through a table, held constant below its first point.
/// </summary>
/// <remarks>The curve is <see cref="SmoothCurve"/>; power between the points may pass that at the points.</remarks>
public sealed class EngineTorque
{
    private readonly SmoothCurve curve;

    /// <param name="table">Engine speed (rpm) and torque (N·m), by strictly rising rpm.</param>
    /// <param name="revLimitRpm">Highest speed that may be asked; at most the last rpm of the table.</param>
    /// <exception cref="ArgumentException">
    /// Torque negative, rpm not rising, or the rev limit not positive or beyond the table.
    /// </exception>
    public EngineTorque(IEnumerable<(double Rpm, double TorqueNm)> table, double revLimitRpm)
    {
        (double Rpm, double TorqueNm)[] points = [.. table];
        curve = new SmoothCurve(points);
        if (points.Any(p => p.TorqueNm < 0))
            throw new ArgumentException("Torque at full throttle is not negative.", nameof(table));
        if (!(revLimitRpm <= curve.To) || revLimitRpm <= 0)
        {
            throw new ArgumentException(
                $"The rev limit must be positive and within the table, which ends at {curve.To} rpm.",
                nameof(revLimitRpm));
        }

        RevLimitRpm = revLimitRpm;
    }

    public double RevLimitRpm { get; }

    /// <summary>Q(n) at sea level, in N·m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">n lies beyond the table.</exception>
    public double At(double rpm) => curve.At(Math.Max(rpm, curve.From));

    /// <summary>Least and greatest Q (N·m, at sea level) between two speeds (rpm).</summary>
    /// <remarks>The curve is monotone between its points: the ends and the points between them decide.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A speed lies beyond the table.</exception>
    public (double Least, double Greatest) Range(double fromRpm, double toRpm)
    {
        double least = Math.Min(At(fromRpm), At(toRpm));
        double greatest = Math.Max(At(fromRpm), At(toRpm));
        foreach (double knot in curve.Knots)
        {
            if (knot > fromRpm && knot < toRpm)
                (least, greatest) = (Math.Min(least, At(knot)), Math.Max(greatest, At(knot)));
        }

        return (least, greatest);
    }

    /// <summary>Where Q ω is greatest up to the rev limit: rpm, and power in W at sea level.</summary>
    public (double Rpm, double PowerW) PeakPower()
    {
        double[] cuts = [0, .. curve.Knots.Where(n => n > 0 && n < RevLimitRpm), RevLimitRpm];
        return Maximum.Of(
            n => At(n) * Rotation.ToRadiansPerSecond(n),
            cuts,
            slope: n => At(n) + n * (n < curve.From ? 0 : curve.Slope(n)));
    }
}
