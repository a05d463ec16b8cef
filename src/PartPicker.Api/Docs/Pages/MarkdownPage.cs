using System.Text.RegularExpressions;
using Markdig;
using Markdig.Extensions.AutoIdentifiers;
using Markdig.Extensions.Mathematics;
using Markdig.Extensions.Tables;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using PartPicker.Api.Wire;
using PartPicker.Selection;

namespace PartPicker.Api.Docs;

/// <summary>Shows a page that is kept or written as Markdown.</summary>
internal static partial class MarkdownPage
{
    private const string Root = "/docs/";
    private const string Picture = ".svg";

    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .UsePipeTables().UseMathematics().UseAutoIdentifiers(AutoIdentifierOptions.GitHub).DisableHtml().Build();

    /// <summary>The pages that are served, each below /docs/ by its name.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. ReferencePages.Names, .. KeptPages.Names];

    /// <summary>Where a relation is explained.</summary>
    public static string PathOf(CitedRelation relation) => $"{Root}model/{relation.Page}#{relation.Name}";

    public static TaggedAnswer Show(string name)
    {
        string text = ReferencePages.Find(name) ?? KeptPages.Read(name + KeptPages.Ending);
        MarkdownDocument page = Markdown.Parse(Comment().Replace(text, ""), Pipeline);
        string title = "";
        if (page is [HeadingBlock { Level: 1, Inline: { } words } heading, ..])
        {
            title = string.Concat(words.Descendants<LiteralInline>());
            page.Remove(heading);
        }

        foreach (LinkInline link in page.Descendants<LinkInline>().ToArray())
            Redirect(link, name);
        foreach (MathInline formula in page.Descendants<MathInline>().ToArray())
            formula.ReplaceBy(new HtmlInline(MathMarkup.Of(formula.Content.ToString(), formula.DelimiterCount == 2)));
        foreach (TableRow row in page.Descendants<TableRow>())
            Mark(row);

        // A table wider than the screen scrolls by itself, by keyboard too.
        string html = page.ToHtml(Pipeline)
            .Replace("<table>", "<div class=\"wide\" tabindex=\"0\"><table>", StringComparison.Ordinal)
            .Replace("</table>", "</table></div>", StringComparison.Ordinal);
        return HtmlPage.Of(title, Citation().Replace(html, Cite));
    }

    // A link to a file of docs/ leads to its page; a picture stands in the page, so that its words are read out.
    private static void Redirect(LinkInline link, string page)
    {
        Uri docs = new("http://docs" + Root);
        Uri target = new(new Uri(docs, page), link.Url);
        if (target.Host != docs.Host || link.Url is ['#', ..])
            return;
        string file = target.AbsolutePath[Root.Length..];
        if (file.EndsWith(Picture, StringComparison.Ordinal))
            link.ReplaceBy(new HtmlInline(KeptPages.Read(file)), copyChildren: false);
        else if (file.EndsWith(KeptPages.Ending, StringComparison.Ordinal))
            link.Url = Root + file[..^KeptPages.Ending.Length] + target.Fragment;
    }

    // The row of a source on its page is what citations lead to.
    private static void Mark(TableRow row)
    {
        string first = row[0] is TableCell and [ParagraphBlock { Inline: { } words }]
            ? string.Concat(words.Descendants<LiteralInline>())
            : "";
        if (first is ['[', .. var key, ']'] && KeptPages.SourceKeys.Contains(key))
            row.GetAttributes().Id = KeptPages.Anchor(key);
    }

    private static string Cite(Match match)
    {
        string key = match.Groups[1].Value;
        return KeptPages.SourceKeys.Contains(key) ? $"[<a href=\"{Root}sources#{KeptPages.Anchor(key)}\">{key}</a>]" : match.Value;
    }

    [GeneratedRegex(@"\[([^\[\]<>]+)\]")]
    private static partial Regex Citation();

    // A mark for whoever writes the page is not for whoever reads it.
    [GeneratedRegex("<!--.*?-->")]
    private static partial Regex Comment();
}
