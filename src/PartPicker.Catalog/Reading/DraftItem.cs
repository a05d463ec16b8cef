using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>An item as read, with the place to point at when something is wrong with it.</summary>
/// <param name="item">With every field that could be read.</param>
/// <param name="place">Where it stands.</param>
/// <param name="written">The texts as written, by field name.</param>
/// <param name="sound">False when some of it could not be read.</param>
internal sealed class DraftItem(
    CatalogItem item, ItemPlace place, IReadOnlyDictionary<string, string> written, bool sound)
{
    public CatalogItem Item => item;

    public ItemPlace Place => place;

    public IReadOnlyDictionary<string, string> Written => written;

    /// <summary>False once anything of it was refused: what follows from the rest would mislead.</summary>
    public bool Sound { get; private set; } = sound;

    public void Refuse(string field, Findings findings, Refusal refusal) =>
        Refuse(findings, place.Column(field), written.GetValueOrDefault(field), refusal);

    /// <summary>
    /// Refuses an item of which too little is known to compute with; a replaced number leads on to its successor then.
    /// </summary>
    public void RefuseUnknown(Findings findings, string sentence)
    {
        if (item is not Part { SupersededBy: not null })
            Refuse(findings, place.Pointer, null, new(FindingCodes.NotKnown, sentence));
    }

    private void Refuse(Findings findings, string? column, string? value, Refusal refusal)
    {
        Sound = false;
        findings.Add(place.File, place.Row, column, value, refusal);
    }
}

/// <summary>A row of a CSV file, or an object of a JSON file.</summary>
internal sealed record ItemPlace(string File, int? Row, string? Pointer)
{
    public string Where => Pointer is null ? $"line {Row}" : $"at {Pointer}";

    public string Column(string field) => Pointer is null ? field : JsonSource.Below(Pointer, field);
}

/// <summary>An outlet as read, with the line of each offer.</summary>
internal sealed record DraftOutlet(Outlet Outlet, string File, IReadOnlyList<(string PartId, int Line)> Lines);

/// <summary>The minutes of a slot at an outlet, and where they stand.</summary>
internal sealed record DraftLabour(int Minutes, string File, int Line);
