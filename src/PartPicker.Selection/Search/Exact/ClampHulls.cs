namespace PartPicker.Selection;

/// <summary>Which boxes of drive pairs can balance within reach against any driven choice that counts at all.</summary>
/// <remarks>
/// At a balance the drive side's thrust is what the belt asks for the choice's clamp. Over all choices that change certain
/// numbers of slots, clamps lie between a least and a greatest, and so does the belt's thrust at the speeds within reach.
/// </remarks>
internal sealed class ClampHulls(SearchIndex index, PairSight sight)
{
    private readonly (double Least, double Greatest)[]?[] thrusts = new (double, double)[]?[DrivenLevels.Count];

    /// <summary>Forgets what was known for another reach.</summary>
    public void Clear() => Array.Clear(thrusts);

    /// <summary>False where no member balances at every position within reach, or there is no choice.</summary>
    /// <param name="node">Its springs and flyweights.</param>
    /// <param name="level">So many driven slots may change.</param>
    public bool MayBalance(in Node node, int level)
    {
        if (index.Levels[level].Helices.Length == 0)
            return false;
        (double Least, double Greatest)[] rows = thrusts[level] ??= Of(index.Levels[level]);
        ReadOnlySpan<float> springLow = index.Springs.Low(node.Spring);
        ReadOnlySpan<float> springHigh = index.Springs.High(node.Spring);
        ReadOnlySpan<float> flyweightLow = index.Flyweights.Low(node.Flyweight);
        ReadOnlySpan<float> flyweightHigh = index.Flyweights.High(node.Flyweight);
        for (int j = 0; j < rows.Length; j++)
        {
            (double least, double greatest) = sight.Thrust(
                j, (flyweightLow[j], flyweightHigh[j]), (springLow[j], springHigh[j]));
            if (greatest < rows[j].Least || (least > rows[j].Greatest && node.GreatestEngagement < sight.From(j)))
                return false;
        }

        return true;
    }

    private (double, double)[] Of(DrivenLevels.Level level)
    {
        var rows = new (double, double)[index.Scale.Points];
        for (int j = 0; j < rows.Length; j++)
        {
            int line = rows.Length + j;
            rows[j] = sight.BeltThrust(j, (level.Low[j], level.High[j]), (level.Low[line], level.High[line]));
        }

        return rows;
    }
}
