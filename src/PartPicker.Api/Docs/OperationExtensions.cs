using PartPicker.Api.Errors;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Docs;

/// <summary>What an operation says of itself in the API document.</summary>
internal static class OperationExtensions
{
    /// <summary>
    /// Shows the worked example of that name: its request where there is one, and the real answers.
    /// </summary>
    /// <param name="builder">The operation.</param>
    /// <param name="name">What the files of the example begin with.</param>
    /// <param name="answerOf">The example that shows the same answer, where this one has none of its own.</param>
    public static RouteHandlerBuilder WithExample(
        this RouteHandlerBuilder builder, string name, string? answerOf = null) =>
        builder.WithMetadata(new ExampleName(name, answerOf ?? name));

    public static RouteHandlerBuilder ProducesNotModified(this RouteHandlerBuilder builder) =>
        builder.Produces(StatusCodes.Status304NotModified);

    public static RouteHandlerBuilder ProducesProblems(this RouteHandlerBuilder builder, params int[] statuses)
    {
        foreach (int status in statuses)
            builder.Produces<ProblemWire>(status, ProblemAnswer.MediaType);
        return builder;
    }

    /// <summary>The query parameters that the address takes; the handler reads them.</summary>
    public static RouteHandlerBuilder TakesParameters(
        this RouteHandlerBuilder builder, IEnumerable<QueryParameter> parameters) =>
        builder.WithMetadata([.. parameters]);

    /// <summary>
    /// The address takes no query parameters: one that is sent is a mistake, and is said to be.
    /// </summary>
    public static RouteHandlerBuilder TakesNoParameters(this RouteHandlerBuilder builder) =>
        builder.AddEndpointFilter(async (context, next) =>
        {
            FaultList faults = new();
            new QueryReader(context.HttpContext.Request, faults).RefuseOthers();
            return faults.Count > 0 ? Problems.Of(faults) : await next(context);
        });
}

/// <summary>The name of a worked example, and of the one whose answer it shows.</summary>
internal sealed record ExampleName(string Name, string AnswerOf);
