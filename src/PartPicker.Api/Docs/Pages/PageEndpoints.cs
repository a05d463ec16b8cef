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
