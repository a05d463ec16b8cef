using PartPicker.Api.Errors;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Docs;

/// <summary>What an operation says of itself in the API document.</summary>
internal static class OperationExtensions
{
    /// <summary>Shows the worked example of that name: its request where there is one, and the real answer.</summary>
    public static RouteHandlerBuilder WithExample(this RouteHandlerBuilder builder, string name) =>
        builder.WithMetadata(new ExampleName(name));

    public static RouteHandlerBuilder ProducesNotModified(this RouteHandlerBuilder builder) =>
        builder.Produces(StatusCodes.Status304NotModified);

    public static RouteHandlerBuilder ProducesProblems(this RouteHandlerBuilder builder, params int[] statuses)
    {
        foreach (int status in statuses)
            builder.Produces<ProblemWire>(status, ProblemAnswer.MediaType);
        return builder;
    }

    /// <summary>The address takes no query parameters: one that is sent is a mistake, and is said to be.</summary>
    public static RouteHandlerBuilder TakesNoParameters(this RouteHandlerBuilder builder) =>
        builder.AddEndpointFilter(async (context, next) =>
        {
            FaultList faults = new();
            foreach ((string name, var sent) in context.HttpContext.Request.Query)
                faults.AddParameter(ErrorCodes.UnknownParameter, name, sent, "no query parameter");
            return faults.Count > 0 ? Problems.Of(faults) : await next(context);
        });
}

/// <summary>The name of a worked example.</summary>
internal sealed record ExampleName(string Name);
