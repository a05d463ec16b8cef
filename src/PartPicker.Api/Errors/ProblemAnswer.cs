using PartPicker.Api.Wire;

namespace PartPicker.Api.Errors;

/// <summary>Sends a problem document (RFC 9457).</summary>
internal sealed class ProblemAnswer(ProblemWire problem) : IResult
{
    public const string MediaType = "application/problem+json";

    public ProblemWire Problem => problem;

    /// <summary>When the request may be sent again.</summary>
    public TimeSpan? RetryAfter { get; init; }

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        byte[] body = WireJson.Bytes(problem);
        HttpResponse response = httpContext.Response;
        response.StatusCode = problem.Status;
        response.ContentType = MediaType;
        response.ContentLength = body.Length;
        response.Headers.CacheControl = "no-store";
        if (RetryAfter is { } wait)
            response.Headers.RetryAfter = $"{wait.TotalSeconds:0}";
        await response.Body.WriteAsync(body, httpContext.RequestAborted);
    }
}
