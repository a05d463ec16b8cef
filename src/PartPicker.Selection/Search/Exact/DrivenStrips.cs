namespace PartPicker.Selection;

/// <summary>Driven choices by helix, in strips: near ones are found without looking at the others.</summary>
/// <remarks>
/// Choices of a helix are dealt into about as many strips as a strip has choices: the strips by the second widest direction,
/// choices within a strip by the widest. Whatever lies within a radius of a wanted row lies in the strips that
/// the radius reaches, and there within the radius along the widest direction. Of a choice the places of spring, hole and
/// helix are kept, not its place in the pool: most are looked at and passed, and it is found again from these.
/// </remarks>
internal sealed class DrivenStrips
{
    // More than the rounding of a place to a float.
    private const double Rounding = 1e-6;

    private readonly int[] joints;
    private readonly float[] places;

    // By helix its first item, one more at the end; likewise its first strip.
    private readonly int[] firstItem;
    private readonly int[] firstStrip;

    // The least and the greatest place across of each strip.
    private readonly float[] across;

    /// <param name="counts">How many choices each helix has: they are filled in helix by helix.</param>
    public DrivenStrips(IReadOnlyList<int> counts)
    {
        firstItem = new int[counts.Count + 1];
        firstStrip = new int[counts.Count + 1];
        for (int helix = 0; helix < counts.Count; helix++)
        {
            firstItem[helix + 1] = firstItem[helix] + counts[helix];
            firstStrip[helix + 1] = firstStrip[helix] + StripsOf(counts[helix]);
        }

        joints = new int[firstItem[^1]];
        places = new float[joints.Length];
        across = new float[2 * firstStrip[^1]];
    }

    /// <summary>Bytes held.</summary>
    public long Bytes => 4L * (joints.Length + places.Length + firstItem.Length + firstStrip.Length + across.Length);

    /// <summary>Choices of a helix.</summary>
    public int Count(int helix) => firstItem[helix + 1] - firstItem[helix];

    /// <summary>The first run, from a strip of a helix on, of choices within a radius of a place.</summary>
    /// <param name="helix">Which one.</param>
    /// <param name="strip">Counted within the helix; afterwards the one to go on with.</param>
    /// <param name="at">The place, along and across.</param>
    /// <param name="radius">How far off a choice may lie.</param>
    /// <returns>As <see cref="DrivenPool.Joint"/> says them; empty where no strip is left.</returns>
    public ReadOnlySpan<int> Next(int helix, ref int strip, (double Along, double Across) at, double radius)
    {
        int first = firstItem[helix];
        int count = firstItem[helix + 1] - first;
        int strips = firstStrip[helix + 1] - firstStrip[helix];
        double slack = Rounding * (1 + radius + Math.Abs(at.Across));
        if (strip == 0)
            strip = FirstReaching(firstStrip[helix], strips, at.Across - radius - slack);
        for (; strip < strips; strip++)
        {
            int edge = 2 * (firstStrip[helix] + strip);
            if (across[edge] > at.Across + radius + slack)
                break;
            int from = first + StartOf(strip, strips, count);
            int to = first + StartOf(strip + 1, strips, count);
            double wide = radius + Rounding * (1 + radius + Math.Abs(at.Along));
            int low = FirstFrom(from, to, at.Along - wide);
            int high = low;
            while (high < to && places[high] <= at.Along + wide)
                high++;
            if (high == low)
                continue;
            strip++;
            return joints.AsSpan(low, high - low);
        }

        strip = strips;
        return [];
    }

    /// <summary>Fills in the choices of a helix.</summary>
    /// <param name="helix">Which one.</param>
    /// <param name="members">All its choices, as <see cref="DrivenPool.Joint"/> says them.</param>
    /// <param name="along">Where each lies along the widest direction.</param>
    /// <param name="keys">And across it, along the second widest; it is written over.</param>
    public void Fill(int helix, int[] members, double[] along, double[] keys)
    {
        int count = members.Length;
        int[] order = [.. Enumerable.Range(0, count)];
        Array.Sort(keys, order);
        int strips = StripsOf(count);
        for (int strip = 0; strip < strips; strip++)
        {
            int from = StartOf(strip, strips, count);
            int to = StartOf(strip + 1, strips, count);
            int edge = 2 * (firstStrip[helix] + strip);
            across[edge] = BoxTree.Below(keys[from]);
            across[edge + 1] = BoxTree.Above(keys[to - 1]);
            for (int i = from; i < to; i++)
                keys[i] = along[order[i]];
            Array.Sort(keys, order, from, to - from);
            for (int i = from; i < to; i++)
            {
                joints[firstItem[helix] + i] = members[order[i]];
                places[firstItem[helix] + i] = (float)keys[i];
            }
        }
    }

    // The first strip of a helix that ends at a place or beyond.
    private int FirstReaching(int first, int strips, double place)
    {
        int from = 0;
        int to = strips;
        while (from < to)
        {
            int middle = (from + to) / 2;
            if (across[2 * (first + middle) + 1] < place)
                from = middle + 1;
            else
                to = middle;
        }

        return from;
    }

    private int FirstFrom(int from, int to, double place)
    {
        while (from < to)
        {
            int middle = (from + to) / 2;
            if (places[middle] < place)
                from = middle + 1;
            else
                to = middle;
        }

        return from;
    }

    private static int StripsOf(int count) => (int)Math.Ceiling(Math.Sqrt(count));

    private static int StartOf(int strip, int strips, int count) => (int)((long)strip * count / strips);
}
