using System.Numerics;
using System.Runtime.Intrinsics;

namespace PartPicker.Selection;

/// <summary>For each helix the box, along the directions of a <see cref="ClampFrame"/>, in which its choices' clamps lie.</summary>
/// <remarks>
/// Numbers of all helices stand side by side, one vector lane for each: a lane adds and multiplies in the same order
/// whatever the width, so that every processor passes the same helices.
/// </remarks>
internal sealed class HelixBoxes
{
    /// <summary>Helices side by side.</summary>
    public static readonly int Width = Vector512<float>.Count;

    // More than the rounding of a place to a float and of what is worked out from it (units).
    private const double Rounding = 1e-6;

    // More than the rounding of a bracket, and of what lies in it.
    private const float Bracketing = 4e-6f;

    private readonly int directions;

    // By direction, by helix.
    private readonly double[] middle;
    private readonly float[] half;

    /// <param name="directions">Directions.</param>
    /// <param name="count">Helices: they are filled in one by one.</param>
    public HelixBoxes(int directions, int count)
    {
        this.directions = directions;
        Count = count;
        Lanes = (int)LanesOf(count);
        middle = new double[directions * Lanes];
        half = new float[directions * Lanes];
    }

    /// <summary>Fills in between which places the choices of a helix lie along a direction.</summary>
    public void Fill(int helix, int direction, double low, double high)
    {
        middle[direction * Lanes + helix] = (low + high) / 2;
        half[direction * Lanes + helix] = BoxTree.Above((high - low) / 2 + Rounding * (1000 + Math.Abs(low) + Math.Abs(high)));
    }

    /// <summary>Helices.</summary>
    public int Count { get; }

    /// <summary>As many, filled up to whole vectors.</summary>
    public int Lanes { get; }

    /// <summary>Bytes held.</summary>
    public long Bytes => BytesOf(Count, directions);

    /// <summary>Bytes of so many helices.</summary>
    public static long BytesOf(long helices, int directions) => (sizeof(double) + sizeof(float)) * directions * LanesOf(helices);

    private static long LanesOf(long helices) => (helices + Width - 1) / Width * Width;

    /// <summary>The middles of all boxes under torque, by direction, by helix.</summary>
    /// <param name="moved">By how much it moves the helices of the pool along each direction, one helix after the other.</param>
    /// <param name="helices">Places in the pool of the helices.</param>
    /// <param name="at">Where they are written.</param>
    public void At(ReadOnlySpan<double> moved, ReadOnlySpan<int> helices, Span<float> at)
    {
        at.Clear();
        for (int i = 0; i < directions; i++)
        {
            for (int helix = 0; helix < Count; helix++)
                at[i * Lanes + helix] = (float)(middle[i * Lanes + helix] + moved[helices[helix] * directions + i]);
        }

        Bracket(at);
    }

    // Behind the places the least and the greatest of each block along the first direction: most blocks are passed by them.
    private void Bracket(Span<float> at)
    {
        Span<float> low = at.Slice(middle.Length, Brackets);
        Span<float> high = at.Slice(middle.Length + Brackets, Brackets);
        low.Fill(float.PositiveInfinity);
        high.Fill(float.NegativeInfinity);
        for (int helix = 0; helix < Count; helix++)
        {
            int block = helix / Width;
            float wide = half[helix] + Bracketing * (1000 + Math.Abs(at[helix]));
            low[block] = Math.Min(low[block], at[helix] - wide);
            high[block] = Math.Max(high[block], at[helix] + wide);
        }
    }

    // As many as blocks, filled up to whole vectors.
    private int Brackets => (Lanes / Width + Width - 1) / Width * Width;

    /// <summary>Numbers that say where the boxes lie.</summary>
    public int Places => middle.Length + 2 * Brackets;

    /// <summary>Lists the helices that may have a choice within a limit: for each Σ of squared distances (units) that none of its choices falls below.</summary>
    /// <param name="at">Where the boxes lie.</param>
    /// <param name="seen">The wanted row along each direction.</param>
    /// <param name="apart">How far off it may be: it shortens every distance.</param>
    /// <param name="limit">The squares up to which a helix matters.</param>
    /// <param name="helices">Room for all.</param>
    /// <param name="squares">Likewise.</param>
    /// <returns>How many there are.</returns>
    public int Near(float[] at, ReadOnlySpan<float> seen, float apart, float limit, Span<int> helices, Span<float> squares)
    {
        var most = Vector512.Create(limit);
        var loosened = Vector512.Create(apart);
        var firstSeen = Vector512.Create(seen[0]);
        int count = 0;
        for (int group = 0; group < Brackets; group += Width)
        {
            int low = middle.Length + group;
            Vector512<float> outside = Vector512.Max(
                Vector512.LoadUnsafe(ref at[low]) - firstSeen, firstSeen - Vector512.LoadUnsafe(ref at[low + Brackets]));
            Vector512<float> distance = Vector512.Max(Vector512<float>.Zero, outside - loosened);
            ulong blocks = Vector512.LessThanOrEqual(distance * distance, most).ExtractMostSignificantBits();
            for (; blocks != 0; blocks &= blocks - 1)
                count = NearOf((group + BitOperations.TrailingZeroCount(blocks)) * Width, at, seen, loosened, most, helices, squares, count);
        }

        return count;
    }

    // The same of one block; as many as there are with those before.
    private int NearOf(
        int first, float[] at, ReadOnlySpan<float> seen, Vector512<float> loosened, Vector512<float> most,
        Span<int> helices, Span<float> squares, int count)
    {
        Vector512<float> sum = Vector512<float>.Zero;
        int lane = first;
        foreach (float place in seen)
        {
            Vector512<float> offset = Vector512.Abs(Vector512.Create(place) - Vector512.LoadUnsafe(ref at[lane]));
            Vector512<float> distance = Vector512.Max(
                Vector512<float>.Zero, offset - Vector512.LoadUnsafe(ref half[lane]) - loosened);
            sum += distance * distance;
            lane += Lanes;
            if (!Vector512.LessThanOrEqualAny(sum, most))
                return count;
        }

        ulong held = Vector512.LessThanOrEqual(sum, most).ExtractMostSignificantBits();
        for (; held != 0; held &= held - 1)
        {
            int helix = first + BitOperations.TrailingZeroCount(held);
            if (helix == Count)
                break;
            helices[count] = helix;
            squares[count++] = sum[helix - first];
        }

        return count;
    }

    /// <summary>The same of one helix, without vectors: what <see cref="Near"/> must equal to the last bit.</summary>
    public float SquaresOf(int helix, float[] at, ReadOnlySpan<float> seen, float apart)
    {
        float sum = 0;
        for (int i = 0; i < seen.Length; i++)
        {
            float distance = Outside(i, helix, at, seen, apart);
            sum += distance * distance;
        }

        return sum;
    }

    /// <summary>By how much the wanted row lies beyond every choice of a helix along a direction.</summary>
    public float Outside(int direction, int helix, float[] at, ReadOnlySpan<float> seen, float apart)
    {
        int lane = direction * Lanes + helix;
        return Math.Max(0, Math.Abs(seen[direction] - at[lane]) - half[lane] - apart);
    }
}
