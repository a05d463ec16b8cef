using System.Reflection;
using PartPicker.Api.Keys;
using PartPicker.Api.StartUp;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Docs;

/// <summary>The pages for people.</summary>
internal static class PageEndpoints
{
    // They are the same for every service and tell nothing of a catalog; problem documents lead to them.
    public static void MapPages(this IEndpointRouteBuilder outer)
    {
        RouteGroupBuilder routes = outer.MapGroup("").AllowAnonymous();
        routes.MapGet("/", (HttpContext http, CurrentCatalog current, Access access) =>
            StartPage.Show(current.Snapshot, access.IsOpen(http), http.Request.Host)).ExcludeFromDescription();
        routes.MapGet("/docs/errors", ErrorsPage.Show).ExcludeFromDescription();
        foreach (string name in MarkdownPage.Names)
        {
            Lazy<TaggedAnswer> page = new(() => MarkdownPage.Show(name));
            routes.MapGet($"/docs/{name}", () => page.Value).ExcludeFromDescription();
        }

        foreach (string path in new[] { HtmlPage.StylePath, HtmlPage.ApiStylePath })
        {
            TaggedAnswer style = new(ReadStyle(Path.GetFileName(path)), "text/css") { Fresh = TaggedAnswer.FreshOfProgram };
            routes.MapGet(path, () => style).ExcludeFromDescription();
        }
    }

    private static byte[] ReadStyle(string name)
    {
        using Stream file = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)!;
        using MemoryStream bytes = new();
        file.CopyTo(bytes);
        return bytes.ToArray();
    }
}
