using Microsoft.OpenApi;
using PartPicker.Api.Wire;
using Swashbuckle.AspNetCore.Swagger;

namespace PartPicker.Api.Docs;

/// <summary>Serves the API document, and the page that shows it.</summary>
internal static class ApiDocument
{
    public const string Path = "/openapi/v1.json";
    private const string PageFolder = "docs/api";
    private const string Title = "Part Picker API";

    // The frame of every page around the page that the library fills; its names are replaced when it is sent.
    private const string Frame =
        $"""
        <link rel="stylesheet" href="%(StylesPath)">
        <link rel="stylesheet" href="{HtmlPage.ApiStylePath}">
        %(HeadContent)
        <div id="swagger-ui"></div>
        <script src="%(ScriptBundlePath)"></script>
        <script src="%(ScriptPresetsPath)"></script>
        <script src="index.js"></script>
        """;

    public static void MapApiDocument(this IEndpointRouteBuilder routes)
    {
        Lazy<Task<byte[]>> document = new(() => WriteAsync(routes.ServiceProvider));
        routes.MapGet(Path, async () => new TaggedAnswer(await document.Value) { Fresh = TaggedAnswer.FreshOfProgram })
            .AllowAnonymous().ExcludeFromDescription();
        routes.MapGet("/docs", () => Results.LocalRedirect($"/{PageFolder}/")).AllowAnonymous().ExcludeFromDescription();
    }

    public static void UseApiPage(this WebApplication app) => app.UseSwaggerUI(page =>
    {
        page.RoutePrefix = PageFolder;
        page.DocumentTitle = Title;
        page.EnableDeepLinking();
        page.IndexStream = () => new MemoryStream(HtmlPage.Bytes(Title, Frame));
        page.SwaggerEndpoint(Path, "Part Picker");
    });

    // The endpoints do not change while the service runs, so that one writing serves every reader.
    private static async Task<byte[]> WriteAsync(IServiceProvider services)
    {
        OpenApiDocument document = await services.GetRequiredService<IAsyncSwaggerProvider>()
            .GetSwaggerAsync(OpenApiSetup.DocumentName);
        using MemoryStream bytes = new();
        await document.SerializeAsJsonAsync(bytes, OpenApiSpecVersion.OpenApi3_1);
        return bytes.ToArray();
    }
}
