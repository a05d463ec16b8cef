using System.Text.Json;
using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>A JSON file of machines and their pieces; parts may stand here too.</summary>
internal static class MachineFile
{
    private static readonly Dictionary<string, ItemKind> Lists = new(StringComparer.Ordinal)
    {
        ["engines"] = ItemKind.Engine,
        ["driveClutches"] = ItemKind.DriveClutch,
        ["drivenClutches"] = ItemKind.DrivenClutch,
        ["gearings"] = ItemKind.Gearing,
        ["armProfiles"] = ItemKind.ArmProfile,
        ["machines"] = ItemKind.Machine,
        ["belts"] = ItemKind.Belt,
        ["driveSprings"] = ItemKind.DriveSpring,
        ["flyweights"] = ItemKind.Flyweight,
        ["drivenSprings"] = ItemKind.DrivenSpring,
        ["helices"] = ItemKind.Helix,
        ["shims"] = ItemKind.Shim,
        ["kits"] = ItemKind.Kit,
    };

    public static void Read(string file, string? text, CatalogDraft draft)
    {
        var source = new JsonSource(file, draft.Findings);
        if (text is null || source.Parse(text) is not { } root)
        {
            draft.Lose(Lists.Values);
            return;
        }

        int before = draft.Findings.Count;
        Dictionary<string, JsonValue> lists = source.Members(root, "An object with lists of pieces", Lists.Keys);
        var sound = lists.Where(l => source.Is(l.Value, JsonValueKind.Array, "A list of objects")).ToList();
        // A list that was not understood may hold what another file refers to.
        if (draft.Findings.Count > before)
            draft.Lose(Lists.Values);
        foreach ((string name, JsonValue list) in sound)
        {
            foreach (JsonValue entry in list.Entries())
                draft.Add(MachineItemReader.Read(source, Lists[name], entry));
        }
    }
}
