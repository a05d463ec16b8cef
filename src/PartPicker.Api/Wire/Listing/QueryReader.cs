using System.Globalization;
using Microsoft.AspNetCore.WebUtilities;
using PartPicker.Api.Errors;

namespace PartPicker.Api.Wire;

/// <summary>
/// Reads the query of an address as strictly as a body is read: by the letter, each parameter once where one is
/// meant, and nothing passed over. Faults join a list and reading goes on; a parameter with a fault reads as null.
/// </summary>
internal sealed class QueryReader
{
    /// <summary>How yes and no are written.</summary>
    public static readonly IReadOnlyList<string> Flags = ["true", "false"];

    private readonly OrderedDictionary<string, List<string>> sent = new(StringComparer.Ordinal);
    private readonly List<string> asked = [];
    private readonly FaultList faults;

    public QueryReader(HttpRequest request, FaultList faults)
    {
        this.faults = faults;
        foreach (var pair in new QueryStringEnumerable(request.QueryString.Value))
        {
            string name = pair.DecodeName().ToString();
            if (!sent.TryGetValue(name, out List<string>? values))
                sent.Add(name, values = []);
            values.Add(pair.DecodeValue().ToString());
        }
    }

    /// <summary>The names that were sent and that nobody has asked for yet, in the order of the address.</summary>
    public IReadOnlyList<string> Others => [.. sent.Keys.Except(asked, StringComparer.Ordinal)];

    /// <summary>Every name and value that was sent, in the order of the address.</summary>
    public IEnumerable<KeyValuePair<string, string>> Pairs =>
        sent.SelectMany(parameter => parameter.Value.Select(value => KeyValuePair.Create(parameter.Key, value)));

    /// <summary>Every value of a parameter that may stand several times.</summary>
    public IReadOnlyList<string> All(string name)
    {
        asked.Add(name);
        return sent.GetValueOrDefault(name) ?? [];
    }

    /// <summary>The value of a parameter that may stand once.</summary>
    public string? One(string name, string expected)
    {
        IReadOnlyList<string> values = All(name);
        if (values.Count <= 1)
            return values.Count == 1 ? values[0] : null;
        faults.Add(ErrorCodes.DuplicateParameter, name, string.Join(", ", values), $"{expected}; once");
        return null;
    }

    public string? Text(string name, int maxLength)
    {
        string expected = $"1 to {maxLength} characters, not blanks alone";
        if (One(name, expected) is not { } text)
            return null;
        if (!string.IsNullOrWhiteSpace(text) && Characters.Count(text) <= maxLength)
            return text;
        faults.Add(ErrorCodes.OutOfRange, name, text, expected);
        return null;
    }

    /// <summary>One of a few words.</summary>
    public string? Word(string name, IReadOnlyList<string> words)
    {
        string expected = $"one of: {string.Join(", ", words)}";
        if (One(name, expected) is not { } word)
            return null;
        if (words.Contains(word, StringComparer.Ordinal))
            return word;
        faults.Add(ErrorCodes.UnknownWord, name, word, expected + Nearest.Hint(word, words));
        return null;
    }

    public T? Word<T>(string name) where T : struct, Enum
    {
        T[] all = Enum.GetValues<T>();
        return Word(name, [.. all.Select(WireJson.Word)]) is { } word
            ? all.First(value => WireJson.Word(value) == word)
            : null;
    }

    public bool? Flag(string name) => Word(name, Flags) is { } word ? word == Flags[0] : null;

    public int? Count(string name, int min, int max)
    {
        string expected = $"a whole number from {min} to {max}";
        if (One(name, expected) is not { } text)
            return null;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            && number >= min && number <= max)
        {
            return number;
        }

        faults.Add(ErrorCodes.OutOfRange, name, text, expected);
        return null;
    }

    /// <summary>To be called last: whatever nobody asked for is a fault.</summary>
    /// <param name="known">What may be sent, for a person; null: what was asked for.</param>
    /// <param name="names">The names that one of the others may have been meant for; null: what was asked for.</param>
    public void RefuseOthers(string? known = null, IReadOnlyCollection<string>? names = null)
    {
        string expected = known
            ?? (asked.Count > 0 ? $"one of: {string.Join(", ", asked)}" : "no query parameter");
        foreach (string name in Others)
        {
            // A place needs a name: a parameter may come without one, as in "?=1".
            faults.Add(
                ErrorCodes.UnknownParameter, name.Length > 0 ? name : "?", string.Join(", ", sent[name]),
                expected + Nearest.Hint(name, names ?? asked));
        }
    }
}
