using PartPicker.Api.Docs;
using PartPicker.Api.Errors;
using PartPicker.Api.StartUp;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Machines;

/// <summary>The machines of the catalog.</summary>
internal static class MachineEndpoints
{
    public static void MapMachines(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/v1/machines", List)
            .WithName("listMachines")
            .WithTags("Machines")
            .WithSummary("List the machines of the catalog.")
            .WithDescription(
                "Machines by id, with what a request needs to know before it asks. Filters join: a machine is listed "
                + "that meets all of them.")
            .Produces<MachineListWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("machines")
            .TakesParameters(MachineFilter.Parameters)
            .ProducesNotModified()
            .ProducesProblems(400, 500, 503);

        routes.MapGet("/v1/machines/{id}", Show)
            .WithName("getMachine")
            .WithTags("Machines")
            .WithSummary("Show a machine with every value and its origin.")
            .WithDescription(
                "The pieces of its profile, its spring holes or adjuster settings, what is fitted as delivered, "
                + "and measured runs.")
            .Produces<MachineWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("machine")
            .TakesParameters(AnswerFormat.Parameters)
            .ProducesNotModified()
            .ProducesProblems(400, 404, 500, 503);
    }

    private static IResult List(HttpContext http, CurrentCatalog current)
    {
        if (current.Snapshot is not { } catalog)
            return CurrentCatalog.NotLoaded();
        FaultList faults = new();
        QueryReader query = new(http.Request, faults);
        MachineFilter filter = MachineFilter.Read(query);
        query.RefuseOthers();
        return faults.Count > 0
            ? Problems.Of(faults)
            : TaggedAnswer.Of(MachineWriter.WriteList(catalog.Revision, catalog.Machines.Where(filter.Matches)));
    }

    private static IResult Show(string id, HttpContext http, CurrentCatalog current)
    {
        if (current.Snapshot is not { } catalog)
            return CurrentCatalog.NotLoaded();
        FaultList faults = new();
        QueryReader query = new(http.Request, faults);
        AnswerFormat format = AnswerFormat.Read(query);
        query.RefuseOthers();
        if (faults.Count > 0)
            return Problems.Of(faults);
        return catalog.FindMachine(id) is { } machine
            ? TaggedAnswer.Of(MachineWriter.Write(machine, new AnswerWriter(catalog, format)))
            : Problems.Of(
                ErrorCodes.MachineNotFound,
                $"The catalog holds no machine '{id}'; GET /v1/machines lists them"
                + Nearest.End(id, catalog.Machines.Select(m => m.Machine.Id)));
    }
}
