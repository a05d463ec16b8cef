using PartPicker.Api.Docs;
using PartPicker.Api.Errors;
using PartPicker.Api.StartUp;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Parts;

/// <summary>The parts of the catalog.</summary>
internal static class PartEndpoints
{
    public static void MapParts(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/v1/parts/{id}", Show)
            .WithName("getPart")
            .WithTags("Parts")
            .WithSummary("Show a part with every value that the catalog knows.")
            .WithDescription("A drive spring, a flyweight, a driven spring or a helix.")
            .Produces<PartWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("part")
            .ProducesNotModified()
            .ProducesProblems(400, 404, 500, 503);

    private static IResult Show(string id, HttpContext http, CurrentCatalog current, string? units, string? precision)
    {
        FaultList faults = new();
        AnswerFormat format = AnswerFormat.Read(http.Request.Query, faults);
        if (current.Snapshot is not { } catalog)
            return CurrentCatalog.NotLoaded();
        if (faults.Count > 0)
            return Problems.Of(faults);
        return catalog.FindPart(id) is { } part
            ? TaggedAnswer.Of(PartWriter.Write(part, new AnswerWriter(catalog, format)))
            : Problems.Of(ErrorCodes.PartNotFound, $"The catalog holds no part '{id}'.");
    }
}
