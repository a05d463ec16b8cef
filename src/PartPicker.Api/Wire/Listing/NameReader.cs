using PartPicker.Api.Errors;
using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>Reads the ids of machines and outlets from the query of an address.</summary>
internal sealed class NameReader(QueryReader query, CatalogSnapshot catalog, FaultList faults)
{
    public MachineProfile? Machine(string name)
    {
        if (query.Text(name, RequestLimits.MaxNameLength) is not { } id)
            return null;
        if (catalog.FindMachine(id) is { } machine)
            return machine;
        faults.Add(
            ErrorCodes.UnknownMachine, name, id, RequestReader.OneOf(catalog.Machines.Select(m => m.Machine.Id), id));
        return null;
    }

    public Outlet? Outlet(string name)
    {
        if (query.Text(name, RequestLimits.MaxNameLength) is not { } id)
            return null;
        if (catalog.FindOutlet(id) is { } outlet)
            return outlet;
        faults.Add(ErrorCodes.UnknownOutlet, name, id, RequestReader.OneOf(catalog.Outlets.Select(o => o.Id), id));
        return null;
    }
}
