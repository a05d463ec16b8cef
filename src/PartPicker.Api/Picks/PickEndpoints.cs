using PartPicker.Api.Docs;
using PartPicker.Api.Errors;
using PartPicker.Api.StartUp;
using PartPicker.Api.Web;
using PartPicker.Api.Wire;
using PartPicker.Selection;
using PartPicker.Storage;

namespace PartPicker.Api.Picks;

/// <summary>Which parts? The ranked answer, and the same answer again by its id.</summary>
internal static class PickEndpoints
{
    private const string Path = "/v1/picks";

    public static void MapPicks(this IEndpointRouteBuilder routes)
    {
        routes.MapPost(Path, AskAsync)
            .WithName("createPick")
            .WithTags("Picks")
            .WithSummary("Rank parts for a machine and the rpm that are wanted.")
            .WithDescription(
                "Ranks every set of parts that fits by how closely it meets the target: the same list as trying them all. "
                + "The same question gets the same bytes for as long as the answer is stored. A search that the clock "
                + "ends answers 200 with the best list so far, which is not stored; work says how far it is final.")
            .Accepts<PickRequestWire>(WireJson.MediaType)
            .Produces<PickAnswerWire>(StatusCodes.Status201Created, WireJson.MediaType)
            .Produces<PickAnswerWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("pick")
            .TakesParameters(AnswerFormat.Parameters)
            .ProducesProblems(400, 408, 413, 415, 500, 503);

        routes.MapGet(Path + "/{id}", Fetch)
            .WithName("getPick")
            .WithTags("Picks")
            .WithSummary("Fetch a ranked answer again.")
            .WithDescription(
                "The bytes that were sent first. Fetching moves the expiry, which the Sunset header tells.")
            .Produces<PickAnswerWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("pickAgain", answerOf: "pick")
            .TakesNoParameters()
            .ProducesNotModified()
            .ProducesProblems(400, 404, 500);
    }

    private static async Task<IResult> AskAsync(HttpContext http, CurrentCatalog current, PickDesk desk)
    {
        (Question<PickRequest>? question, ProblemAnswer? refusal) =
            await Question.ReadAsync(http.Request, current, PickRequestReader.Read);
        if (question is null)
            return refusal!;
        PickReply reply = await desk.AnswerAsync(question, http.RequestAborted);
        if (reply.Timing is { } timing)
            http.Response.Headers["Server-Timing"] = timing;
        if (reply.Stored is { } stored)
            return Created(stored);
        return reply.Unkept is { } bytes ? Unkept(http, bytes) : reply.Refusal!;
    }

    // How far the clock let it come is chance: no tag names such bytes, and nothing keeps them.
    private static IResult Unkept(HttpContext http, byte[] bytes)
    {
        http.Response.Headers.CacheControl = "no-store";
        return Results.Bytes(bytes, WireJson.MediaType);
    }

    private static IResult Fetch(string id, IPickStore store, TimeProvider clock) =>
        store.Find(id, clock.GetUtcNow()) is { } pick
            ? new TaggedAnswer(pick.Body) { Sunset = pick.ExpiresAt }
            : Problems.Of(ErrorCodes.PickNotFound, "No stored answer has this id; ask again with POST /v1/picks.");

    private static TaggedAnswer Created(StoredPick pick) => new(pick.Body)
    {
        Status = StatusCodes.Status201Created,
        Location = $"{Path}/{pick.Id}",
        Sunset = pick.ExpiresAt,
    };
}
