using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Whether an outlet has enough of a part, by itself or with what is in kits. Unknown stock counts as none.</summary>
internal sealed class OutletStock
{
    private readonly Outlet? outlet;
    private readonly MachineProfile machine;
    private readonly Kit[] kitsInStock;

    public OutletStock(CatalogSnapshot catalog, PickRequest request, MachineModel machine)
    {
        outlet = request.InStockOnly ? request.Outlet : null;
        this.machine = machine.Profile;
        kitsInStock = [.. Kits(catalog, request).Where(k => outlet?.Offers[k.Id].Stock > 0)];
    }

    /// <summary>The kits that may be bought: offered, not replaced and not excluded; by rising id.</summary>
    public static IEnumerable<Kit> Kits(CatalogSnapshot catalog, PickRequest request) => catalog.All<Kit>().Where(k =>
        k.SupersededBy is null && !request.Exclude.Contains(k.Id) && request.Outlet?.Offers.ContainsKey(k.Id) == true);

    public bool Has(Part part) => Has(part, Packs.Needed(part, machine));

    /// <summary>True where no stock is demanded.</summary>
    public bool HasShims(Shim shim, int count) => outlet is null || Has(shim, Packs.Needed(shim, machine, count));

    // Each kit once: the packs in all of them, and the rest singly.
    private bool Has(Part part, int packs)
    {
        int rest = packs - kitsInStock.Sum(k => Packs.In(k, part.Id));
        return rest <= 0 || outlet?.Offers.GetValueOrDefault(part.Id)?.Stock >= rest;
    }
}
