using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>Bounds on the thrust that the belt asks of the drive clutch at one position, at a fraction of its cost.</summary>
/// <remarks>
/// The belt has no scale of its own: F_d/F_s is a function φ of u = D/F_s alone. It is concave up to an edge; beyond
/// it, where the belt slips or the active arc fills the wrap, F_d is a constant times D. Of a concave function every
/// chord is a floor, the extension of a neighbouring chord is a ceiling, and the least value over an interval stands
/// at one of its ends. F_d rises with F_s.
/// </remarks>
internal sealed class BeltBounds
{
    private const int Cells = 1024;

    // Far more than the rounding of a solved thrust, far less than anything that matters.
    private const double Slack = 1e-9;

    private readonly double[] chord = new double[Cells + 1];
    private readonly double[] gap = new double[Cells];

    // The cell before which no greater D/F_d falls, for D/F_d in steps from 0 to where the edge is.
    private readonly ushort[] cellOfLoad = new ushort[Cells + 1];
    private readonly double edge;
    private readonly double perUnit;
    private readonly double beyond;
    private readonly double top;
    private readonly int topCell;

    /// <param name="model">Any model of the machine: its air and its anchor do not matter here.</param>
    /// <param name="j">The position.</param>
    public BeltBounds(ShiftModel model, int j)
    {
        double rpm = model.PeakPowerRpm;
        double tension = model.TorqueAt(rpm) / model.Positions[j].DriveRadius;
        if (!(tension > 0))
        {
            // Without torque there is one ratio of thrusts only.
            edge = double.PositiveInfinity;
            top = Thrust(1);
            Array.Fill(chord, top);
            return;
        }

        beyond = Thrust(0) / tension;

        // Up to a clamp the thrust is what it is without any.
        double none = Thrust(0) * (1 + 1e-12);
        edge = tension / ClampEdge.Of(tension, clamp => Thrust(clamp) <= none).Above;
        perUnit = Cells / edge;
        chord[0] = Thrust(tension * 1e9) / (tension * 1e9);
        for (int i = 1; i < Cells; i++)
        {
            double clamp = tension / (edge * i / Cells);
            chord[i] = Thrust(clamp) / clamp;
        }

        chord[Cells] = beyond * edge;
        for (int i = 0; i < Cells; i++)
        {
            gap[i] = Gap(i);
            if (chord[i] > chord[topCell])
                topCell = i;
        }

        top = chord[topCell] + Math.Max(gap[topCell], gap[Math.Max(0, topCell - 1)]);
        for (int i = 0, cell = 0; i <= Cells; i++)
        {
            while (cell < Cells - 1 && (cell + 1) * Cells * beyond <= i * chord[cell + 1] * perUnit)
                cell++;
            cellOfLoad[i] = (ushort)cell;
        }

        double Thrust(double clamp) =>
            model.UpshiftBeltThrust(rpm, Clamped(model, clamp), j);
    }

    /// <summary>A driven side whose clamp does not change with torque.</summary>
    public static DrivenSide Clamped(ShiftModel model, double clamp)
    {
        ClampLine[] lines = [.. model.Positions.Select(_ => new ClampLine(clamp, 0))];
        return new DrivenSide([], [], lines, lines);
    }

    /// <summary>A thrust that none falls below: clamps of this or more, tensions D between two.</summary>
    public double Least(double clamp, double leastTension, double greatestTension)
    {
        if (!(clamp > 0))
            return beyond * leastTension * (1 - Slack);
        double inverse = 1 / clamp;
        double from = leastTension * inverse;
        if (from >= edge)
            return beyond * leastTension * (1 - Slack);
        double to = greatestTension * inverse;
        return clamp * Math.Min(Chord(from), to >= edge ? chord[Cells] : Chord(to)) * (1 - Slack);
    }

