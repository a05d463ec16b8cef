using System.Text.Json;
using PartPicker.Api.Deprecations;
using PartPicker.Api.Docs;
using PartPicker.Api.Errors;
using PartPicker.Api.StartUp;
using PartPicker.Api.Web;
using PartPicker.Api.Wire;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.Storage;

namespace PartPicker.Api.Picks;

/// <summary>Which parts? The ranked answer, the same answer again by its id, and the answer of today.</summary>
internal static class PickEndpoints
{
    public static void MapPicks(this IEndpointRouteBuilder routes)
    {
        routes.MapPost(KeptPick.Path, AskAsync)
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

        routes.MapGet(KeptPick.AddressOf("{id}"), Fetch)
            .WithName("getPick")
            .WithTags("Picks")
            .WithSummary("Fetch a ranked answer again.")
            .WithDescription(
                "The bytes that were sent first, also when the catalog or the model has changed since: Pick-Status says so, "
                + "and a Link leads to the answer of today. Fetching moves the expiry, which the Sunset header tells.")
            .Produces<PickAnswerWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("pickAgain", answerOf: "pick")
            .TakesNoParameters()
            .ProducesNotModified()
            .ProducesProblems(400, 404, 410, 500);

        routes.MapGet(KeptPick.LatestOf("{id}"), AskAnewAsync)
            .WithName("getLatestPick")
            .WithTags("Picks")
            .WithSummary("Ask the question of a stored answer again, today.")
            .WithDescription(
                "Asks the same question of the catalog in force and leads to its answer: to the same id where nothing has "
                + "changed. A search that the clock ends answers 200 with the best list so far, which is not stored.")
            .Produces(StatusCodes.Status303SeeOther)
            .Produces<PickAnswerWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("pickLatest", answerOf: "pick")
            .TakesNoParameters()
            .ProducesProblems(400, 404, 410, 500, 503);
    }

    private static async Task<IResult> AskAsync(
        HttpContext http, CurrentCatalog current, PickDesk desk, TimeProvider clock)
    {
        (Question<PickRequest>? question, ProblemAnswer? refusal) =
            await Question.ReadAsync(http.Request, current, PickRequestReader.Read);
        if (question is null)
            return refusal!;
        PickReply reply = await AnswerAsync(http, question, desk);
        return reply.Stored is { } stored
            ? KeptPick.Send(stored, current, clock, http.Response.Headers) with
            {
                Status = StatusCodes.Status201Created,
                Location = KeptPick.AddressOf(stored.Id),
                Fresh = TimeSpan.Zero,
            }
            : NotKept(http, reply);
    }

    private static IResult Fetch(
        string id, HttpContext http, CurrentCatalog current, IPickStore store, TimeProvider clock) =>
        store.Find(id, clock.GetUtcNow()) is { } pick
            ? KeptPick.Send(pick, current, clock, http.Response.Headers)
            : KeptPick.Missing(id, store);

    private static async Task<IResult> AskAnewAsync(
        string id, HttpContext http, CurrentCatalog current, IPickStore store, PickDesk desk, TimeProvider clock)
    {
        if (current.Snapshot is not { } catalog)
            return CurrentCatalog.NotLoaded();
        if (store.Find(id, clock.GetUtcNow()) is not { } pick)
            return KeptPick.Missing(id, store);
        if (KeptPick.IsCurrent(pick, current))
            return SeeOther(http, pick.Id);
        (Question<PickRequest>? question, ProblemAnswer? refusal) = QuestionOf(pick, catalog);
        if (question is null)
            return refusal!;
        PickReply reply = await AnswerAsync(http, question, desk);
        return reply.Stored is { } stored ? SeeOther(http, stored.Id) : NotKept(http, reply);
    }

    // An answer holds its question as it was understood.
    private static (Question<PickRequest>? Question, ProblemAnswer? Refusal) QuestionOf(StoredPick pick, CatalogSnapshot catalog)
    {
        using JsonDocument answer = JsonDocument.Parse(pick.Body);
        JsonElement request = answer.RootElement.GetProperty("request").Clone();
        return Question.Read(
            request, catalog, AnswerFormat.Of(answer.RootElement), new FaultList(request), PickRequestReader.Read);
    }

    private static async Task<PickReply> AnswerAsync(HttpContext http, Question<PickRequest> question, PickDesk desk)
    {
        PickReply reply = await desk.AnswerAsync(question, http.RequestAborted);
        if (reply.Timing is { } timing)
            http.Response.Headers["Server-Timing"] = timing;
        return reply;
    }

    private static IResult SeeOther(HttpContext http, string id)
    {
        http.Response.Headers.Location = KeptPick.AddressOf(id);
        http.Response.Headers.CacheControl = "no-store";
        return Results.StatusCode(StatusCodes.Status303SeeOther);
    }

    // How far the clock let it come is chance: no tag names such bytes, and nothing keeps them.
    private static IResult NotKept(HttpContext http, PickReply reply)
    {
        if (reply.Unkept is not { } bytes)
            return reply.Refusal!;
        DeprecationNotes.Of(http)?.NoteAnswer(bytes);
        http.Response.Headers.CacheControl = "no-store";
        return Results.Bytes(bytes, WireJson.MediaType);
    }
}
