namespace PartPicker.Mechanics;

/// <summary>A thrust that a belt never asks less than, at a fraction of the cost of the thrust itself.</summary>
/// <remarks>
/// The model has no scale of its own: F_d/F_s is a function of the loading D/(2 tan β F_s μ_e2) alone, and up to 1 it
/// is concave, so straight lines between its tabulated values stay under it. The arc beyond the drive wrap is not cut
/// off there, since the cut would put a kink into a concave curve; where the active arc passes the drive wrap,
/// D/(2 μ_e1 tan β) takes over: the greater of both is the floor.
/// </remarks>
public sealed class BeltThrustFloor
{
    private const int Cells = 256;
    private readonly BeltThrust belt;
    private readonly double[] chord;

    /// <param name="belt">The belt whose thrust is bounded.</param>
    public BeltThrustFloor(BeltThrust belt)
    {
        this.belt = belt;
        chord = new double[Cells + 1];
        Array.Fill(chord, double.NaN);
    }

    /// <summary>A thrust (N) that <see cref="BeltThrust.DriveThrust(double, double)"/> never falls below.</summary>
    /// <param name="drivenClamp">F_s (N); below 0 counts as 0.</param>
    /// <param name="effectiveTension">D = Q/R₁ (N), 0 or more.</param>
    public double Least(double drivenClamp, double effectiveTension)
    {
        double place = belt.Loading(drivenClamp, effectiveTension) * Cells;
        return place >= 0 && place < Cells
            ? AtLeastSlipEdge(drivenClamp * Line(place), effectiveTension)
            : belt.DriveThrust(drivenClamp, effectiveTension);
    }

    /// <summary>A thrust (N) that is not fallen below at this clamp or more, at any tension between two.</summary>
    /// <param name="drivenClamp">The least F_s (N); below 0 counts as 0.</param>
    /// <param name="leastTension">The least D (N), 0 or more.</param>
    /// <param name="greatestTension">The greatest D (N).</param>
    /// <remarks>
    /// F_d rises with F_s. Up to a loading of 1 it is concave over D: the ends decide. Beyond, it rises with D.
    /// </remarks>
    public double Least(double drivenClamp, double leastTension, double greatestTension)
    {
        double from = belt.Loading(drivenClamp, leastTension) * Cells;
        if (!(drivenClamp > 0 && from < Cells))
            return belt.DriveThrust(drivenClamp, leastTension);
        double to = Math.Min(belt.Loading(drivenClamp, greatestTension) * Cells, Cells);
        double least = Math.Min(Line(from), to < Cells ? Line(to) : Chord(Cells));
        return AtLeastSlipEdge(drivenClamp * least, leastTension);
    }

    private double AtLeastSlipEdge(double line, double effectiveTension) =>
        belt.Form == DriveThrustForm.Locked ? line : Math.Max(line, belt.SlipEdge(effectiveTension));

    private double Line(double place)
    {
        int cell = (int)place;
        double left = Chord(cell);
        return left + (place - cell) * (Chord(cell + 1) - left);
    }

    // Tabulated as it is asked for: one set sees few cells. Threads that meet here write the same number.
    private double Chord(int cell)
    {
        double known = chord[cell];
        return double.IsNaN(known) ? chord[cell] = belt.UncutThrustPerClamp((double)cell / Cells) : known;
    }
}
