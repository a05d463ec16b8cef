using PartPicker.Mechanics;
using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>How far the model, tied to a measured run, still misses it: an error of the model that no input explains.</summary>
/// <remarks>
/// Of m residuals r_j and p numbers solved from them s = √(Σ r_j²/(m − p)) is the residual standard deviation
/// (JCGM 100, H.3). A misfit has a shape that the factors cannot take up, so that the residual itself counts where it is
/// the greater: u(i) = max(s, |r(i)|), r straight between the measured ratios and held beyond them. One error moves all
/// of the curve to one side.
/// </remarks>
internal static class RunMisfit
{
    /// <summary>Below this a misfit is the rounding of a run that is met exactly.</summary>
    public const double LeastRpm = 0.01;

    /// <summary>u at each position (rpm); 0 without a run, and where the run is met exactly.</summary>
    public static double[] At(Anchoring? anchoring, IReadOnlyList<BeltPosition> positions)
    {
        RatioRpm[] residuals = [.. (anchoring?.Residuals ?? []).OrderBy(r => r.Ratio)];
        if (residuals.Length == 0)
            return new double[positions.Count];
        int solved = anchoring!.Friction is null ? 1 : 2;
        double deviation = Math.Sqrt(
            residuals.Sum(r => r.Rpm * r.Rpm) / Math.Max(1, residuals.Length - solved));
        return [.. positions.Select(p => Math.Max(deviation, Math.Abs(Residual(residuals, p.Ratio))))];
    }

    private static double Residual(RatioRpm[] residuals, double ratio)
    {
        int above = Array.FindIndex(residuals, r => r.Ratio >= ratio);
        if (above <= 0)
            return residuals[above < 0 ? ^1 : 0].Rpm;
        (RatioRpm low, RatioRpm high) = (residuals[above - 1], residuals[above]);
        return low.Rpm + (high.Rpm - low.Rpm) * (ratio - low.Ratio) / (high.Ratio - low.Ratio);
    }
}
