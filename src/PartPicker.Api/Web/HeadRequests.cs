namespace PartPicker.Api.Web;

/// <summary>
/// HEAD answers wherever GET does, with the same headers: routing by itself knows nothing of it.
/// </summary>
internal static class HeadRequests
{
    public static void UseHead(this WebApplication app) => app.Use(async (http, next) =>
    {
        if (!HttpMethods.IsHead(http.Request.Method))
        {
            await next(http);
            return;
        }

        Stream body = http.Response.Body;
        http.Request.Method = HttpMethods.Get;
        http.Response.Body = Stream.Null;
        try
        {
            await next(http);
        }
        finally
        {
            // The server must see HEAD again, or it would miss the bytes that Content-Length promises.
            http.Request.Method = HttpMethods.Head;
            http.Response.Body = body;
        }
    });
}
