namespace PartPicker.Selection;

/// <summary>Reads coordinates of an item, as many as there is room for, from one on.</summary>
internal delegate void Coordinates(int item, int from, Span<double> to);

/// <summary>Candidates as points, in boxes within boxes: each inner box is halved along a side that is wide.</summary>
/// <remarks>
/// Node 0 is the root. Points are read when they are asked for, and not kept: the box of a leaf is made of the nearest
/// floats below and above its items, that of an inner node of its halves, so what is bounded over a box is bounded for every
/// item. Equal points give equal trees.
/// </remarks>
internal sealed class BoxTree
{
    // Items of a node of which the widest side is told: where to cut proves nothing.
    private const int Sampled = 64;

    private readonly float[] low;
    private readonly float[] high;
    private readonly int[] child;
    private readonly int[] start;
    private readonly int[] count;
    private readonly int[] items;
    private int used;

    /// <param name="size">Items.</param>
    /// <param name="points">Their coordinates.</param>
    /// <param name="scale">What a unit along each side is worth; 0: a side that is not cut.</param>
    /// <param name="leafSize">Most items of a leaf.</param>
    /// <param name="group">Groups that are told apart before anything else; null: there is one.</param>
    public BoxTree(int size, Coordinates points, double[] scale, int leafSize, Func<int, int>? group = null)
    {
        Dimensions = scale.Length;
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
        var making = new Making(points, scale, leafSize, size > leafSize ? new double[size] : []);
        FillGroups(0, 0, groups, making);
    }

    public int Dimensions { get; }

    public int Nodes => child.Length;

    /// <summary>Bytes held.</summary>
    public long Bytes => 4L * (low.Length + high.Length + child.Length + start.Length + count.Length + items.Length);

    public ReadOnlySpan<float> Low(int node) => low.AsSpan(node * Dimensions, Dimensions);

    public ReadOnlySpan<float> High(int node) => high.AsSpan(node * Dimensions, Dimensions);

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

    private void FillGroups(int node, int from, ReadOnlySpan<int> groups, Making making)
    {
        int size = 0;
        foreach (int members in groups)
            size += members;
        if (groups.Length == 1)
        {
            Fill(node, from, size, making);
            return;
        }

        ReadOnlySpan<int> first = groups[..(groups.Length / 2)];
        int left = Halve(node, from, size);
        FillGroups(left, from, first, making);
        FillGroups(left + 1, from + count[left], groups[first.Length..], making);
        Join(node);
    }

    private void Fill(int node, int from, int size, Making making)
    {
        if (size <= making.LeafSize)
        {
            start[node] = from;
            count[node] = size;
            Bound(node, making.Points);
            return;
        }

        int half = size / 2;
        int side = Widest(from, size, making);
        for (int i = from; i < from + size; i++)
            making.Points(items[i], side, making.Keys.AsSpan(i, 1));
        Select(from, size, half, making.Keys);
        int left = Halve(node, from, size);
        Fill(left, from, half, making);
        Fill(left + 1, from + half, size - half, making);
        Join(node);
    }

    private int Halve(int node, int from, int size)
    {
        start[node] = from;
        count[node] = size;
        child[node] = used;
        used += 2;
        return child[node];
    }

    private void Bound(int node, Coordinates points)
    {
        Span<double> least = stackalloc double[Dimensions];
        Span<double> most = stackalloc double[Dimensions];
        Reach(Items(node), count[node], points, least, most);
        for (int d = 0; d < Dimensions; d++)
            (low[node * Dimensions + d], high[node * Dimensions + d]) = (Below(least[d]), Above(most[d]));
    }

    // Between which coordinates so many of the items, spread over all, lie.
    private static void Reach(ReadOnlySpan<int> items, int samples, Coordinates points, Span<double> least, Span<double> most)
    {
        Span<double> point = stackalloc double[least.Length];
        least.Fill(double.PositiveInfinity);
        most.Fill(double.NegativeInfinity);
        for (int i = 0; i < samples; i++)
        {
            points(items[(int)((long)i * items.Length / samples)], 0, point);
            for (int d = 0; d < point.Length; d++)
                (least[d], most[d]) = (Math.Min(least[d], point[d]), Math.Max(most[d], point[d]));
        }
    }

    private void Join(int node)
    {
        int at = node * Dimensions;
        int left = child[node] * Dimensions;
        for (int d = 0; d < Dimensions; d++)
        {
            low[at + d] = Math.Min(low[left + d], low[left + Dimensions + d]);
            high[at + d] = Math.Max(high[left + d], high[left + Dimensions + d]);
        }
    }

    private int Widest(int from, int size, Making making)
    {
        Span<double> least = stackalloc double[Dimensions];
        Span<double> most = stackalloc double[Dimensions];
        Reach(items.AsSpan(from, size), Math.Min(size, Sampled), making.Points, least, most);
        int widest = 0;
        double width = -1;
        for (int d = 0; d < Dimensions; d++)
        {
            double own = making.Scale[d] * (most[d] - least[d]);
            if (own > width)
                (widest, width) = (d, own);
        }

        return widest;
    }

    // Puts the items with the least keys first; equals stand by their place in the pool.
    private void Select(int from, int size, int rank, double[] keys)
    {
        int left = from;
        int right = from + size - 1;
        int wanted = from + rank;
        while (left < right)
        {
            (double pivot, int pivotItem) = (keys[(left + right) / 2], items[(left + right) / 2]);
            int i = left;
            int j = right;
            while (i <= j)
            {
                while (keys[i] < pivot || (keys[i] == pivot && items[i] < pivotItem))
                    i++;
                while (keys[j] > pivot || (keys[j] == pivot && items[j] > pivotItem))
                    j--;
                if (i > j)
                    continue;
                (items[i], items[j]) = (items[j], items[i]);
                (keys[i], keys[j]) = (keys[j], keys[i]);
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
    }

    private sealed record Making(Coordinates Points, double[] Scale, int LeafSize, double[] Keys);
}
