using System.Reflection;
using PartPicker.Api.StartUp;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Docs;

/// <summary>The pages for people.</summary>
internal static class PageEndpoints
{
    public static void MapPages(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/", (HttpRequest request, CurrentCatalog current) =>
            StartPage.Show(current.Snapshot, request.Host)).ExcludeFromDescription();
        routes.MapGet("/docs/errors", ErrorsPage.Show).ExcludeFromDescription();
        foreach (string name in MarkdownPage.Names)
        {
            Lazy<TaggedAnswer> page = new(() => MarkdownPage.Show(name));
            routes.MapGet($"/docs/{name}", () => page.Value).ExcludeFromDescription();
        }

        foreach (string path in new[] { HtmlPage.StylePath, HtmlPage.ApiStylePath })
        {
            byte[] style = ReadStyle(Path.GetFileName(path));
            routes.MapGet(path, () => new TaggedAnswer(style, "text/css")).ExcludeFromDescription();
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
