using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Whether an outlet has enough of a part, by itself or in a kit. Unknown stock counts as none.</summary>
internal sealed class OutletStock
{
    private readonly Outlet? outlet;
    private readonly MachineProfile machine;
    private readonly Kit[] kitsInStock;

    public OutletStock(CatalogSnapshot catalog, PickRequest request, MachineModel machine)
    {
        outlet = request.InStockOnly ? request.Outlet : null;
        this.machine = machine.Profile;
        kitsInStock = [.. catalog.All<Kit>().Where(k => outlet?.Offers.GetValueOrDefault(k.Id)?.Stock > 0)];
    }

    public bool Has(Part part) => Has(part, Packs.Needed(part, machine));

    /// <summary>True where no stock is demanded.</summary>
    public bool HasShims(Shim shim, int count) => outlet is null || Has(shim, Packs.Needed(shim, machine, count));

    private bool Has(Part part, int packs) =>
        outlet?.Offers.GetValueOrDefault(part.Id)?.Stock >= packs
        || kitsInStock.Any(k => k.Contents.Any(line => line.PartId == part.Id && line.Packs >= packs));
}
