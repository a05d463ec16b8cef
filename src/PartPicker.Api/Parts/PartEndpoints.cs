using PartPicker.Api.Docs;
using PartPicker.Api.Errors;
using PartPicker.Api.StartUp;
using PartPicker.Api.Wire;
using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Parts;

/// <summary>The parts of the catalog.</summary>
internal static class PartEndpoints
{
    private const string Path = "/v1/parts";

    public static void MapParts(this IEndpointRouteBuilder routes)
    {
        routes.MapGet(Path, List)
            .WithName("listParts")
            .WithTags("Parts")
            .WithSummary("List parts by kind, by what they are, by where they fit and by what is in stock.")
            .WithDescription(
                "Any field of numbers takes a range, as in rate.min=60 lbf/in, in any unit; a field of words takes words, "
                + "repeated for alternatives. A page goes on with nextCursor, the same filters and the same order.")
            .Produces<PartListWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("parts")
            .ProducesNotModified()
            .ProducesProblems(400, 500, 503);

        routes.MapGet(Path + "/{id}", Show)
            .WithName("getPart")
            .WithTags("Parts")
            .WithSummary("Show a part with every value that the catalog knows.")
            .WithDescription("A replaced part number is shown with the part that replaced it.")
            .Produces<PartWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("part")
            .ProducesNotModified()
            .ProducesProblems(400, 404, 500, 503);
    }

    private static IResult List(
        HttpContext http, CurrentCatalog current, string? kind, string? fitsMachine, string? outlet, string? inStock,
        string? text, string? sort, string? limit, string? cursor, string? units, string? precision)
    {
        if (current.Snapshot is not { } catalog)
            return CurrentCatalog.NotLoaded();
        FaultList faults = new();
        AnswerFormat format = AnswerFormat.ReadAmongOthers(http.Request.Query, faults);
        PartQuestion? question = PartQueryReader.Read(http.Request.Query, catalog, faults);
        if (question is null || faults.Count > 0)
            return Problems.Of(faults);
        PartListWire page = PartWriter.WritePage(
            question, PartListing.List(catalog, question.Query), new AnswerWriter(catalog, format));
        if (page.NextCursor is { } next)
            http.Response.Headers.Link = $"<{Path}{WithCursor(http.Request.Query, next)}>; rel=\"next\"";
        return TaggedAnswer.Of(page);
    }

    private static QueryString WithCursor(IQueryCollection query, string cursor) =>
        QueryString.Create(query.Where(q => q.Key != "cursor")).Add("cursor", cursor);

    private static IResult Show(
        string id, HttpContext http, CurrentCatalog current, string? outlet, string? units, string? precision)
    {
        if (current.Snapshot is not { } catalog)
            return CurrentCatalog.NotLoaded();
        FaultList faults = new();
        AnswerFormat format = AnswerFormat.ReadAmongOthers(http.Request.Query, faults);
        QueryReader query = new(http.Request.Query, faults);
        _ = query.Texts(AnswerFormat.UnitsParameter);
        _ = query.Texts(AnswerFormat.PrecisionParameter);
        Outlet? seller = query.Text("outlet", "the id of an outlet") is { } name ? catalog.FindOutlet(name) : null;
        if (outlet is not null && seller is null)
        {
            faults.AddParameter(
                ErrorCodes.UnknownOutlet, "outlet", outlet, $"one of: {string.Join(", ", catalog.Outlets.Select(o => o.Id))}");
        }

        query.RefuseOthers("outlet, units, precision");
        if (faults.Count > 0)
            return Problems.Of(faults);
        return catalog.FindPart(id) is { } part
            ? TaggedAnswer.Of(PartWriter.Write(part, seller, new AnswerWriter(catalog, format)))
            : Problems.Of(ErrorCodes.PartNotFound, $"The catalog holds no part '{id}'.");
    }
}
