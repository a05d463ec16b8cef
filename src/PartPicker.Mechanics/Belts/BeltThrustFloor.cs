namespace PartPicker.Mechanics;

/// <summary>A thrust that a belt never asks less than, at a fraction of the cost of the thrust itself.</summary>
/// <remarks>
/// The model has no scale of its own: F_d/F_s is a function of the loading D/(2 tan β F_s μ_e2) alone, and up to 1 it
/// is concave, so straight lines between its tabulated values stay under it. The arc beyond the drive wrap is not cut
/// off there, since the cut would put a kink into a concave curve; where the active arc passes the drive wrap,
/// D/(2 μ_e1 tan β) takes over: the greater of both is the floor.
/// </remarks>
public readonly struct BeltThrustFloor
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
        if (!(place >= 0 && place < Cells))
            return belt.DriveThrust(drivenClamp, effectiveTension);
        int cell = (int)place;
        double left = Chord(cell);
        double line = drivenClamp * (left + (place - cell) * (Chord(cell + 1) - left));
        return belt.Form == DriveThrustForm.Locked ? line : Math.Max(line, belt.SlipEdge(effectiveTension));
    }

    // Tabulated as it is asked for: one set sees few cells. Threads that meet here write the same number.
    private double Chord(int cell)
    {
        double known = chord[cell];
        return double.IsNaN(known) ? chord[cell] = belt.UncutThrustPerClamp((double)cell / Cells) : known;
    }
}
