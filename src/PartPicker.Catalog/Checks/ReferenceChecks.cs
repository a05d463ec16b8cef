using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>Every id that an item or an outlet names must lead to an item of the right kind.</summary>
internal sealed class ReferenceChecks
{
    private static readonly (string Member, ItemKind Kind, Func<PartSet, string> Id)[] SetReferences =
    [
        (PartSetReader.DriveSpring, ItemKind.DriveSpring, set => set.DriveSpring),
        (PartSetReader.Flyweight, ItemKind.Flyweight, set => set.Flyweight),
        (PartSetReader.DrivenSpring, ItemKind.DrivenSpring, set => set.DrivenSpring),
        (PartSetReader.Helix, ItemKind.Helix, set => set.Helix),
    ];

    private readonly CatalogDraft draft;

    private ReferenceChecks(CatalogDraft draft) => this.draft = draft;

    public static void Check(CatalogDraft draft)
    {
        var checks = new ReferenceChecks(draft);
        foreach (DraftItem item in draft.Items.Where(i => i is { Sound: true, Item: Machine }))
            checks.CheckMachine(item, (Machine)item.Item);
        foreach (DraftOutlet outlet in draft.Outlets)
            checks.CheckOutlet(outlet);
    }

    private void CheckMachine(DraftItem item, Machine machine)
    {
        string file = item.Place.File;
        string pointer = item.Place.Pointer!;
        foreach (Field field in FieldRegistry.For(ItemKind.Machine).Where(f => f.Shape == FieldShape.Reference))
        {
            var id = (string)field.Get(machine)!;
            Refuse(file, JsonSource.Below(pointer, field.Name), id, Wrong(id, field.RefersTo!.Value));
        }

        if (machine.Fitted is { } fitted)
            CheckSet(fitted, machine, file, $"{pointer}/fitted");
        for (int i = 0; i < machine.Baselines.Count; i++)
        {
            // A run without parts of its own has the fitted set, which is judged where it stands.
            if (!ReferenceEquals(machine.Baselines[i].Parts, machine.Fitted))
                CheckSet(machine.Baselines[i].Parts, machine, file, $"{pointer}/baselines/{i}/parts");
        }
    }

    private void CheckSet(PartSet set, Machine machine, string file, string pointer)
    {
        foreach ((string member, ItemKind kind, Func<PartSet, string> id) in SetReferences)
            Refuse(file, $"{pointer}/{member}", id(set), Wrong(id(set), kind));

        if (Sound<Flyweight>(set.Flyweight) is { } flyweight)
        {
            IEnumerable<StationName> there = flyweight.Stations().Select(s => s.Name);
            foreach (StationName station in set.StationMasses.Keys.Except(there))
            {
                string name = ValueReader.Word($"{station}");
                Refuse(file, $"{pointer}/{PartSetReader.StationMasses}/{name}", null, new(
                    FindingCodes.UnknownStation,
                    $"The flyweight {set.Flyweight} has no {name} station. Leave it out."));
            }
        }

        if (Sound<DrivenClutch>(machine.DrivenClutchId) is { } clutch
            && clutch.Holes.All(h => h.Name != set.Hole))
        {
            Refuse(file, $"{pointer}/{PartSetReader.Hole}", set.Hole, new(
                FindingCodes.UnknownHole,
                $"The driven clutch {clutch.Id} has no such hole. "
                + $"It has {string.Join(", ", clutch.Holes.Select(h => h.Name))}."));
        }
    }

    private void CheckOutlet(DraftOutlet outlet)
    {
        foreach ((string id, int line) in outlet.Lines)
        {
            Refusal? refusal = draft.Find(id) switch
            {
                null => Unknown,
                { Item: Part } => null,
                { Item: var other } => new(
                    FindingCodes.WrongKind,
                    $"This is the id of a {ValueReader.Word($"{other.Kind}")}. Outlets sell parts."),
            };
            if (refusal is not null)
                draft.Findings.Add(outlet.File, line, "partId", id, refusal);
        }
    }

    private static Refusal Unknown => new(
        FindingCodes.UnknownReference,
        "No item of the catalog has this id. Check the spelling, or add the item.");

    private Refusal? Wrong(string id, ItemKind kind) => draft.Find(id) switch
    {
        null => Unknown,
        { Item.Kind: var found } when found != kind => new(
            FindingCodes.WrongKind,
            $"This is the id of a {ValueReader.Word($"{found}")}; a {ValueReader.Word($"{kind}")} belongs here."),
        _ => null,
    };

    private T? Sound<T>(string id) where T : CatalogItem =>
        draft.Find(id) is { Sound: true, Item: T item } ? item : null;

    private void Refuse(string file, string pointer, string? value, Refusal? refusal)
    {
        if (refusal is not null)
            draft.Findings.Add(file, null, pointer, value, refusal);
    }
}
