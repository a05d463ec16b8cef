namespace PartPicker.Catalog;

/// <summary>What a file says for one field, taken apart but not yet understood.</summary>
/// <param name="Whole">All of it, as written.</param>
/// <param name="Tokens">One for a single value, several for lists.</param>
/// <param name="Unit">The unit of all its numbers, where a CSV header states it.</param>
internal sealed record WrittenValue(Token Whole, IReadOnlyList<Token> Tokens, string? Unit = null)
{
    public static WrittenValue Of(Token single, string? unit = null) => new(single, [single], unit);
}

/// <summary>A piece of text, and the CSV column or the JSON pointer where it stands.</summary>
/// <param name="Key">
/// What it belongs to: X of a point, the name of a hole or of a step, the member of an entry.
/// </param>
internal sealed record Token(string? Key, string Text, string Place)
{
    public string Written => Key is null ? Text : $"{Key}: {Text}";

    /// <summary>The points of a curve in a list of curves, or the members of an entry that has several.</summary>
    public IReadOnlyList<Token> Parts { get; init; } = [];

    /// <summary>The text of a member; null when it is left out.</summary>
    public string? Part(string key) => Parts.FirstOrDefault(p => p.Key == key)?.Text;
}
