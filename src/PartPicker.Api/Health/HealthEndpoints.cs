using PartPicker.Api.Docs;
using PartPicker.Api.StartUp;
using PartPicker.Api.Wire;
using PartPicker.Selection;

namespace PartPicker.Api.Health;

/// <summary>Is it there, and can it answer?</summary>
internal static class HealthEndpoints
{
    // Whoever watches over the service has no key, and asks often.
    public static void MapHealth(this IEndpointRouteBuilder outer)
    {
        RouteGroupBuilder routes = outer.MapGroup("").AllowAnonymous().DisableRateLimiting();
        routes.MapGet("/health/live", () => TaggedAnswer.Of(new LiveWire { Status = "live" }))
            .WithName("isLive")
            .WithTags("Health")
            .WithSummary("Tell that the process answers.")
            .WithDescription("Always 200 while the process runs.")
            .Produces<LiveWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("live")
            .TakesNoParameters()
            .ProducesNotModified()
            .ProducesProblems(400, 500);

        routes.MapGet("/health/ready", Ready)
            .WithName("isReady")
            .WithTags("Health")
            .WithSummary("Tell whether questions can be answered.")
            .WithDescription("200 once a catalog is loaded, 503 before.")
            .Produces<ReadyWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("ready")
            .TakesNoParameters()
            .ProducesNotModified()
            .ProducesProblems(400, 500, 503);
    }

    private static IResult Ready(CurrentCatalog current) => current.Snapshot is { } catalog
        ? TaggedAnswer.Of(new ReadyWire
        {
            Status = "ready",
            CatalogRevision = catalog.Revision,
            ModelVersion = PartSelection.ModelVersion,
        })
        : CurrentCatalog.NotLoaded();
}
