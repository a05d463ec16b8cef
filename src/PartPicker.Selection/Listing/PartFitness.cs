using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Whether a part keeps every rule that can be checked on one machine, whatever it is combined with.</summary>
internal sealed class PartFitness
{
    private readonly CatalogSnapshot catalog;
    private readonly MachineModel? machine;

    private PartFitness(CatalogSnapshot catalog, MachineModel? machine)
    {
        this.catalog = catalog;
        this.machine = machine;
    }

    /// <summary>A machine whose pieces do not go together takes no part.</summary>
    public static PartFitness For(CatalogSnapshot catalog, MachineProfile profile) =>
        new(catalog, MachineModel.Create(profile, []));

    public bool Fits(Part part) => machine is not null && part.SupersededBy is null && part switch
    {
        DriveSpring spring => Keeps(DriveSpringRules.All, spring),
        Flyweight flyweight => Keeps(FlyweightRules.All, flyweight),
        DrivenSpring spring => Keeps(DrivenSpringRules.All, spring),
        Helix helix => Keeps(HelixRules.All, helix),
        Shim shim => machine.Profile.DriveClutch.ShimLimit > 0 && Keeps(ShimRules.All, shim),
        Belt belt => Keeps(BeltRules.All, belt),
        Kit kit => kit.Contents.All(line => catalog.FindPart(line.PartId) is { } content && Fits(content)),
        _ => false,
    };

    private bool Keeps<T>(IReadOnlyList<FitRule<T>> rules, T part) =>
        rules.All(r => r.Check(part, machine!).Verdict != FitVerdict.Broken);
}
