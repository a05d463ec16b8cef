using Microsoft.AspNetCore.Http.Extensions;
using PartPicker.Api.Docs;
using PartPicker.Api.Errors;
using PartPicker.Api.StartUp;
using PartPicker.Api.Wire;
using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Parts;

/// <summary>The parts of the catalog: which there are, and what is known of one.</summary>
internal static class PartEndpoints
{
    private const string Path = "/v1/parts";
    private const string Outlet = "outlet";

    private static readonly QueryParameter[] ShowParameters =
    [
        new(Outlet, "Id of an outlet, whose price and stock are shown.") { MaxLength = RequestLimits.MaxNameLength },
        .. AnswerFormat.Parameters,
    ];

    public static void MapParts(this IEndpointRouteBuilder routes)
    {
        routes.MapGet(Path, List)
            .WithName("listParts")
            .WithTags("Parts")
            .WithSummary("List parts by kind, field, machine, stock or name.")
            .WithDescription(
                "Filters join: a part is listed that meets all of them. Pages follow each other by nextCursor, or by "
                + "the Link header; total and facets count over all pages.")
            .Produces<PartListWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("parts")
            .TakesParameters(PartListReader.Parameters)
            .ProducesNotModified()
            .ProducesProblems(400, 500, 503);

        routes.MapGet(Path + "/{id}", Show)
            .WithName("getPart")
            .WithTags("Parts")
            .WithSummary("Show a part with every value that the catalog knows.")
            .WithDescription(
                "A spring, a flyweight, a helix, a belt, a shim or a kit. A replaced number is shown too, and says "
                + "which part stands for it today.")
            .Produces<PartWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("part")
            .TakesParameters(ShowParameters)
            .ProducesNotModified()
            .ProducesProblems(400, 404, 500, 503);
    }

    private static IResult List(HttpContext http, CurrentCatalog current)
    {
        if (current.Snapshot is not { } catalog)
            return CurrentCatalog.NotLoaded();
        FaultList faults = new();
        QueryReader query = new(http.Request, faults);
        if (PartListReader.Read(query, catalog, faults) is not { } question)
            return Problems.Of(faults);

        PartPage page = PartListing.List(catalog, question.Query);
        string? next = page.Next is { } place
            ? PartCursor.Write(question.Query, question.Outlet, catalog.Revision, place)
            : null;
        if (next is not null)
            http.Response.Headers.Link = $"<{AddressOf(query, next)}>; rel=\"next\"";
        AnswerWriter writer = new(catalog, question.Format);
        return TaggedAnswer.Of(PartWriter.WriteList(page, next, question.Outlet, writer));
    }

    private static IResult Show(string id, HttpContext http, CurrentCatalog current)
    {
        if (current.Snapshot is not { } catalog)
            return CurrentCatalog.NotLoaded();
        FaultList faults = new();
        QueryReader query = new(http.Request, faults);
        Outlet? outlet = new NameReader(query, catalog, faults).Outlet(Outlet);
        AnswerFormat format = AnswerFormat.Read(query);
        query.RefuseOthers();
        if (faults.Count > 0)
            return Problems.Of(faults);
        return catalog.FindPart(id) is { } part
            ? TaggedAnswer.Of(PartWriter.Write(part, outlet, new AnswerWriter(catalog, format)))
            : Problems.Of(ErrorCodes.PartNotFound, $"The catalog holds no part '{id}'; GET {Path} lists them"
                + Nearest.End(id, catalog.All<Part>().Select(known => known.Id)));
    }

    /// <summary>The same address with another cursor; every character that matters is written as %XX.</summary>
    private static string AddressOf(QueryReader query, string cursor)
    {
        QueryBuilder builder = new(query.Pairs.Where(pair => pair.Key != PartListReader.Cursor));
        builder.Add(PartListReader.Cursor, cursor);
        return Path + builder.ToQueryString();
    }
}
