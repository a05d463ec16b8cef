using System.Reflection;
using System.Text.RegularExpressions;
using Markdig;
using Markdig.Extensions.AutoIdentifiers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using PartPicker.Api.Wire;
using PartPicker.Selection;

namespace PartPicker.Api.Docs;

/// <summary>Shows a page that is kept or written as Markdown.</summary>
internal static partial class MarkdownPage
{
    /// <summary>The page of what the model does not know, which is kept in docs/.</summary>
    public const string Limits = "limits";

    private const string Ending = ".md";

    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .UsePipeTables().UseAutoIdentifiers(AutoIdentifierOptions.GitHub).DisableHtml().Build();

    /// <summary>The pages that are served, each below /docs/ by its name.</summary>
    public static IReadOnlyList<string> Names => [.. ReferencePages.Names, Limits];

    /// <summary>Where a relation is explained.</summary>
    public static string PathOf(CitedRelation relation) => $"/docs/model/{relation.Page}#{relation.Name}";

    public static TaggedAnswer Show(string name)
    {
        MarkdownDocument page = Markdown.Parse(Comment().Replace(ReferencePages.Find(name) ?? Kept(name), ""), Pipeline);
        string title = "";
        if (page is [HeadingBlock { Level: 1, Inline: { } words } heading, ..])
        {
            title = string.Concat(words.Descendants<LiteralInline>());
            page.Remove(heading);
        }

        foreach (LinkInline link in page.Descendants<LinkInline>().ToArray())
            Redirect(link);
        // A table wider than the screen scrolls by itself, by keyboard too.
        string html = page.ToHtml(Pipeline)
            .Replace("<table>", "<div class=\"wide\" tabindex=\"0\"><table>", StringComparison.Ordinal)
            .Replace("</table>", "</table></div>", StringComparison.Ordinal);
        return HtmlPage.Of(title, html);
    }

    // A page that is not served is named, but leads nowhere.
    private static void Redirect(LinkInline link)
    {
        if (link.Url is not { } url || !url.EndsWith(Ending, StringComparison.Ordinal))
            return;
        string name = url[..^Ending.Length];
        if (Names.Contains(name))
            link.Url = $"/docs/{name}";
        else
            link.ReplaceBy(new LiteralInline(string.Concat(link.Descendants<LiteralInline>())), copyChildren: false);
    }

    // A mark for whoever writes the page is not for whoever reads it.
    [GeneratedRegex("<!--.*?-->")]
    private static partial Regex Comment();

    private static string Kept(string name)
    {
        using Stream file = Assembly.GetExecutingAssembly().GetManifestResourceStream(name + Ending)!;
        using StreamReader reader = new(file);
        return reader.ReadToEnd();
    }
}
