using System.Text.Json;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Errors;

/// <summary>Gathers every fault of one request, so that a caller can correct them all at once.</summary>
/// <param name="body">The body, where the request has one: a fault in it shows the JSON that was sent.</param>
internal sealed class FaultList(JsonElement? body = null)
{
    private readonly List<Fault> faults = [];

    /// <summary>Most faults that are listed; the rest is counted.</summary>
    public const int MaxListed = 100;

    /// <summary>Most characters of what was sent that are repeated.</summary>
    public const int MaxSentLength = 80;

    public IReadOnlyList<Fault> Listed => faults;

    /// <summary>How many there are, listed or not.</summary>
    public int Count { get; private set; }

    /// <summary>A fault at a JSON pointer into the body, or at the query parameter of that name.</summary>
    /// <param name="code">Which.</param>
    /// <param name="pointer">Where.</param>
    /// <param name="sent">What was sent, where the body does not hold a single value at that place.</param>
    /// <param name="expected">What was expected.</param>
    public void Add(ErrorCode code, string pointer, string? sent, string expected)
    {
        Count++;
        if (faults.Count < MaxListed)
            faults.Add(new Fault(code, pointer, Shortened(AsSent(pointer) ?? sent), expected));
    }

    // A number and a text of the same digits must not look alike; what sums up several values is left as it is.
    private string? AsSent(string pointer) =>
        body is { } root && JsonPointer.Find(root, pointer) is { ValueKind: not (JsonValueKind.Object or JsonValueKind.Array) } value
            ? value.GetRawText()
            : null;

    public static string? Shortened(string? sent)
    {
        if (sent is null || sent.Length <= MaxSentLength)
            return sent;
        // A pair of surrogates is one character: it is not cut in two.
        int end = char.IsHighSurrogate(sent[MaxSentLength - 1]) ? MaxSentLength - 1 : MaxSentLength;
        return sent[..end] + "…";
    }
}
