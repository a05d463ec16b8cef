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
        <section id="without-a-body" aria-labelledby="without-a-body-title">
        <h2 id="without-a-body-title"><a href="#without-a-body">Answers without a body</a></h2>
        <p>What breaks HTTP before the service can read it is answered by the web server alone: the status, no body, and
        the connection is closed. There is nothing to repeat in these answers, since the request was not understood.</p>
        <dl>
        <div><dt>400</dt><dd>The first line or a header does not keep the form of HTTP (RFC 9112), or Host is missing.
        Send the request by a client that knows HTTP, with every odd character of the address written as %XX.</dd></div>
        <div><dt>408</dt><dd>The headers did not arrive in time. Send the request again.</dd></div>
        <div><dt>414</dt><dd>The first line, which holds the address, has more than {RequestLimits.MaxRequestLineBytes}
        bytes. Send fewer or shorter filters.</dd></div>
        <div><dt>431</dt><dd>There are more than {RequestLimits.MaxHeaders} headers, or they have more than
        {RequestLimits.MaxHeaderBytes} bytes. Leave out those that a proxy or a browser added.</dd></div>
        <div><dt>505</dt><dd>The version of HTTP is none that is spoken here: send HTTP/1.1.</dd></div>
        </dl>
        </section>
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
