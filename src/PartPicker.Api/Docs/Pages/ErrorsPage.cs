using PartPicker.Api.Errors;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Docs;

/// <summary>Explains every error code; made from the list that the service answers from.</summary>
internal static class ErrorsPage
{
    public static TaggedAnswer Show() => HtmlPage.Of("Error codes",
        $"""
        <p>Whatever cannot be served is answered with a problem document
        (RFC 9457, <code>application/problem+json</code>).
        Its <code>type</code> leads to an entry of this page and <code>code</code> repeats the word for machines.
        <code>errors</code> lists every fault of a request at once: <code>pointer</code> says
        where, by JSON pointer (RFC 6901) in the body or by the name of the query parameter; <code>code</code> which,
        <code>sent</code> what was sent, <code>expected</code> what was expected.</p>
        <p>A request with faults of one kind has that kind as its code; with several kinds it has
        <a href="#{ErrorCodes.InvalidRequest.Code}"><code>{ErrorCodes.InvalidRequest.Code}</code></a>.</p>
        {string.Join('\n', ErrorCodes.All.Select(Entry))}
        """);

    private static string Entry(ErrorCode code) =>
        $"""
        <section id="{code.Code}" aria-labelledby="{code.Code}-title">
        <h2 id="{code.Code}-title"><a href="#{code.Code}"><code>{code.Code}</code></a>
        <span>{HtmlPage.Encode(code.Title)}</span></h2>
        <dl>
        <div><dt>Status</dt><dd>{code.Status}</dd></div>
        <div><dt>Meaning</dt><dd>{HtmlPage.Encode(code.Meaning)}</dd></div>
        <div><dt>What to do</dt><dd>{HtmlPage.Encode(code.Remedy)}</dd></div>
        </dl>
        </section>
        """;
}