    /// <summary>A thrust that none exceeds: clamps of this or less, tensions D between two.</summary>
    public double Greatest(double clamp, double leastTension, double greatestTension)
    {
        if (!(clamp > 0))
            return beyond * greatestTension * (1 + Slack);
        double inverse = 1 / clamp;
        double from = leastTension * inverse;
        double to = greatestTension * inverse;
        double linear = to > edge ? beyond * greatestTension : 0;
        if (from >= edge)
            return linear * (1 + Slack);
        int first = CellOf(from);
        int last = CellOf(Math.Min(to, edge));
        double most = Math.Max(Ceiling(from, first), Ceiling(Math.Min(to, edge), last));
        if (first <= topCell && last >= topCell - 1)
            most = Math.Max(most, top);
        return Math.Max(clamp * most, linear) * (1 + Slack);
    }

    private int CellOf(double u) => Math.Min((int)(u * perUnit), Cells - 1);

    /// <summary>True where there is torque, so that a thrust tells the clamp.</summary>
    public bool Inverts => perUnit > 0;

    /// <summary>F_d over D where the belt slips, or the active arc fills the wrap: less is never asked for.</summary>
    public double Beyond => beyond;

    /// <summary>A ratio F_d/D that none falls below where D/F_s is at most so much.</summary>
    public double LeastRatio(double load) => load < edge ? Chord(load) / load * (1 - Slack) : beyond;

    /// <summary>Between which u = D/F_s lies where F_d/D is so much, more than <see cref="Beyond"/>.</summary>
    /// <remarks>F_d/D = φ(u)/u falls as u rises: the chord of a cell, below φ, gets there first, its ceiling last.</remarks>
    public (double Low, double High) LoadOf(double thrustPerTension)
    {
        double perCell = thrustPerTension / perUnit;
        int low = cellOfLoad[Math.Clamp((int)(Cells * beyond / thrustPerTension), 0, Cells)];
        while (low < Cells - 1 && chord[low + 1] > perCell * (low + 1))
            low++;
        double above = chord[low] - perCell * low;
        double fall = perCell - (chord[low + 1] - chord[low]);
        double first = (low + above / fall) / perUnit;
        double last = (low + Math.Min(1, (above + gap[low]) / fall)) / perUnit;
        return (first * (1 - Slack), last * (1 + Slack));
    }

    /// <summary>Least and greatest slope of F_d/F_s over u; false where the edge or no load at all is too near to tell.</summary>
    public bool TrySlopes(double from, double to, out double least, out double greatest)
    {
        int first = (int)(from * perUnit) - 1;
        int last = (int)(to * perUnit) + 1;
        if (!(to < edge) || first < 0 || last >= Cells)
        {
            (least, greatest) = (0, 0);
            return false;
        }

        greatest = perUnit * (chord[first + 1] - chord[first]);
        least = perUnit * (chord[last + 1] - chord[last]);
        return true;
    }

    /// <summary>A ratio that F_d/F_s does not exceed at u.</summary>
    public double Ceiling(double u) => Ceiling(u, CellOf(u));

    /// <summary>A ratio that F_d/F_s does not fall below at u.</summary>
    public double Chord(double u)
    {
        int cell = CellOf(u);
        return chord[cell] + (u * perUnit - cell) * (chord[cell + 1] - chord[cell]);
    }

    private double Ceiling(double u, int cell) =>
        chord[cell] + (u * perUnit - cell) * (chord[cell + 1] - chord[cell]) + gap[cell];

    // How far a concave function may rise above its chord: to where the extensions of both neighbours meet.
    private double Gap(int cell)
    {
        double rise = chord[cell + 1] - chord[cell];
        double before = cell > 0 ? chord[cell] - chord[cell - 1] - rise : double.PositiveInfinity;
        double after = cell < Cells - 1 ? rise - (chord[cell + 2] - chord[cell + 1]) : double.PositiveInfinity;
        before = Math.Max(0, before);
        after = Math.Max(0, after);
        return before + after == 0 ? 0
            : double.IsPositiveInfinity(before) ? after
            : double.IsPositiveInfinity(after) ? before
            : before * after / (before + after);
    }
}
