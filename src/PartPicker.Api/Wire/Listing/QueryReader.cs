using System.Globalization;
using Microsoft.Extensions.Primitives;
using PartPicker.Api.Errors;

namespace PartPicker.Api.Wire;

/// <summary>
/// Reads the query of an address strictly. Faults join a list and reading goes on; a parameter that nobody asked
/// for is a fault.
/// </summary>
internal sealed class QueryReader(IQueryCollection query, FaultList faults)
{
    private readonly HashSet<string> asked = new(StringComparer.Ordinal);

    /// <summary>Names that were sent and not asked for yet.</summary>
    public IEnumerable<string> Others => query.Keys.Where(name => !asked.Contains(name)).Order(StringComparer.Ordinal);

    /// <summary>The text of a parameter that may stand once.</summary>
    public string? Text(string name, string expected)
    {
        if (Take(name) is not { } sent)
            return null;
        if (sent.Count == 1 && sent[0]!.Length is > 0 and <= RequestLimits.MaxQueryTextLength)
            return sent[0];
        faults.AddParameter(
            ErrorCodes.OutOfRange, name, sent, $"{expected}, once, with 1 to {RequestLimits.MaxQueryTextLength} characters");
        return null;
    }

    /// <summary>All texts of a parameter that may be repeated.</summary>
    public IReadOnlyList<string> Texts(string name) => Take(name) is { } sent ? [.. sent.OfType<string>()] : [];

    public int? Count(string name, int min, int max)
    {
        string expected = $"a whole number from {min} to {max}";
        if (Text(name, expected) is not { } sent)
            return null;
        if (int.TryParse(sent, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= min && number <= max)
            return number;
        faults.AddParameter(ErrorCodes.OutOfRange, name, sent, expected);
        return null;
    }

    public bool? Flag(string name)
    {
        if (Text(name, "true or false") is not { } sent)
            return null;
        if (sent is "true" or "false")
            return sent == "true";
        faults.AddParameter(ErrorCodes.UnknownWord, name, sent, "true or false");
        return null;
    }

    public T? Word<T>(string name, IEnumerable<T> words) where T : struct, Enum
    {
        T[] all = [.. words];
        string expected = $"one of: {string.Join(", ", all.Select(w => WireJson.Word(w)))}";
        if (Text(name, expected) is not { } sent)
            return null;
        foreach (T word in all)
        {
            if (WireJson.Word(word) == sent)
                return word;
        }

        faults.AddParameter(ErrorCodes.UnknownWord, name, sent, expected);
        return null;
    }

    /// <summary>To be called last: whatever nobody asked for is a fault.</summary>
    public void RefuseOthers(string expected)
    {
        foreach (string name in Others)
            faults.AddParameter(ErrorCodes.UnknownParameter, name, query[name], expected);
    }

    private StringValues? Take(string name)
    {
        asked.Add(name);
        return query.TryGetValue(name, out StringValues sent) ? sent : (StringValues?)null;
    }
}
