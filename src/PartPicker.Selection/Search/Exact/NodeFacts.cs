namespace PartPicker.Selection;

/// <summary>What the order of answers wants to know of each node of a tree.</summary>
internal sealed class NodeFacts
{
    private readonly byte[] changes;
    private readonly int[] places;
    private readonly bool[] alike;

    /// <param name="tree">The tree.</param>
    /// <param name="kind">Equal for items that the model cannot tell apart.</param>
    /// <param name="changesOf">How many slots an item changes.</param>
    public NodeFacts(BoxTree tree, Func<int, int> kind, Func<int, byte> changesOf)
    {
        changes = tree.Least(changesOf);
        places = tree.Least(item => item);
        int[] least = tree.Least(kind);
        int[] greatest = tree.Least(item => -kind(item));
        alike = [.. least.Zip(greatest, (low, high) => low == -high)];
    }

    /// <summary>The least number of slots that an item of the node changes.</summary>
    public int Changes(int node) => changes[node];

    /// <summary>The first place in the pool of an item of the node.</summary>
    public int Place(int node) => places[node];

    /// <summary>True where the model cannot tell the node's items apart.</summary>
    public bool Alike(int node) => alike[node];
}
