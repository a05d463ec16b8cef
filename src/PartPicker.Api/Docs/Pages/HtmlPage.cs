using System.Text;
using System.Text.Encodings.Web;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Docs;

/// <summary>The frame of every page: plain HTML that reads well without anything else.</summary>
internal static class HtmlPage
{
    public const string StylePath = "/docs/pages.css";
    public const string ApiStylePath = "/docs/api.css";

    public static string Encode(string text) => HtmlEncoder.Default.Encode(text);

    /// <summary>A page.</summary>
    /// <param name="title">Its heading.</param>
    /// <param name="content">HTML for the main part.</param>
    public static TaggedAnswer Of(string title, string content) =>
        new(Bytes(title, content), "text/html; charset=utf-8") { Fresh = TaggedAnswer.FreshOfProgram };

    /// <inheritdoc cref="Of"/>
    public static byte[] Bytes(string title, string content) => Encoding.UTF8.GetBytes(
        $"""
        <!doctype html>
        <html lang="en">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <title>{Encode(title)}</title>
        <link rel="icon" href="data:,">
        <link rel="stylesheet" href="{StylePath}">
        </head>
        <body>
        <header><nav aria-label="Site">
        <a href="/">Part Picker</a>
        <a href="/docs/api/">API</a>
        <a href="/docs/recipes">Recipes</a>
        <a href="/docs/errors">Error codes</a>
        <a href="/docs/fit">Fit rules</a>
        <a href="/docs/fields">Fields</a>
        <a href="/docs/model/shift-curve">Model</a>
        <a href="/docs/limits">Limits</a>
        <a href="/docs/glossary">Glossary</a>
        <a href="/docs/sources">Sources</a>
        </nav></header>
        <main>
        <h1>{Encode(title)}</h1>
        {content}
        </main>
        </body>
        </html>

        """);
}
