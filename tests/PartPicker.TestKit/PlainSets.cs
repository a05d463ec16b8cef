using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.TestKit;

/// <summary>Every set of a catalog that fits and that a request allows, one after the other.</summary>
internal static class PlainSets
{
    public static IEnumerable<SetUp> Every(CatalogSnapshot catalog, MachineModel machine, PickRequest request, PartSet fitted)
    {
        DriveSpring[] driveSprings = [.. Open<DriveSpring>(fitted.DriveSpring)];
        Flyweight[] bodies = [.. Open<Flyweight>(fitted.Flyweight).Where(b => Fits(FlyweightRules.All, b, machine, request))];
        DrivenSpring[] drivenSprings = [.. Open<DrivenSpring>(fitted.DrivenSpring).Where(s => Fits(DrivenSpringRules.All, s, machine, request))];
        Helix[] helices = [.. Open<Helix>(fitted.Helix).Where(h => Fits(HelixRules.All, h, machine, request))];
        return
            from spring in driveSprings.SelectMany(s => OnShims(s, catalog, machine, request, fitted))
            from body in bodies
            from step in body.AdjusterCurves is { } curves ? curves.Select(c => (string?)c.Name) : [null]
            from pin in Masses(body, StationName.Pin)
            from heel in Masses(body, StationName.Heel)
            from middle in Masses(body, StationName.Middle)
            from tip in Masses(body, StationName.Tip)
            from drivenSpring in drivenSprings
            from helix in helices
            from hole in machine.Profile.DrivenClutch.TwistChoices()
            let driven = new DrivenChoice(drivenSpring, hole, helix)
            where Fits(DrivenSideRules.All, driven, machine, request)
            let masses = new Dictionary<StationName, double>
            {
                [StationName.Pin] = pin,
                [StationName.Heel] = heel,
                [StationName.Middle] = middle,
                [StationName.Tip] = tip,
            }
            let set = new SetUp(spring, new FlyweightChoice(body, masses, step), driven)
            where request.Keep.All(slot => !Changed(slot, set, fitted))
            select set;

        // What is fitted may be an old number and out of stock.
        IEnumerable<T> Open<T>(string fittedId) where T : Part => catalog.All<T>().Where(p => Allowed(p, fittedId, catalog, request));
    }

    public static bool Changed(Slot slot, SetUp set, PartSet fitted) => slot switch
    {
        Slot.DriveSpring => set.DriveSpring.Id != fitted.DriveSpring
            || (set.Ids.Shims?.ShimId, set.Ids.Shims?.Count) != (fitted.Shims?.ShimId, fitted.Shims?.Count),
        Slot.Flyweight => set.Flyweight.Body.Id != fitted.Flyweight
            || set.Flyweight.AdjusterStep != fitted.AdjusterStep
            || Enum.GetValues<StationName>().Any(s =>
                set.Flyweight.Masses.GetValueOrDefault(s) != fitted.StationMasses.GetValueOrDefault(s)),
        Slot.DrivenSpring => set.Driven.Spring.Id != fitted.DrivenSpring,
        Slot.Hole => set.Driven.Hole.Name != fitted.Hole,
        Slot.Helix => set.Driven.Helix.Id != fitted.Helix,
        _ => throw new ArgumentOutOfRangeException(nameof(slot)),
    };

    private static bool Allowed(Part part, string? fittedId, CatalogSnapshot catalog, PickRequest request, int pieces = 1)
    {
        if (request.Exclude.Contains(part.Id))
            return false;
        return part.Id == fittedId
            || (part.SupersededBy is null && (!request.InStockOnly || PlainPrice.InStock(part, catalog, request, pieces)));
    }

    private static IEnumerable<SpringChoice> OnShims(
        DriveSpring spring, CatalogSnapshot catalog, MachineModel machine, PickRequest request, PartSet fitted)
    {
        var stacks =
            from shim in catalog.All<Shim>()
            where Allowed(shim, fitted.Shims?.ShimId, catalog, request) && Fits(ShimRules.All, shim, machine, request)
            from count in Enumerable.Range(1, machine.Profile.DriveClutch.ShimLimit ?? 0)
            let more = count - (shim.Id == fitted.Shims?.ShimId ? fitted.Shims.Count : 0)
            where !request.InStockOnly || more <= 0 || PlainPrice.InStock(shim, catalog, request, more)
            select new SpringChoice(spring, shim, count);
        return stacks.Prepend(new SpringChoice(spring, null, 0))
            .Where(s => Fits(DriveSpringRules.All, s.Spring, machine.OnShims(s.ShimThickness), request));
    }

    private static bool Fits<T>(IReadOnlyList<FitRule<T>> rules, T candidate, MachineModel machine, PickRequest request) =>
        !rules.Any(r => r.Check(candidate, machine).Verdict is var verdict
            && (verdict == FitVerdict.Broken || (verdict == FitVerdict.NotChecked && request.DemandChecked)));

    private static double[] Masses(Flyweight body, StationName name) =>
        body.Stations().FirstOrDefault(s => s.Name == name) is { } station
            ? [.. station.Masses.Where(m => !(m > station.MassLimit?.Kilograms + 1e-6)).Distinct()]
            : [0];
}
