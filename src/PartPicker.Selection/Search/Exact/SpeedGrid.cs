using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>The engine's speeds, cut into cells at the speeds where the model looks for the first balance.</summary>
/// <remarks>
/// Torques are those of sea level: in another air they are scaled.
/// Cell i reaches from just above the end of cell i − 1 to its own end; the last ends at the rev limit.
/// </remarks>
internal sealed class SpeedGrid
{
    private readonly double[] end;
    private readonly double[] speedSquared;
    private readonly double[] torque;

    // Torque over 1, 2, 4 … cells from each cell on.
    private readonly double[][] least;
    private readonly double[][] greatest;

    public SpeedGrid(EngineTorque engine)
    {
        double revLimitRpm = engine.RevLimitRpm;
        int whole = (int)(revLimitRpm / ShiftModel.ScanStepRpm);
        Count = whole * ShiftModel.ScanStepRpm < revLimitRpm ? whole + 1 : whole;
        end = new double[Count + 1];
        speedSquared = new double[Count + 1];
        torque = new double[Count + 1];
        least = [.. Enumerable.Range(0, Spans).Select(_ => new double[Count + 1])];
        greatest = [.. Enumerable.Range(0, Spans).Select(_ => new double[Count + 1])];
        for (int i = 1; i <= Count; i++)
        {
            end[i] = Math.Min(i * ShiftModel.ScanStepRpm, revLimitRpm);
            speedSquared[i] = Math.Pow(Rotation.ToRadiansPerSecond(end[i]), 2);
            torque[i] = engine.At(end[i]);
            (least[0][i], greatest[0][i]) = engine.Range(end[i - 1], end[i]);
        }

        for (int span = 1; span < Spans; span++)
        {
            int half = 1 << (span - 1);
            for (int i = 1; i + 2 * half - 1 <= Count; i++)
            {
                least[span][i] = Math.Min(least[span - 1][i], least[span - 1][i + half]);
                greatest[span][i] = Math.Max(greatest[span - 1][i], greatest[span - 1][i + half]);
            }
        }
    }

    /// <summary>Number of cells; they count from 1.</summary>
    public int Count { get; }

    /// <summary>Where each cell ends (rpm); 0 for the cell before the first.</summary>
    public ReadOnlySpan<double> End => end;

    /// <summary>ω² at each end.</summary>
    public ReadOnlySpan<double> SpeedSquared => speedSquared;

    /// <summary>Q (N·m) at each end.</summary>
    public ReadOnlySpan<double> Torque => torque;

    /// <summary>Torque is known over spans of 1, 2, 4 … cells; so many of them.</summary>
    public const int Spans = 8;

    /// <summary>Least Q (N·m) from each cell on over 2^span cells.</summary>
    public ReadOnlySpan<double> LeastTorque(int span = 0) => least[span];

    /// <summary>Greatest Q (N·m) from each cell on over 2^span cells.</summary>
    public ReadOnlySpan<double> GreatestTorque(int span = 0) => greatest[span];

    /// <summary>The cell that a speed lies in; beyond the last where the speed lies beyond the rev limit.</summary>
    public int CellOf(double rpm)
    {
        int cell = Math.Clamp((int)(rpm / ShiftModel.ScanStepRpm), 0, Count);
        while (cell <= Count && (cell == 0 || end[cell] < rpm))
            cell++;
        return cell;
    }
}
