using System.Net.Http.Headers;
using System.Text;
using PartPicker.Service.Tests.Contract;

namespace PartPicker.Service.Tests.Fuzz;

/// <summary>A request, whole, so that it can be sent again and shown.</summary>
/// <param name="Operation">The operation that it is addressed to; null where the document has none there.</param>
/// <param name="Method">By the letter.</param>
/// <param name="Address">Path and query.</param>
/// <param name="Headers">Names and values, unchecked.</param>
/// <param name="Body">Null for none.</param>
internal sealed record SentRequest(
    ApiOperation? Operation, string Method, string Address, IReadOnlyList<(string Name, string Value)> Headers, byte[]? Body)
{
    private const int MostShown = 4_000;

    public HttpRequestMessage Message()
    {
        HttpRequestMessage message = new(new HttpMethod(Method), new Uri(Address, UriKind.Relative))
        {
            Content = Body is null ? null : new ByteArrayContent(Body),
        };
        foreach ((string name, string value) in Headers)
        {
            HttpHeaders holder = name.StartsWith("Content-", StringComparison.Ordinal) && message.Content is { } content
                ? content.Headers
                : message.Headers;
            holder.TryAddWithoutValidation(name, value);
        }

        return message;
    }

    public override string ToString()
    {
        string body = Body is null ? "no body" : Encoding.UTF8.GetString(Body);
        return $"{Method} {Address}\n{string.Join('\n', Headers.Select(h => $"{h.Name}: {h.Value}"))}\n\n"
            + (body.Length > MostShown ? body[..MostShown] + "…" : body);
    }
}
