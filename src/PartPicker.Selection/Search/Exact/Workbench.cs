using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>The room that a search works in, kept for the next search of the same thread.</summary>
/// <remarks>
/// A search that begins while another of its thread goes on gets a workbench of its own. Of what it holds nothing is read
/// before the next search has filled it.
/// </remarks>
internal sealed class Workbench
{
    // Numbers of one kind, sets or pairs that a thread may keep between searches.
    private const int MostKept = 1 << 18;

    [ThreadStatic]
    private static Workbench? spare;

    private readonly List<WantedClamp.Table> tables = [];
    private readonly float[][] at = [.. Enumerable.Repeat<float[]>([], DrivenLevels.Count)];
    private double[] moved = [];
    private int[] helices = [];
    private float[] squares = [];
    private NodeStore? store;

    public PairBatch Pairs { get; } = new();

    /// <summary>Pairs whose clamps tell nothing, by place in the pools.</summary>
    public HashSet<(int, int)> Aside { get; } = [];

    /// <summary>Such pairs that wait to be halved.</summary>
    public List<Node> Unclear { get; } = [];

    /// <summary>Of pairs, by place in the pools.</summary>
    public Dictionary<(int, int), Engagement> Engagements { get; } = [];

    /// <summary>By kind of set what the model said.</summary>
    public Dictionary<(int, int, int), Judgement> Judged { get; } = [];

    /// <summary>Sets that were offered to the list.</summary>
    public HashSet<(int, int, int)> Offered { get; } = [];

    /// <summary>An empty workbench.</summary>
    public static Workbench Rent()
    {
        Workbench bench = spare ?? new Workbench();
        spare = null;
        bench.Pairs.Clear();
        bench.Aside.Clear();
        bench.Unclear.Clear();
        bench.Engagements.Clear();
        bench.Judged.Clear();
        bench.Offered.Clear();
        return bench;
    }

    /// <summary>Keeps it for the next search, unless it grew too large.</summary>
    public static void Return(Workbench bench)
    {
        if (bench.IsSmall)
            spare = bench;
    }

    private bool IsSmall => store is not { IsSmall: false } && moved.Length <= MostKept && at[^1].Length <= MostKept
        && Aside.Capacity <= MostKept && Unclear.Capacity <= MostKept && Engagements.Capacity <= MostKept
        && Judged.Capacity <= MostKept && Offered.Capacity <= MostKept;

    /// <summary>An empty store for so many numbers of a window.</summary>
    public NodeStore StoreOf(int windowLength)
    {
        if (store?.WindowLength != windowLength)
            store = new NodeStore(windowLength);
        store.Clear();
        return store;
    }

    /// <summary>An empty table of wanted clamps for a position.</summary>
    public WantedClamp.Table TableOf(int position)
    {
        while (tables.Count <= position)
            tables.Add(new WantedClamp.Table());
        tables[position].Clear();
        return tables[position];
    }

    /// <summary>Room for so many numbers or more.</summary>
    public double[] Moved(int length) => moved.Length < length ? moved = new double[length] : moved;

    /// <summary>Room for so many numbers or more of a level.</summary>
    public float[] At(int level, int length) => at[level].Length < length ? at[level] = new float[length] : at[level];

    /// <summary>Room for so many helices, and for a number of each.</summary>
    public (int[] Helices, float[] Squares) Helices(int length)
    {
        if (helices.Length < length)
            (helices, squares) = (new int[length], new float[length]);
        return (helices, squares);
    }
}
