namespace PartPicker.Selection;

/// <summary>How far a set misses its target.</summary>
/// <remarks>
/// e₀ = (n_e − target)/tol_e; e_j = (n(x_j) − target_j)/tol_s at the K points of the upshift curve;
/// miss = √(w_e e₀² + w_s mean(e_j²)), weights summing to 1. Where the belt does not start the machine there is no
/// e₀ and the curve alone counts. A set is within tolerance when no single error exceeds 1, which is stricter than
/// a miss of 1. Sums run from low gear to full shift, always in that order. Common practice, no source.
/// </remarks>
internal sealed class Score
{
    private readonly double? engagementTarget;
    private readonly double[] shiftTargets;
    private readonly Tolerances tolerances;
    private readonly double engagementWeight;
    private readonly double shiftWeight;

    /// <param name="wanted">In the air that is meant.</param>
    /// <param name="request">Its tolerances and weights count.</param>
    public Score(WantedRpm wanted, PickRequest request)
    {
        engagementTarget = wanted.Engagement;
        shiftTargets = wanted.Shift;
        tolerances = request.Tolerances;
        engagementWeight = engagementTarget is null ? 0 : request.Weights.Engagement;
        shiftWeight = engagementTarget is null ? 1 : request.Weights.Shift;
    }

    /// <summary>The wanted rpm at each point.</summary>
    public IReadOnlyList<double> ShiftTargets => shiftTargets;

    /// <summary>The wanted engagement; null: none is asked.</summary>
    public double? EngagementTarget => engagementTarget;

    /// <summary>The weight that engagement has in this score.</summary>
    public double EngagementWeight => engagementWeight;

    /// <summary>The weight that the whole curve has in this score.</summary>
    public double ShiftWeight => shiftWeight;

    /// <summary>e₀; 0 where no engagement is asked.</summary>
    public double EngagementError(double engagementRpm) =>
        engagementTarget is { } target ? (engagementRpm - target) / tolerances.EngagementRpm : 0;

    public double ShiftError(int j, double rpm) => (rpm - shiftTargets[j]) / tolerances.ShiftRpm;

    /// <summary>The rpm at which the error at a point is so much.</summary>
    public double ShiftRpm(int j, double error) => shiftTargets[j] + error * tolerances.ShiftRpm;

    public double Miss(double engagementError, ReadOnlySpan<double> shiftErrors)
    {
        double sum = 0;
        foreach (double error in shiftErrors)
            sum += error * error;
        return Math.Sqrt(engagementWeight * engagementError * engagementError + shiftWeight * (sum / shiftErrors.Length));
    }

    /// <summary>The miss of a prediction, and whether no error exceeds its tolerance; null where it does not shift.</summary>
    public (double Miss, bool WithinTolerance)? Of(Prediction prediction)
    {
        if (prediction.Curve.Any(p => p.Upshift is null))
            return null;
        double engagement = prediction.EngagementRpm is { } rpm ? EngagementError(rpm) : 0;
        double[] errors = [.. prediction.Curve.Select((p, j) => ShiftError(j, p.Upshift!.Rpm))];
        return (Miss(engagement, errors), WithinTolerance(engagement, errors));
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
}
