namespace PartPicker.Catalog;

/// <summary>What a file says for one field, taken apart but not yet understood.</summary>
/// <param name="Whole">All of it, as written.</param>
/// <param name="Tokens">
/// One for a single value, several for lists; each of a curve or of holes has its key: X, or the name of the hole.
/// </param>
/// <param name="Unit">The unit of all its numbers, where a CSV header states it.</param>
internal sealed record WrittenValue(Token Whole, IReadOnlyList<Token> Tokens, string? Unit = null)
{
    public static WrittenValue Of(Token single, string? unit = null) => new(single, [single], unit);
}

/// <summary>A piece of text, and the CSV column or the JSON pointer where it stands.</summary>
internal readonly record struct Token(string? Key, string Text, string Place)
{
    public string Written => Key is null ? Text : $"{Key}: {Text}";
}
