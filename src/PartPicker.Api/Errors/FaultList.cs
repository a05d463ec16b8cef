namespace PartPicker.Api.Errors;

/// <summary>Gathers every fault of one request, so that a caller can correct them all at once.</summary>
internal sealed class FaultList
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
    public void Add(ErrorCode code, string pointer, string? sent, string expected)
    {
        Count++;
        if (faults.Count < MaxListed)
            faults.Add(new Fault(code, pointer, Shortened(sent), expected));
    }

    private static string? Shortened(string? sent)
    {
        if (sent is null || sent.Length <= MaxSentLength)
            return sent;
        // A pair of surrogates is one character: it is not cut in two.
        int end = char.IsHighSurrogate(sent[MaxSentLength - 1]) ? MaxSentLength - 1 : MaxSentLength;
        return sent[..end] + "…";
    }
}
