namespace PartPicker.Selection;

/// <summary>Candidates as points, in boxes within boxes: each inner box is halved along its widest side.</summary>
/// <remarks>
/// Node 0 is the root. Points are kept as the two nearest floats below and above; the box of a node holds those of all
/// its items, so what is bounded over a box is bounded for every item. Equal points give equal trees.
/// </remarks>
internal sealed class BoxTree
{
    private readonly float[] low;
    private readonly float[] high;
    private readonly int[] child;
    private readonly int[] start;
    private readonly int[] count;
    private readonly int[] items;
    private readonly List<int> groupRoots = [];
    private int used;

    /// <param name="points">The items' coordinates, one after the other.</param>
    /// <param name="scale">What a unit along each side is worth; 0: a side that is not cut.</param>
    /// <param name="leafSize">Most items of a leaf.</param>
    /// <param name="group">Groups that are told apart before anything else; null: there is one.</param>
    public BoxTree(double[] points, double[] scale, int leafSize, Func<int, int>? group = null)
    {
        Dimensions = scale.Length;
        int size = points.Length / Dimensions;
        items = new int[size];
        for (int i = 0; i < size; i++)
            items[i] = i;
        int[] groups = group is null ? [size] : Grouped(group);
        int nodes = groups.Length - 1 + groups.Sum(members => CountNodes(members, leafSize));
        low = new float[nodes * Dimensions];
        high = new float[nodes * Dimensions];
        child = new int[nodes];
        start = new int[nodes];
        count = new int[nodes];
        used = 1;
        FillGroups(0, 0, groups, points, scale, leafSize);
    }

    public int Dimensions { get; }

    public int Nodes => child.Length;

    /// <summary>Bytes held.</summary>
    public long Bytes => 4L * (low.Length + high.Length + child.Length + start.Length + count.Length + items.Length);

    public ReadOnlySpan<float> Low(int node) => low.AsSpan(node * Dimensions, Dimensions);

    public ReadOnlySpan<float> High(int node) => high.AsSpan(node * Dimensions, Dimensions);

    /// <summary>For each group the node that has its members and no others.</summary>
    public IReadOnlyList<int> GroupRoots => groupRoots;

    public bool IsLeaf(int node) => child[node] == 0;

    /// <summary>The first half of an inner node; the other one follows it.</summary>
    public int Child(int node) => child[node];

    public ReadOnlySpan<int> Items(int node) => items.AsSpan(start[node], count[node]);

    public int Count(int node) => count[node];

    /// <summary>For each node the least value of its items.</summary>
    public T[] Least<T>(Func<int, T> value) where T : IComparable<T>
    {
        var least = new T[Nodes];
        for (int node = Nodes - 1; node >= 0; node--)
        {
            if (!IsLeaf(node))
            {
                T left = least[child[node]];
                T right = least[child[node] + 1];
                least[node] = left.CompareTo(right) <= 0 ? left : right;
                continue;
            }

            ReadOnlySpan<int> members = Items(node);
            T best = value(members[0]);
            foreach (int item in members[1..])
            {
                T other = value(item);
                if (other.CompareTo(best) < 0)
                    best = other;
            }

            least[node] = best;
        }

        return least;
    }

    /// <summary>The nearest float that is not above a number.</summary>
    public static float Below(double value) => (float)value <= value ? (float)value : MathF.BitDecrement((float)value);

    /// <summary>The nearest float that is not below a number.</summary>
    public static float Above(double value) => (float)value >= value ? (float)value : MathF.BitIncrement((float)value);

    // Puts the items of a group side by side; how many each has.
    private int[] Grouped(Func<int, int> group)
    {
        int[] keys = [.. items.Select(group)];
        Array.Sort(keys, items);
        return [.. keys.CountBy(key => key).Select(pair => pair.Value)];
    }

    private static int CountNodes(int size, int leafSize) =>
        size <= leafSize ? 1 : 1 + CountNodes(size / 2, leafSize) + CountNodes(size - size / 2, leafSize);

    private void FillGroups(int node, int from, ReadOnlySpan<int> groups, double[] points, double[] scale, int leafSize)
    {
        int size = 0;
        foreach (int members in groups)
            size += members;
        if (groups.Length == 1)
        {
            groupRoots.Add(node);
            Fill(node, from, size, points, scale, leafSize);
            return;
        }

        start[node] = from;
        count[node] = size;
        Bound(node, points);
        ReadOnlySpan<int> first = groups[..(groups.Length / 2)];
        int left = used;
        used += 2;
        child[node] = left;
        FillGroups(left, from, first, points, scale, leafSize);
        FillGroups(left + 1, from + count[left], groups[first.Length..], points, scale, leafSize);
    }

    private void Fill(int node, int from, int size, double[] points, double[] scale, int leafSize)
    {
        start[node] = from;
        count[node] = size;
        Bound(node, points);
        if (size <= leafSize)
            return;
        int half = size / 2;
        Select(from, size, half, points, Widest(node, scale));
        int left = used;
        used += 2;
        child[node] = left;
        Fill(left, from, half, points, scale, leafSize);
        Fill(left + 1, from + half, size - half, points, scale, leafSize);
    }

    private void Bound(int node, double[] points)
    {
        Span<float> least = low.AsSpan(node * Dimensions, Dimensions);
        Span<float> most = high.AsSpan(node * Dimensions, Dimensions);
        least.Fill(float.PositiveInfinity);
        most.Fill(float.NegativeInfinity);
        foreach (int item in Items(node))
        {
            ReadOnlySpan<double> point = points.AsSpan(item * Dimensions, Dimensions);
            for (int d = 0; d < point.Length; d++)
            {
                least[d] = Math.Min(least[d], Below(point[d]));
                most[d] = Math.Max(most[d], Above(point[d]));
            }
        }
    }

    private int Widest(int node, double[] scale)
    {
        int widest = 0;
        double most = -1;
        for (int d = 0; d < Dimensions; d++)
        {
            double width = scale[d] * ((double)High(node)[d] - Low(node)[d]);
            if (width > most)
                (widest, most) = (d, width);
        }

        return widest;
    }

    // Puts the items with the least coordinates first; equals stand by their place in the pool.
    private void Select(int from, int size, int rank, double[] points, int side)
    {
        int left = from;
        int right = from + size - 1;
        int wanted = from + rank;
        while (left < right)
        {
            int pivot = items[(left + right) / 2];
            int i = left;
            int j = right;
            while (i <= j)
            {
                while (Before(items[i], pivot))
                    i++;
                while (Before(pivot, items[j]))
                    j--;
                if (i > j)
                    continue;
                (items[i], items[j]) = (items[j], items[i]);
                i++;
                j--;
            }

            if (wanted <= j)
                right = j;
            else if (wanted >= i)
                left = i;
            else
                return;
        }

        bool Before(int x, int y)
        {
            double a = points[x * Dimensions + side];
            double b = points[y * Dimensions + side];
            return a < b || (a == b && x < y);
        }
    }
}
