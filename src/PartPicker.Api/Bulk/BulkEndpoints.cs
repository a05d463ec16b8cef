using System.Text.Json;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.Server.Kestrel.Core.Features;
using PartPicker.Api.Capacity;
using PartPicker.Api.Deprecations;
using PartPicker.Api.Docs;
using PartPicker.Api.Errors;
using PartPicker.Api.Keys;
using PartPicker.Api.Picks;
using PartPicker.Api.Predictions;
using PartPicker.Api.StartUp;
using PartPicker.Api.Web;
using PartPicker.Api.Wire;
using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Bulk;

/// <summary>Many questions in one request, each on a line of its own, and answered on one.</summary>
internal static class BulkEndpoints
{
    private const string Picks = "/v1/bulk-picks";
    private const string Predictions = "/v1/bulk-predictions";
    private const string FromLineName = "fromLine";
    private const int FirstLine = 1;

    private const string Form =
        "A line is { \"id\", \"request\", \"axes\" }, of which request alone is needed; axes asks for every point of a "
        + "grid. Each answer is a line with its own status, in the order of the lines, sent as soon as it is there; a "
        + "faulty line stops nothing. The last line holds done: where it is missing, the answer was cut off. Read while "
        + "you send: who does not read is not read from.";

    private static readonly IReadOnlyList<QueryParameter> Parameters =
    [
        .. AnswerFormat.Parameters,
        new(FromLineName, "The first line that is answered; those before it are passed over unread, to continue a run.")
        {
            Range = (FirstLine, RequestLimits.MaxFromLine), Standard = FirstLine,
        },
    ];

    public static void MapBulk(this IEndpointRouteBuilder outer)
    {
        RouteGroupBuilder routes = outer.MapGroup("").RequireRateLimiting(ServiceLimits.BulkRunsPerCaller.Name);
        routes.MapPost(Predictions, PredictAsync)
            .WithName("predictMany")
            .WithTags("Bulk")
            .WithSummary("Predict many sets in one run.")
            .WithDescription(Form)
            .Accepts<BulkPredictionRequestWire>(WireJson.LinesMediaType)
            .Produces<BulkPredictionWire>(StatusCodes.Status200OK, WireJson.LinesMediaType)
            .WithExample("bulkPrediction")
            .TakesParameters(Parameters)
            .ProducesProblems(400, 415, 500, 503);

        routes.MapPost(Picks, PickAsync)
            .WithName("pickMany")
            .WithTags("Bulk")
            .WithSummary("Ask for many picks in one run.")
            .WithDescription(Form + " The answers are not stored: their ids can be fetched only where the same question was asked by itself.")
            .Accepts<BulkPickRequestWire>(WireJson.LinesMediaType)
            .Produces<BulkPickWire>(StatusCodes.Status200OK, WireJson.LinesMediaType)
            .WithExample("bulkPick")
            .TakesParameters(Parameters)
            .ProducesProblems(400, 415, 500, 503);
    }

    /// <summary>True for the addresses whose bodies are lines.</summary>
    public static bool IsAt(PathString path) => path == Picks || path == Predictions;

    private static Task<IResult> PredictAsync(HttpContext http, CurrentCatalog current, BulkGate gate) =>
        AnswerAsync(http, current, gate, (catalog, format) => (body, _) =>
        {
            (Question<PredictionRequest>? question, ProblemAnswer? refusal) =
                Question.Read(body, catalog, format, new FaultList(body), PredictionRequestReader.Read);
            if (question is null)
                return Task.FromResult(new BulkReply(null, refusal));
            (byte[]? answer, refusal) = PredictionEndpoints.Answer(question);
            return Task.FromResult(new BulkReply(answer, refusal));
        });

    private static Task<IResult> PickAsync(HttpContext http, CurrentCatalog current, BulkGate gate, PickDesk desk) =>
        AnswerAsync(http, current, gate, (catalog, format) => async (body, callerGone) =>
        {
            (Question<PickRequest>? question, ProblemAnswer? refusal) =
                Question.Read(body, catalog, format, new FaultList(body), PickRequestReader.Read);
            if (question is null)
                return new BulkReply(null, refusal);
            PickReply reply = await desk.AnswerAsync(question, callerGone, oneOfMany: true);
            return new BulkReply(reply.Answer, reply.Refusal);
        });

