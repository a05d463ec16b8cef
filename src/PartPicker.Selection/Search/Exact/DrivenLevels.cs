namespace PartPicker.Selection;

/// <summary>The driven choices by how many slots they change: what is near a wanted row of clamps, and changes no more than so many.</summary>
/// <remarks>
/// The more slots may change, the more choices there are, and the better the best of them. A pair of which only sets with
/// few changes count looks at few choices.
/// </remarks>
internal sealed class DrivenLevels
{
    /// <summary>Levels: from none to all three slots changed, spring, hole and helix.</summary>
    public const int Count = 4;

    private readonly Level[] levels;

    /// <param name="pool">The choices.</param>
    /// <param name="changes">How many slots each changes.</param>
    /// <param name="clamps">Their clamps.</param>
    /// <param name="scale">How clamps are counted, and what is usual.</param>
    public DrivenLevels(DrivenPool pool, byte[] changes, DrivenClamps clamps, ClampScale scale)
    {
        int[][] members = ByHelix(pool);
        IEnumerable<int> helices = Enumerable.Range(0, members.Length).Where(helix => members[helix].Length > 0);
        Frame = new ClampFrame([.. helices.Select(helix => members[helix])], clamps, scale);

        // Helices that lie near each other stand side by side: a whole block of them is passed at once.
        int[] order = [.. helices.OrderBy(helix => UsualPlace(members[helix][0]))];
        levels = [.. Enumerable.Range(0, Count).Select(most => new Level(most, order, members, changes, clamps, Frame))];

        double UsualPlace(int item)
        {
            Span<double> standing = stackalloc double[scale.Points];
            clamps.Standing(item, standing);
            return Frame.UsualPlace(standing, clamps.PerTorque(item));
        }
    }

    /// <summary>Without a choice.</summary>
    public static readonly DrivenLevels None = new(DrivenPool.Of([], [], [], _ => false), [], null!, new ClampScale([], 0, []));

    /// <summary>The directions in which clamps are seen.</summary>
    public ClampFrame Frame { get; }

    public Level this[int changes] => levels[changes];

    /// <summary>All choices.</summary>
    public Level All => levels[^1];

    /// <summary>Bytes held.</summary>
    public long Bytes => levels.Sum(l => l.Boxes.Bytes + l.Strips.Bytes + 4L * (l.Helices.Length + l.Lanes.Length) + 8L * l.Low.Length);

    /// <summary>Bytes that it takes at most while it is made.</summary>
    public static long BytesToBuild(long choices, long helices, int points)
    {
        // A choice's changes, its place by helix and, with a strip of its own, among the strips; then what one helix is dealt out by.
        const int OfChoice = 1 + 4 + 16 + 24;
        return choices * OfChoice + ClampFrame.BytesToBuild(choices, helices, points)
            + Count * (HelixBoxes.BytesOf(helices, points) + 16 * (helices + 1) + 16L * points);
    }

    // For each helix of the pool its choices.
    private static int[][] ByHelix(DrivenPool pool)
    {
        int[] counts = new int[pool.Helices.Count];
        for (int item = 0; item < pool.Count; item++)
            counts[pool.Code(item).Helix]++;
        int[][] members = [.. counts.Select(count => new int[count])];
        for (int item = pool.Count - 1; item >= 0; item--)
        {
            int helix = pool.Code(item).Helix;
            members[helix][--counts[helix]] = item;
        }

        return members;
    }

    /// <summary>The choices that change no more than so many slots.</summary>
    internal sealed class Level
    {
        /// <param name="most">Most slots that they change.</param>
        /// <param name="order">Helices in the order in which they stand side by side.</param>
        /// <param name="members">For each helix of the pool all its choices.</param>
        /// <param name="changes">How many slots each choice changes.</param>
        /// <param name="clamps">The clamps of every choice.</param>
        /// <param name="frame">The directions in which they are seen.</param>
        public Level(int most, int[] order, int[][] members, byte[] changes, DrivenClamps clamps, ClampFrame frame)
        {
            int points = frame.Count;
            Helices = [.. order.Where(helix => members[helix].Any(item => changes[item] <= most))];
            Lanes = [.. Enumerable.Repeat(-1, members.Length)];
            Boxes = new HelixBoxes(points, Helices.Length);
            Strips = new DrivenStrips([.. Helices.Select(helix => members[helix].Count(item => changes[item] == most))]);
            var all = new Extent(2 * points);
            double[] clamp = new double[2 * points];
            double[] seen = new double[points];
            for (int lane = 0; lane < Helices.Length; lane++)
            {
                int helix = Helices[lane];
                Lanes[helix] = lane;
                clamps.PerTorqueOf(helix).CopyTo(clamp.AsSpan(points));
                var own = new Extent(points);
                int[] joints = new int[Strips.Count(lane)];
                double[] along = new double[joints.Length];
                double[] across = new double[joints.Length];
                int count = 0;
                foreach (int item in members[helix])
                {
                    if (changes[item] > most)
                        continue;
                    clamps.Standing(item, clamp.AsSpan(0, points));
                    all.Add(clamp);
                    for (int i = 0; i < points; i++)
                        seen[i] = frame.Seen(i, clamp.AsSpan(0, points));
                    own.Add(seen);
                    if (changes[item] == most)
                        (joints[count], along[count], across[count++]) = (clamps.Joint(item), seen[frame.Widest], seen[frame.Second]);
                }

                Strips.Fill(lane, joints, along, across);
                for (int i = 0; i < points; i++)
                    Boxes.Fill(lane, i, own.Low[i], own.High[i]);
            }

            Low = [.. all.Low.Select(BoxTree.Below)];
            High = [.. all.High.Select(BoxTree.Above)];
        }

        /// <summary>Places in the pool of the helices that they have.</summary>
        public int[] Helices { get; }

        /// <summary>For each helix of the pool where it stands among these; below 0 where it does not.</summary>
        public int[] Lanes { get; }

        /// <summary>Where the clamps of each lie.</summary>
        public HelixBoxes Boxes { get; }

        /// <summary>Those that change exactly so many, by helix.</summary>
        public DrivenStrips Strips { get; }

        /// <summary>No clamp lies below: standing, then per torque.</summary>
        public float[] Low { get; }

        /// <summary>Nor above.</summary>
        public float[] High { get; }
    }

    // Between which numbers rows lie.
    private sealed class Extent(int length)
    {
        public double[] Low { get; } = [.. Enumerable.Repeat(double.PositiveInfinity, length)];

        public double[] High { get; } = [.. Enumerable.Repeat(double.NegativeInfinity, length)];

        public void Add(double[] row)
        {
            for (int i = 0; i < row.Length; i++)
                (Low[i], High[i]) = (Math.Min(Low[i], row[i]), Math.Max(High[i], row[i]));
        }
    }
}
