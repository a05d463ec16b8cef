namespace PartPicker.Selection;

/// <summary>What the order of answers wants to know of each node of a tree.</summary>
internal sealed class NodeFacts
{
    // The kind of a node whose items are of several.
    private const int Mixed = -1;

    private readonly byte[] changes;
    private readonly int[] places;
    private readonly int[] kinds;

    /// <param name="tree">The tree.</param>
    /// <param name="kind">Equal for items that the model cannot tell apart; not below 0.</param>
    /// <param name="changesOf">How many slots an item changes.</param>
    public NodeFacts(BoxTree tree, Func<int, int> kind, Func<int, byte> changesOf)
    {
        changes = tree.Least(changesOf);
        places = tree.Least(item => item);
        kinds = new int[tree.Nodes];
        for (int node = tree.Nodes - 1; node >= 0; node--)
        {
            if (tree.IsLeaf(node))
                kinds[node] = KindOf(tree.Items(node), kind);
            else if (kinds[tree.Child(node)] == kinds[tree.Child(node) + 1])
                kinds[node] = kinds[tree.Child(node)];
            else
                kinds[node] = Mixed;
        }
    }

    /// <summary>Bytes held.</summary>
    public long Bytes => changes.Length + 4L * (places.Length + kinds.Length);

    /// <summary>The least number of slots that an item of the node changes.</summary>
    public int Changes(int node) => changes[node];

    /// <summary>The first place in the pool of an item of the node.</summary>
    public int Place(int node) => places[node];

    /// <summary>True where the model cannot tell the node's items apart.</summary>
    public bool Alike(int node) => kinds[node] != Mixed;

    private static int KindOf(ReadOnlySpan<int> items, Func<int, int> kind)
    {
        int first = kind(items[0]);
        foreach (int item in items[1..])
        {
            if (kind(item) != first)
                return Mixed;
        }

        return first;
    }
}
