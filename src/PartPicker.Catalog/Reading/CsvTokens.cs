using System.Text.RegularExpressions;
using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>Takes a CSV cell apart into the texts that <see cref="FieldReader"/> reads.</summary>
/// <remarks>
/// Entries are parted by semicolons, the two numbers of a point by a colon, the curves of a list by upright
/// strokes, the name of such a curve from its points by an equals sign. What does not have its form comes out
/// without a key or without parts.
/// </remarks>
internal static partial class CsvTokens
{
    public static WrittenValue Take(Field field, string? unit, string cell)
    {
        var whole = new Token(null, cell, field.Name);
        return field.Shape switch
        {
            FieldShape.Quantities => new(whole, Entries(whole, ';', e => e), unit),
            FieldShape.Curve or FieldShape.Holes => new(whole, Entries(whole, ';', Pair)),
            FieldShape.NamedCurves => new(whole, Entries(whole, '|', Curve)),
            FieldShape.ClutchFits => new(whole, Entries(whole, ';', e => Members(e, ClutchFit()))),
            FieldShape.KitLines => new(whole, Entries(whole, ';', e => Members(e, KitLine()))),
            _ => WrittenValue.Of(whole, unit),
        };
    }

    private static Token[] Entries(Token list, char parting, Func<Token, Token> take) =>
        [.. list.Text.Split(parting, StringSplitOptions.TrimEntries).Select(e => take(new(null, e, list.Place)))];

    private static Token Pair(Token entry) =>
        entry.Text.Split(':', StringSplitOptions.TrimEntries) is [var key, var value]
            ? new Token(key, value, entry.Place)
            : entry;

    private static Token Curve(Token entry)
    {
        if (entry.Text.Split('=', StringSplitOptions.TrimEntries) is not [var name, var points])
            return entry;
        var named = new Token(name, points, entry.Place);
        return named with { Parts = Entries(named, ';', Pair) };
    }

    /// <summary>The groups of the form have the names of the members.</summary>
    private static Token Members(Token entry, Regex form) => entry with
    {
        Parts =
        [
            .. form.Match(entry.Text).Groups.Values
                .Where(g => g is { Success: true, Name: not "0" })
                .Select(g => new Token(g.Name, g.Value, entry.Place)),
        ],
    };

    [GeneratedRegex(
        $@"^(?<{EntryMembers.Clutch}>\S+)"
        + $@"( +(?<{EntryMembers.FromYear}>[0-9]+)?-(?<{EntryMembers.ToYear}>[0-9]+)?)?$",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant)]
    private static partial Regex ClutchFit();

    [GeneratedRegex(
        $@"^(?<{EntryMembers.Part}>\S+)( +x(?<{EntryMembers.Packs}>[0-9]+))?$",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant)]
    private static partial Regex KitLine();
}
