using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>What an import has read so far, sound or not.</summary>
internal sealed class CatalogDraft
{
    private readonly List<DraftItem> items = [];
    private readonly Dictionary<string, DraftItem> byId = new(StringComparer.Ordinal);

    public Findings Findings { get; } = new();

    public IReadOnlyList<DraftItem> Items => items;

    public List<DraftOutlet> Outlets { get; } = [];

    /// <summary>False when some row could not be read at all, so that its id is not known.</summary>
    public bool Complete { get; set; } = true;

    public DraftItem? Find(string id) => byId.GetValueOrDefault(id);

    public void Add(DraftItem item)
    {
        items.Add(item);
        if (item.Item.Id.Length == 0)
            Complete = false;
        else if (!byId.TryAdd(item.Item.Id, item))
            RefuseTwin(item, byId[item.Item.Id]);
    }

    /// <summary>By kind and id, so that nothing depends on the order of rows and files.</summary>
    public CatalogContents Contents() => new(
        [.. items.Select(i => i.Item).OrderBy(i => i.Kind).ThenBy(i => i.Id, StringComparer.Ordinal)],
        [.. Outlets.Select(o => o.Outlet).OrderBy(o => o.Id, StringComparer.Ordinal)]);

    private void RefuseTwin(DraftItem item, DraftItem first) => item.Refuse("id", Findings, new(
        FindingCodes.DuplicateId,
        $"The id stands already in {first.Place.File}, {first.Place.Where}. "
        + "Ids are unique across the whole catalog."));
}
