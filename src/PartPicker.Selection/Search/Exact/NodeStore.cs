namespace PartPicker.Selection;

/// <summary>Boxes of sets that wait for their turn, by rising bound; of equal bounds the newest first.</summary>
/// <remarks>
/// A box is a node of each tree; a driven item by itself stands as its complement. It remembers between which speeds
/// its members engage, and at each position in which cells of the <see cref="SpeedGrid"/> they may balance.
/// </remarks>
internal sealed class NodeStore
{
    // What a thread may keep between searches.
    private const int MostKept = 1 << 18;

    private readonly PriorityQueue<int, (double Bound, long Order)> queue = new();
    private Node[] nodes = new Node[1024];
    private ushort[] windows;
    private int[] free = new int[1024];
    private int freeCount;
    private int slots;
    private long order;

    public NodeStore(int windowLength)
    {
        WindowLength = windowLength;
        windows = new ushort[1024 * windowLength];
    }

    /// <summary>Numbers of a window.</summary>
    public int WindowLength { get; }

    /// <summary>True where it may be kept for another search.</summary>
    public bool IsSmall => nodes.Length <= MostKept;

    public int Waiting => queue.Count;

    /// <summary>The least bound that waits.</summary>
    public double LeastBound => queue.TryPeek(out _, out (double Bound, long Order) place) ? place.Bound : double.PositiveInfinity;

    public void Clear()
    {
        queue.Clear();
        (slots, freeCount, order) = (0, 0, 0);
    }

    /// <summary>A slot to fill; it is pushed or freed next.</summary>
    public int Take()
    {
        if (freeCount > 0)
            return free[--freeCount];
        if (slots == nodes.Length)
        {
            Array.Resize(ref nodes, 2 * slots);
            Array.Resize(ref windows, 2 * slots * WindowLength);
        }

        return slots++;
    }

    public void Free(int slot)
    {
        if (freeCount == free.Length)
            Array.Resize(ref free, 2 * freeCount);
        free[freeCount++] = slot;
    }

    public ref Node this[int slot] => ref nodes[slot];

    public Span<ushort> Window(int slot) => windows.AsSpan(slot * WindowLength, WindowLength);

    public void Push(int slot, double bound) => queue.Enqueue(slot, (bound, --order));

    /// <summary>Another box with the window of one that stays, to be pushed or freed next.</summary>
    public int TakeBeside(int slot, in Node node)
    {
        int copy = Take();
        nodes[copy] = node;
        Window(slot).CopyTo(Window(copy));
        return copy;
    }

    public bool TryPeek(out int slot, out double bound)
    {
        bool any = queue.TryPeek(out slot, out (double Bound, long Order) place);
        bound = place.Bound;
        return any;
    }

    public int Pop(out double bound)
    {
        queue.TryDequeue(out int slot, out (double Bound, long Order) place);
        bound = place.Bound;
        return slot;
    }
}

/// <summary>A box of sets: a node of each tree, and what was found out about its members.</summary>
internal struct Node
{
    public int Spring;
    public int Flyweight;

    /// <summary>A node of the driven tree, or the complement of one item.</summary>
    public int Driven;

    /// <summary>No member engages below (rpm).</summary>
    public double LeastEngagement;

    /// <summary>No member engages above (rpm).</summary>
    public double GreatestEngagement;

    /// <summary>No member's greatest error is less (in tolerances).</summary>
    public double LeastError;

    /// <summary>True where nothing but clamps has bounded it yet.</summary>
    public bool Unbounded;

    /// <summary>True where all members are alike and the model has judged one: miss and greatest error are theirs.</summary>
    public bool Judged;
}
