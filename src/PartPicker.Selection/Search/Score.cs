namespace PartPicker.Selection;

/// <summary>How far a set misses its target.</summary>
/// <remarks>
/// e₀ = (n_e − target)/tol_e; e_j = (n(x_j) − target_j)/tol_s at the K points of the upshift curve;
/// miss = √(w_e e₀² + w_s mean(e_j²)), weights summing to 1. A set is within tolerance when no single error
/// exceeds 1, which is stricter than a miss of 1. Sums run from low gear to full shift, always in that order.
/// Common practice, no source.
/// </remarks>
internal sealed class Score
{
    private readonly double engagementTarget;
    private readonly double[] shiftTargets;
    private readonly Tolerances tolerances;
    private readonly ScoreWeights weights;

    public Score(ShiftTarget target, Tolerances tolerances, ScoreWeights weights, IEnumerable<double> ratios)
    {
        engagementTarget = target.EngagementRpm;
        shiftTargets = [.. ratios.Select(ratio => TargetAt(target, ratio))];
        this.tolerances = tolerances;
        this.weights = weights;
    }

    /// <summary>The wanted rpm at each point.</summary>
    public IReadOnlyList<double> ShiftTargets => shiftTargets;

    public double EngagementError(double engagementRpm) =>
        (engagementRpm - engagementTarget) / tolerances.EngagementRpm;

    public double ShiftError(int j, double rpm) => (rpm - shiftTargets[j]) / tolerances.ShiftRpm;

    /// <summary>What engagement alone contributes: no set with this e₀ misses by less.</summary>
    /// <remarks>In the same form as <see cref="Miss"/>, so that no rounding lifts it above one.</remarks>
    public double LeastMiss(double engagementError) =>
        Math.Sqrt(weights.Engagement * engagementError * engagementError);

    public double Miss(double engagementError, ReadOnlySpan<double> shiftErrors)
    {
        double sum = 0;
        foreach (double error in shiftErrors)
            sum += error * error;
        return Math.Sqrt(
            weights.Engagement * engagementError * engagementError + weights.Shift * (sum / shiftErrors.Length));
    }

    public static bool WithinTolerance(double engagementError, ReadOnlySpan<double> shiftErrors)
    {
        if (Math.Abs(engagementError) > 1)
            return false;
        foreach (double error in shiftErrors)
        {
            if (Math.Abs(error) > 1)
                return false;
        }

        return true;
    }

    /// <summary>⌊1000 miss + ½⌋: misses that a person cannot tell apart are equal, so that price may decide.</summary>
    public static long Rounded(double miss) => miss < MaxMiss ? (long)Math.Floor(1000 * miss + 0.5) : (long)(1000 * MaxMiss);

    private const double MaxMiss = 1e9;

    /// <summary>Straight lines between the points of the target, held at its ends.</summary>
    private static double TargetAt(ShiftTarget target, double ratio)
    {
        Parts.RatioRpm[] points = [.. target.Shift.OrderBy(p => p.Ratio)];
        if (ratio <= points[0].Ratio)
            return points[0].Rpm;
        for (int i = 1; i < points.Length; i++)
        {
            if (ratio <= points[i].Ratio)
            {
                double t = (ratio - points[i - 1].Ratio) / (points[i].Ratio - points[i - 1].Ratio);
                return points[i - 1].Rpm + t * (points[i].Rpm - points[i - 1].Rpm);
            }
        }

        return points[^1].Rpm;
    }
}
