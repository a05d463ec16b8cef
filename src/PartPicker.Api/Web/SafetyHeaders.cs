namespace PartPicker.Api.Web;

/// <summary>Headers that keep a browser from doing more with an answer than it was made for.</summary>
internal static class SafetyHeaders
{
    // Only what the pages use: their own scripts and styles; the API page needs inline styles and data images.
    private const string Policy =
        "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; "
        + "frame-ancestors 'none'; base-uri 'none'";

    public static void UseSafetyHeaders(this WebApplication app) => app.Use((http, next) =>
    {
        // An error clears the headers and sets its own, so these are added when the answer starts.
        http.Response.OnStarting(() =>
        {
            http.Response.Headers.XContentTypeOptions = "nosniff";
            http.Response.Headers.ContentSecurityPolicy = Policy;
            return Task.CompletedTask;
        });
        return next(http);
    });
}
