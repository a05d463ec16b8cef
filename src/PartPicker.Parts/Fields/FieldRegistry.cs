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
        ItemKind.Belt => PartFields.Belt,
        ItemKind.Shim => PartFields.Shim,
        ItemKind.Kit => PartFields.Kit,
        ItemKind.ArmProfile => MachineFields.ArmProfile,
        ItemKind.Engine => MachineFields.Engine,
        ItemKind.DriveClutch => MachineFields.DriveClutch,
        ItemKind.DrivenClutch => MachineFields.DrivenClutch,
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
            ItemKind.Belt => new Belt(),
            ItemKind.Shim => new Shim(),
            ItemKind.Kit => new Kit(),
            ItemKind.ArmProfile => new ArmProfile(),
            ItemKind.Engine => new Engine(),
            ItemKind.DriveClutch => new DriveClutch(),
            ItemKind.DrivenClutch => new DrivenClutch(),
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

    /// <summary>A part: id and name first, then the facts of its trade.</summary>
    internal static FieldList<T> Sold<T>(ItemKind kind) where T : Part =>
        Named<T>(kind)
            .Choice<SoldAs>("soldAs", p => p.SoldAs, (p, v) => p with { SoldAs = v }, "How it is sold.")
            .Count("packQuantity", 1, 1_000, p => p.PackQuantity, (p, v) => p with { PackQuantity = v }, "Pieces in one pack.")
            .Reference("supersededBy", null, p => p.SupersededBy, (p, v) => p with { SupersededBy = v }, "The part that replaced it.")
            .ClutchFits("fitsClutches", FirstYear, LastYear, p => p.FitsClutches, (p, v) => p with { FitsClutches = v }, "Clutches that the supplier lists it for, with model-years.")
            .WithoutOrigins();

    /// <summary>A piece of a machine: id and name first, then the model-years that it covers.</summary>
    internal static FieldList<T> Piece<T>(ItemKind kind) where T : MachinePiece =>
        Named<T>(kind)
            .Count("fromYear", FirstYear, LastYear, p => p.FromYear, (p, v) => p with { FromYear = v }, "First model-year.")
            .Count("toYear", FirstYear, LastYear, p => p.ToYear, (p, v) => p with { ToYear = v }, "Last model-year.")
            .WithoutOrigins();

    private const int FirstYear = 1950;
    private const int LastYear = 2100;

    internal static readonly Axis Travel = new(Length.Info, 0, 0.2);
}
