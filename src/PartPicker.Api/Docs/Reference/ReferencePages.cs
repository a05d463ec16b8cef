using System.Collections.Frozen;
using PartPicker.Selection;

namespace PartPicker.Api.Docs;

/// <summary>The pages of reference, written from the program itself; docs/ holds what they said last.</summary>
internal static class ReferencePages
{
    private static readonly FrozenDictionary<string, Func<string>> Pages = new Dictionary<string, Func<string>>
    {
        ["fields"] = FieldDocs.Markdown,
        ["fit"] = FitDocs.Markdown,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    public static IEnumerable<string> Names => Pages.Keys.Order(StringComparer.Ordinal);

    /// <summary>The page of that name, as Markdown; null when there is none.</summary>
    public static string? Find(string name) => Pages.GetValueOrDefault(name)?.Invoke();
}
