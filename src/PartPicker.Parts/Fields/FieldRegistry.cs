using UnitsNet;

namespace PartPicker.Parts;

/// <summary>The one list of fields, by kind. The order here is the order of CSV columns.</summary>
public static class FieldRegistry
{
    /// <summary>The fields of a kind, id and name first.</summary>
    public static IReadOnlyList<Field> For(ItemKind kind) => kind switch
    {
        ItemKind.DriveSpring => PartFields.DriveSpring,
        ItemKind.Flyweight => PartFields.Flyweight,
        ItemKind.DrivenSpring => PartFields.DrivenSpring,
        ItemKind.Helix => PartFields.Helix,
        ItemKind.Engine => MachineFields.Engine,
        ItemKind.DriveClutch => MachineFields.DriveClutch,
        ItemKind.DrivenClutch => MachineFields.DrivenClutch,
        ItemKind.Belt => MachineFields.Belt,
        ItemKind.Gearing => MachineFields.Gearing,
        ItemKind.Machine => MachineFields.Machine,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind."),
    };

    /// <summary>An item of a kind with nothing stated yet but the defaults.</summary>
    public static CatalogItem Blank(ItemKind kind)
    {
        CatalogItem item = kind switch
        {
            ItemKind.DriveSpring => new DriveSpring(),
            ItemKind.Flyweight => new Flyweight(),
            ItemKind.DrivenSpring => new DrivenSpring(),
            ItemKind.Helix => new Helix(),
            ItemKind.Engine => new Engine(),
            ItemKind.DriveClutch => new DriveClutch(),
            ItemKind.DrivenClutch => new DrivenClutch(),
            ItemKind.Belt => new Belt(),
            ItemKind.Gearing => new Gearing(),
            ItemKind.Machine => new Machine(),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind."),
        };
        foreach (Field field in For(kind))
        {
            if (field.Default is { } standard)
                item = field.Set(item, standard);
        }

        return item;
    }

    internal static FieldList<T> Named<T>(ItemKind kind) where T : CatalogItem =>
        new FieldList<T>(kind)
            .Text("id", CatalogItem.MaxIdLength, i => i.Id, (i, v) => i with { Id = v }, "Unique in the catalog.", required: true)
            .Text("name", 120, i => i.Name, (i, v) => i with { Name = v }, "What a person calls it.");

    internal static readonly Axis Travel = new(Length.Info, 0, 0.2);
}
