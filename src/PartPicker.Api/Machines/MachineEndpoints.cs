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
            .WithDescription("Every machine by id, with what a request needs to know before it asks.")
            .Produces<MachineListWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("machines")
            .TakesNoParameters()
            .ProducesNotModified()
            .ProducesProblems(400, 500, 503);

        routes.MapGet("/v1/machines/{id}", Show)
            .WithName("getMachine")
            .WithTags("Machines")
            .WithSummary("Show a machine with every value and its origin.")
            .WithDescription(
                "The pieces of its profile, its spring holes, what is fitted as delivered, and measured runs.")
            .Produces<MachineWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("machine")
            .ProducesNotModified()
            .ProducesProblems(400, 404, 500, 503);
    }

    private static IResult List(CurrentCatalog current) => current.Snapshot is { } catalog
        ? TaggedAnswer.Of(MachineWriter.WriteList(catalog))
        : CurrentCatalog.NotLoaded();

    private static IResult Show(
        string id, HttpContext http, CurrentCatalog current, string? units, string? precision)
    {
        FaultList faults = new();
        AnswerFormat format = AnswerFormat.Read(http.Request.Query, faults);
        if (current.Snapshot is not { } catalog)
            return CurrentCatalog.NotLoaded();
        if (faults.Count > 0)
            return Problems.Of(faults);
        return catalog.FindMachine(id) is { } machine
            ? TaggedAnswer.Of(MachineWriter.Write(machine, new AnswerWriter(catalog, format)))
            : Problems.Of(
                ErrorCodes.MachineNotFound, $"The catalog holds no machine '{id}'; GET /v1/machines lists them.");
    }
}
