using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>An item as read, with the place to point at when something is wrong with it.</summary>
/// <param name="Item">With every field that could be read.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Written">The texts as written, by field name.</param>
/// <param name="Sound">False when some of it was refused, so that the rest cannot be judged as a whole.</param>
internal sealed record DraftItem(
    CatalogItem Item, ItemPlace Place, IReadOnlyDictionary<string, string> Written, bool Sound)
{
    public void Refuse(string field, Findings findings, Refusal refusal) =>
        findings.Add(Place.File, Place.Row, Place.Column(field), Written.GetValueOrDefault(field), refusal);

    /// <summary>For what is wrong with the item as a whole.</summary>
    public void RefuseWhole(Findings findings, Refusal refusal) =>
        findings.Add(Place.File, Place.Row, Place.Pointer, null, refusal);
}

/// <summary>A row of a CSV file, or an object of a JSON file.</summary>
internal sealed record ItemPlace(string File, int? Row, string? Pointer)
{
    public string Where => Pointer is null ? $"line {Row}" : $"at {Pointer}";

    public string Column(string field) => Pointer is null ? field : JsonSource.Below(Pointer, field);
}

/// <summary>An outlet as read, with the line of each offer.</summary>
internal sealed record DraftOutlet(Outlet Outlet, string File, IReadOnlyList<(string PartId, int Line)> Lines);
