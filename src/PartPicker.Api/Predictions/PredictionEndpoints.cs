using PartPicker.Api.Capacity;
using PartPicker.Api.Docs;
using PartPicker.Api.Errors;
using PartPicker.Api.StartUp;
using PartPicker.Api.Web;
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
            .TakesParameters(AnswerFormat.Parameters)
            .ProducesProblems(400, 408, 413, 415, 500, 503);

    private static async Task<IResult> AskAsync(
        HttpContext http, CurrentCatalog current, [FromKeyedServices(CapacitySetup.PredictionPlaces)] Places places)
    {
        (Question<PredictionRequest>? question, ProblemAnswer? refusal) =
            await Question.ReadAsync(http.Request, current, PredictionRequestReader.Read);
        if (question is null)
            return refusal!;
        return await places.RunAsync(() => Reply(question), http.RequestAborted) ?? places.Full();
    }

    private static IResult Reply(Question<PredictionRequest> question)
    {
        (byte[]? answer, ProblemAnswer? refusal) = Answer(question);
        return answer is null ? refusal! : new TaggedAnswer(answer);
    }

    /// <summary>The bytes of the answer, or why there is none.</summary>
    public static (byte[]? Answer, ProblemAnswer? Refusal) Answer(Question<PredictionRequest> question)
    {
        Outcome<PredictionAnswer> outcome = SetPrediction.Predict(question.Catalog, question.Request);
        if (outcome.Answer is not { } answer)
            return (null, Problems.Of(outcome.Problems, question.Body));
        AnswerWriter writer = new(question.Catalog, question.Format);
        return (WireJson.Bytes(PredictionWriter.Write(question.Request, answer, writer)), null);
    }
}
