namespace PartPicker.Mechanics;

/// <summary>
/// Full-throttle torque over engine speed: a monotone cubic through a table, held constant below its first point; or
/// the curve through the two peaks of a brochure.
/// </summary>
/// <remarks>The cubic is <see cref="SmoothCurve"/>; power between the points may pass that at the points.</remarks>
public sealed class EngineTorque
{
    private readonly Func<double, double> torque;
    private readonly Func<double, double> slope;
    private readonly Func<double, double, (double Least, double Greatest)> slopeRange;
    private readonly IReadOnlyList<double> knots;

    // Found when first asked for, since an engine never changes. Threads that meet here find the same numbers.
    private double[]? atSteps;
    private TorqueSpans[]? spans;
    private Tuple<double, double>? peakPower;

    /// <param name="table">Engine speed (rpm) and torque (N·m), by strictly rising rpm.</param>
    /// <param name="revLimitRpm">Highest speed that may be asked; at most the last rpm of the table.</param>
    /// <exception cref="ArgumentException">
    /// Torque negative, rpm not rising, or the rev limit not positive or beyond the table.
    /// </exception>
    public EngineTorque(IEnumerable<(double Rpm, double TorqueNm)> table, double revLimitRpm)
    {
        (double Rpm, double TorqueNm)[] points = [.. table];
        var curve = new SmoothCurve(points);
        if (points.Any(p => p.TorqueNm < 0))
            throw new ArgumentException("Torque at full throttle is not negative.", nameof(table));
        if (!(revLimitRpm <= curve.To) || revLimitRpm <= 0)
        {
            throw new ArgumentException(
                $"The rev limit must be positive and within the table, which ends at {curve.To} rpm.",
                nameof(revLimitRpm));
        }

        torque = n => curve.At(Math.Max(n, curve.From));
        slope = n => n < curve.From ? 0 : curve.Slope(n);
        slopeRange = (from, to) => WithLevel(from < curve.From, curve.SlopeRange(Math.Max(from, curve.From), Math.Max(to, curve.From)));
        knots = curve.Knots;
        RevLimitRpm = revLimitRpm;
    }

    /// <summary>The engine of a brochure, which states its two peaks and no curve.</summary>
    /// <exception cref="ArgumentException">The rev limit is not positive or lies beyond the range of the peaks.</exception>
    public EngineTorque(TwoPeaks peaks, double revLimitRpm)
    {
        if (!(revLimitRpm > 0 && revLimitRpm <= peaks.LastRpm))
        {
            throw new ArgumentException(
                $"The rev limit must be positive and at most twice the rpm of greatest power, {peaks.LastRpm} rpm.",
                nameof(revLimitRpm));
        }

        torque = peaks.At;
        slope = peaks.Slope;
        slopeRange = (from, to) => Extremes.Of(peaks.Slope, peaks.Knots, from, to);
        knots = peaks.Knots;
        RevLimitRpm = revLimitRpm;
    }

    /// <summary>Highest speed that may be asked, in rpm.</summary>
    public double RevLimitRpm { get; }

    /// <summary>Q(n) at sea level, in N·m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">n lies beyond the curve.</exception>
    public double At(double rpm) => torque(rpm);

    /// <summary>Q (N·m, at sea level) at every multiple of <see cref="ShiftModel.ScanStepRpm"/> up to the rev limit.</summary>
    internal double[] AtSteps => atSteps ??=
        [.. Enumerable.Range(0, (int)(RevLimitRpm / ShiftModel.ScanStepRpm) + 1).Select(step => At(step * ShiftModel.ScanStepRpm))];

    /// <summary>The same over spans of steps, the longest first.</summary>
    internal TorqueSpans[] Spans => spans ??= [new(AtSteps, 64), new(AtSteps, 16), new(AtSteps, 4)];

    /// <summary>Least and greatest Q (N·m, at sea level) between two speeds (rpm).</summary>
    /// <remarks>The curve is monotone between its points: the ends and the points between them decide.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A speed lies beyond the table.</exception>
    public (double Least, double Greatest) Range(double fromRpm, double toRpm) =>
        Extremes.Of(torque, knots, fromRpm, toRpm);

    /// <summary>Least and greatest dQ/dn (N·m per rpm, at sea level) between two speeds (rpm).</summary>
    /// <exception cref="ArgumentOutOfRangeException">A speed lies beyond the table.</exception>
    public (double Least, double Greatest) SlopeRange(double fromRpm, double toRpm) => slopeRange(fromRpm, toRpm);

    // Below its first point the torque is level.
    private static (double Least, double Greatest) WithLevel(bool level, (double Least, double Greatest) slope) =>
        level ? (Math.Min(0, slope.Least), Math.Max(0, slope.Greatest)) : slope;

    /// <summary>Where Q ω is greatest up to the rev limit: rpm, and power in W at sea level.</summary>
    public (double Rpm, double PowerW) PeakPower()
    {
        (double rpm, double power) = peakPower ??= FindPeakPower().ToTuple();
        return (rpm, power);
    }

    private (double Rpm, double PowerW) FindPeakPower()
    {
        double[] cuts = [0, .. knots.Where(n => n > 0 && n < RevLimitRpm), RevLimitRpm];
        return Maximum.Of(
            n => At(n) * Rotation.ToRadiansPerSecond(n),
            cuts,
            slope: n => At(n) + n * slope(n));
    }
}
