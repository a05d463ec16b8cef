namespace PartPicker.Catalog;

/// <summary>Collects findings up to the limit and counts them beyond it.</summary>
internal sealed class Findings
{
    private readonly List<ImportFinding> listed = [];

    /// <summary>All findings, those beyond the limit too: a reader tells by it whether it had any.</summary>
    public int Count { get; private set; }

    public void Add(string file, int? row, string? column, string? value, Refusal refusal)
    {
        Count++;
        if (listed.Count < ImportLimits.MaxFindings)
            listed.Add(new ImportFinding(file, row, column, Shown(value), refusal.Code, refusal.Reason));
    }

    /// <summary>By file and line; what was found first comes first within a line.</summary>
    public IReadOnlyList<ImportFinding> Listed()
    {
        IEnumerable<ImportFinding> sorted =
            listed.OrderBy(f => f.File, StringComparer.Ordinal).ThenBy(f => f.Row ?? 0);
        return Count == listed.Count
            ? [.. sorted]
            : [.. sorted, new ImportFinding(
                "", null, null, null, FindingCodes.TooManyFindings,
                $"There were {Count} findings; the first {ImportLimits.MaxFindings} are listed. "
                + "Mend these and import again.")];
    }

    private static string? Shown(string? value) => value?.Length > ImportLimits.MaxShownLength
        ? value[..ImportLimits.MaxShownLength] + "…"
        : value;
}
