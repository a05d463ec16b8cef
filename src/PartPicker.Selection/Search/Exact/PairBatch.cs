namespace PartPicker.Selection;

/// <summary>Drive pairs that wait to be looked at, sorted by their error of engagement.</summary>
internal sealed class PairBatch
{
    // Pairs that are sorted at once.
    private const int Most = 1 << 16;

    private double[] errors = new double[64];
    private Pair[] pairs = new Pair[64];

    public int Count { get; private set; }

    /// <summary>The pair at a place; valid until others are added.</summary>
    public Node this[int i] => new()
    {
        Spring = pairs[i].Spring,
        Flyweight = pairs[i].Flyweight,
        LeastEngagement = pairs[i].LeastEngagement,
        GreatestEngagement = pairs[i].GreatestEngagement,
        LeastError = errors[i],
    };

    /// <summary>False where there is no room for another.</summary>
    public bool TryAdd(in Node node)
    {
        if (Count == Most)
            return false;
        if (Count == pairs.Length)
        {
            Array.Resize(ref errors, 2 * Count);
            Array.Resize(ref pairs, 2 * Count);
        }

        errors[Count] = node.LeastError;
        pairs[Count++] = new Pair(node.Spring, node.Flyweight, node.LeastEngagement, node.GreatestEngagement);
        return true;
    }

    /// <summary>Those that may err least come first.</summary>
    public void Sort() => Array.Sort(errors, pairs, 0, Count);

    public void Clear() => Count = 0;

    private readonly record struct Pair(int Spring, int Flyweight, double LeastEngagement, double GreatestEngagement);
}
