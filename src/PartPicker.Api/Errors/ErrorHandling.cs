using Microsoft.AspNetCore.Diagnostics;
using PartPicker.Api.Bulk;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Errors;

/// <summary>Turns whatever no feature answered into a problem document.</summary>
internal static class ErrorHandling
{
    public static void UseProblems(this WebApplication app)
    {
        app.UseExceptionHandler(new ExceptionHandlerOptions
        {
            ExceptionHandler = AnswerException,
            // A caller's broken request is no fault of the service and does not belong in its log.
            SuppressDiagnosticsCallback = context => context.Exception is BadHttpRequestException,
        });
        app.UseStatusCodePages(context => AnswerStatus(context.HttpContext));
    }

    private static Task AnswerException(HttpContext http)
    {
        Exception? exception = http.Features.Get<IExceptionHandlerFeature>()?.Error;
        ProblemAnswer answer = exception is BadHttpRequestException bad
            ? Problems.Of(ErrorCodes.OfStatus(bad.StatusCode), Detail(bad.StatusCode), bad.StatusCode)
            : Problems.Of(
                ErrorCodes.InternalError, "The log of the service holds the cause; the request may be sound.");
        return answer.ExecuteAsync(http);
    }

    // In words of our own: those of the server name its settings, which no caller can change.
    private static string Detail(int status) => status switch
    {
        408 => $"After {RequestLimits.BodyRateGrace.TotalSeconds:0} s fewer than {RequestLimits.MinBodyBytesPerSecond} bytes "
            + "a second had come; send the whole body at once.",
        413 => RequestBody.TooLarge,
        _ => "The request ended before its body was whole, or does not keep the form of HTTP (RFC 9112).",
    };

    private static Task AnswerStatus(HttpContext http)
    {
        HttpResponse response = http.Response;
        if (response.Headers.Allow is [{ } allow] && allow == HttpMethods.Get)
            response.Headers.Allow = $"{HttpMethods.Get}, {HttpMethods.Head}";
        string asked = $"{http.Request.Method} {http.Request.Path}";
        bool lines = BulkEndpoints.IsAt(http.Request.Path);
        ErrorCode code = response.StatusCode == 415 && lines
            ? ErrorCodes.LinesNeeded
            : ErrorCodes.OfStatus(response.StatusCode);
        string detail = response.StatusCode switch
        {
            404 => $"{asked} leads nowhere; /docs/api/ shows every path.",
            405 => $"{asked} is not offered; allowed here: {response.Headers.Allow}.",
            415 when lines => RequestBody.WhyNotJson(http.Request, WireJson.LinesMediaType) ?? code.Remedy,
            415 => RequestBody.WhyNotJson(http.Request) ?? code.Remedy,
            _ => $"{asked} was answered with status {response.StatusCode}.",
        };
        return Problems.Of(code, detail, response.StatusCode).ExecuteAsync(http);
    }
}