    // A run is answered from the catalog with which it began.
    private static async Task<IResult> AnswerAsync(
        HttpContext http, CurrentCatalog current, BulkGate gate,
        Func<CatalogSnapshot, AnswerFormat, Func<JsonElement, CancellationToken, Task<BulkReply>>> answer)
    {
        if (current.Snapshot is not { } catalog)
            return CurrentCatalog.NotLoaded();
        if (RequestBody.WhyNotJson(http.Request, WireJson.LinesMediaType) is { } why)
            return Problems.Of(ErrorCodes.LinesNeeded, why);
        FaultList faults = new();
        QueryReader query = new(http.Request, faults);
        AnswerFormat format = AnswerFormat.Read(query);
        int fromLine = query.Count(FromLineName, FirstLine, RequestLimits.MaxFromLine) ?? FirstLine;
        query.RefuseOthers();
        if (faults.Count > 0)
            return Problems.Of(faults);
        if (!gate.TryEnter())
            return TooManyRuns(gate);
        try
        {
            await StreamAsync(http, gate, fromLine, answer(catalog, format));
            return Results.Empty;
        }
        catch (Exception gone) when (gone is OperationCanceledException or IOException)
        {
            // The caller went away, or does not stop sending. Where the last line did not come, that tells the rest.
            http.Abort();
            return Results.Empty;
        }
        finally
        {
            gate.Leave();
        }
    }

    private static ProblemAnswer TooManyRuns(BulkGate gate)
    {
        ProblemWire problem =
            Problems.Of(ErrorCodes.TooManyRuns, $"At most {gate.MaxRuns} runs are answered at once.").Problem;
        return new ProblemAnswer(problem) { RetryAfter = RequestLimits.BulkRetryAfter };
    }

    private static async Task StreamAsync(
        HttpContext http, BulkGate gate, int fromLine, Func<JsonElement, CancellationToken, Task<BulkReply>> answer)
    {
        BeLong(http.Features, gate);
        http.Response.ContentType = WireJson.LinesMediaType;
        http.Response.Headers.CacheControl = "no-store";
        DeprecationNotes.Of(http)?.NoteLines();
        await using ReadAhead ahead = new(http.Request.BodyReader, http.RequestAborted);
        LineReader lines = new(ahead.Body, RequestLimits.MaxBodyBytes);
        IServiceProvider services = http.RequestServices;
        using BulkRun run = new(
            lines, http.Response.BodyWriter, fromLine, gate, WhileKeyCounts(http, answer), services.GetRequiredService<ILogger<BulkRun>>());
        await run.RunAsync(
            http.RequestAborted, services.GetRequiredService<IHostApplicationLifetime>().ApplicationStopping);
        if (run.LeftUnread)
            await HangUpAsync(http, lines);
    }

    // A run may go on for hours, and its key may end meanwhile.
    private static Func<JsonElement, CancellationToken, Task<BulkReply>> WhileKeyCounts(
        HttpContext http, Func<JsonElement, CancellationToken, Task<BulkReply>> answer)
    {
        if (KeyHolder.Of(http) is not { Key: var key })
            return answer;
        KeyRing ring = http.RequestServices.GetRequiredService<KeyRing>();
        return (body, callerGone) => ring.StillCounts(key)
            ? answer(body, callerGone)
            : Task.FromResult(new BulkReply(null, Problems.Of(
                ErrorCodes.KeyInvalid, $"The key {key.Id} was revoked or has expired since the run began.")));
    }

    // A connection that is cut while the caller sends may lose what he has not read: he gets a moment for that. The server
    // would wait longer, and keep a service that is told to end from ending.
    private static async Task HangUpAsync(HttpContext http, LineReader lines)
    {
        await http.Response.CompleteAsync();
        using var moment = CancellationTokenSource.CreateLinkedTokenSource(http.RequestAborted);
        moment.CancelAfter(RequestLimits.BulkLinger);
        await lines.DropRestAsync(moment.Token);
    }

    // What protects the service from one long body does not fit a run, whose lines have limits of their own.
    private static void BeLong(IFeatureCollection features, BulkGate gate)
    {
        if (features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
            size.MaxRequestBodySize = null;
        if (features.Get<IHttpMinRequestBodyDataRateFeature>() is { } sent)
            sent.MinDataRate = null;
        if (features.Get<IHttpMinResponseDataRateFeature>() is { } read)
            read.MinDataRate = new MinDataRate(RequestLimits.MinBodyBytesPerSecond, gate.MaxStall);
    }
}
