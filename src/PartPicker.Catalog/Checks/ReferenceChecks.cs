using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>Every id that an item names must lead to an item of the right kind.</summary>
internal sealed class ReferenceChecks
{
    private readonly CatalogDraft draft;

    private ReferenceChecks(CatalogDraft draft) => this.draft = draft;

    public static void Check(CatalogDraft draft)
    {
        // What a wrong id spoils is not judged further; what stands beside it is.
        DraftItem[] sound = [.. draft.Items.Where(i => i.Sound)];
        var references = new ReferenceChecks(draft);
        foreach (DraftItem item in sound)
            references.CheckFields(item);

        var sets = new PartSetChecks(draft);
        double shortest = draft.Items.Select(i => i.Item).OfType<DriveClutch>().Select(c => c.FullShiftTravel.Meters)
            .DefaultIfEmpty(0).Min();
        foreach (DraftItem item in sound.Where(i => i is { Sound: true, Item: Flyweight or ArmProfile }))
            FlyweightChecks.CheckCurves(item, shortest, draft.Findings);
        foreach (DraftItem item in sound)
        {
            if (item is { Sound: true, Item: Flyweight { ArmProfileId: { } id } body }
                && draft.Sound<ArmProfile>(id) is { } profile)
            {
                FlyweightChecks.CheckStations(item, body, profile, draft.Findings);
            }
        }

        foreach (DraftItem item in sound.Where(i => i.Item is Machine))
            new MachineChecks(draft, sets, item).Check();
        OutletChecks.Check(draft);
    }

    /// <summary>Why an id leads to no such item; null when it does.</summary>
    /// <param name="draft">Where it is looked up.</param>
    /// <param name="id">The id.</param>
    /// <param name="kind">The kind that belongs there; null: any part.</param>
    public static Refusal? Wrong(CatalogDraft draft, string id, ItemKind? kind) => draft.Find(id) switch
    {
        null => new(
            FindingCodes.UnknownReference,
            $"No item of the catalog has the id {id}. Check the spelling, or add the item."),
        { Item: Part } when kind is null => null,
        { Item.Kind: var found } when found == kind => null,
        { Item.Kind: var found } => new(
            FindingCodes.WrongKind,
            $"{id} is the id of a {ValueReader.Word($"{found}")}; "
            + $"a {(kind is null ? "part" : ValueReader.Word($"{kind}"))} belongs here."),
    };

    private void CheckFields(DraftItem item)
    {
        foreach (Field field in FieldRegistry.For(item.Item.Kind))
        {
            Refusal? refusal = (field.Shape, field.Get(item.Item)) switch
            {
                (FieldShape.Reference, string id) => Wrong(draft, id, field.RefersTo) ?? Chain(item, field, id),
                (FieldShape.ClutchFits, IReadOnlyList<ClutchFit> fits) =>
                    fits.Select(f => NoClutch(f.ClutchId)).FirstOrDefault(r => r is not null),
                (FieldShape.KitLines, IReadOnlyList<KitLine> lines) =>
                    lines.Select(l => Content(l.PartId)).FirstOrDefault(r => r is not null),
                _ => null,
            };
            if (refusal is not null)
                item.Refuse(field.Name, draft.Findings, refusal);
        }
    }

    // Suppliers list clutches that no catalog has; only what is there can be the wrong thing.
    private Refusal? NoClutch(string id) => draft.Find(id) is null or { Item: DriveClutch or DrivenClutch }
        ? null
        : new(FindingCodes.WrongKind, $"{id} is no clutch. A part is listed for drive and driven clutches.");

    private Refusal? Content(string id) => draft.Find(id) is { Item: Kit }
        ? new(FindingCodes.WrongKind, $"{id} is a kit itself. List its parts here.")
        : Wrong(draft, id, kind: null);

    /// <summary>
    /// A part that is replaced by itself in the end is never to be had, and an arm that is weighed against itself is
    /// never known. A part is replaced by its like.
    /// </summary>
    private Refusal? Chain(DraftItem item, Field field, string id)
    {
        if (field.RefersTo is null && Wrong(draft, id, item.Item.Kind) is { } unlike)
            return unlike;
        var passed = new List<string>();
        for (string? next = id; next is not null; next = Next(next))
        {
            passed.Add(next);
            // One finding for a loop is enough: where its first id stands.
            if (next == item.Item.Id)
            {
                return passed.Min(StringComparer.Ordinal) == next
                    ? new(
                        FindingCodes.ReferenceLoop,
                        $"{field.Name} leads back here: {string.Join(", ", passed)}. Take one of these out.")
                    : null;
            }

            if (passed.IndexOf(next) < passed.Count - 1)
                return null;
            if (passed.Count > CatalogSnapshot.MaxSupersessions)
            {
                return new(
                    FindingCodes.ChainTooLong,
                    $"{field.Name} leads on for more than {CatalogSnapshot.MaxSupersessions} steps. "
                    + "Name the last of them here.");
            }
        }

        return null;

        string? Next(string from) => draft.Find(from) is { } found && found.Item.Kind == item.Item.Kind
            ? (string?)field.Get(found.Item)
            : null;
    }
}
