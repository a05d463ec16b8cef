using System.Text.Json;
using PartPicker.Api.Docs;
using PartPicker.Api.Errors;
using PartPicker.Api.StartUp;
using PartPicker.Api.Wire;
using PartPicker.Selection;

namespace PartPicker.Api.Predictions;

/// <summary>What does one given set do?</summary>
internal static class PredictionEndpoints
{
    public static void MapPredictions(this IEndpointRouteBuilder routes) =>
        routes.MapPost("/v1/predictions", AskAsync)
            .WithName("predict")
            .WithTags("Predictions")
            .WithSummary("Predict what one set of parts does.")
            .WithDescription(
                "Engagement, shift curve and the forces at each ratio, at steady full throttle. Nothing is stored.")
            .Accepts<PredictionRequestWire>(WireJson.MediaType)
            .Produces<PredictionWire>(StatusCodes.Status200OK, WireJson.MediaType)
            .WithExample("prediction")
            .ProducesProblems(400, 413, 415, 500, 503);

    private static async Task<IResult> AskAsync(
        HttpContext http, CurrentCatalog current, string? units, string? precision)
    {
        FaultList faults = new();
        AnswerFormat format = AnswerFormat.Read(http.Request.Query, faults);
        if (current.Snapshot is not { } catalog)
            return CurrentCatalog.NotLoaded();
        (JsonDocument? json, ProblemAnswer? refusal) = await RequestBody.ReadAsync(http.Request);
        using JsonDocument? body = json;
        if (body is null)
            return refusal!;
        PredictionRequest? request = PredictionRequestReader.Read(body.RootElement, catalog, faults);
        if (request is null || faults.Count > 0)
            return Problems.Of(faults);

        Outcome<PredictionAnswer> outcome = SetPrediction.Predict(catalog, request);
        return outcome.Answer is { } answer
            ? TaggedAnswer.Of(PredictionWriter.Write(request, answer, new AnswerWriter(catalog, format)))
            : Problems.Of(outcome.Problems);
    }
}
