using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>What an import has read so far, sound or not.</summary>
internal sealed class CatalogDraft
{
    private readonly List<DraftItem> items = [];
    private readonly Dictionary<string, DraftItem> byId = new(StringComparer.Ordinal);
    private readonly HashSet<ItemKind> unread = [];

    public Findings Findings { get; } = new();

    public IReadOnlyList<DraftItem> Items => items;

    public List<DraftOutlet> Outlets { get; } = [];

    public Dictionary<(string Outlet, Slot Slot), DraftLabour> Labour { get; } = [];

    public DraftItem? Find(string id) => byId.GetValueOrDefault(id);

    /// <summary>Says that items of these kinds could not be read at all, so that their ids are not known.</summary>
    public void Lose(IEnumerable<ItemKind> kinds) => unread.UnionWith(kinds);

    /// <summary>Whether an id that seems missing may be that of an item which could not be read.</summary>
    /// <param name="kind">The kind that belongs there; null: any part.</param>
    public bool MayHaveLost(ItemKind? kind) => kind is { } one
        ? unread.Contains(one)
        : unread.Any(lost => FieldRegistry.Blank(lost) is Part);

    /// <summary>The item of an id, when it is of that kind and nothing of it was refused.</summary>
    public T? Sound<T>(string id) where T : CatalogItem => Find(id) is { Sound: true, Item: T item } ? item : null;

    public void Add(DraftItem item)
    {
        items.Add(item);
        if (item.Item.Id.Length == 0)
            Lose([item.Item.Kind]);
        else if (!byId.TryAdd(item.Item.Id, item))
            RefuseTwin(item, byId[item.Item.Id]);
    }

    /// <summary>By kind and id, so that nothing depends on the order of rows and files.</summary>
    public CatalogContents Contents() => new(
        [.. items.Select(i => i.Item).OrderBy(i => i.Kind).ThenBy(i => i.Id, StringComparer.Ordinal)],
        [.. Outlets.Select(o => WithLabour(o.Outlet)).OrderBy(o => o.Id, StringComparer.Ordinal)]);

    private Outlet WithLabour(Outlet outlet) => outlet with
    {
        LabourMinutes = Labour.Where(l => l.Key.Outlet == outlet.Id)
            .ToDictionary(l => l.Key.Slot, l => l.Value.Minutes),
    };

    private void RefuseTwin(DraftItem item, DraftItem first) => item.Refuse("id", Findings, new(
        FindingCodes.DuplicateId,
        $"The id stands already in {first.Place.File}, {first.Place.Where}. "
        + "Ids are unique across the whole catalog."));
}
