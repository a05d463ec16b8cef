using System.Text.Json;
using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>Takes a JSON value apart into the texts that <see cref="FieldReader"/> reads.</summary>
internal static class JsonTokens
{
    private const string Pairs = "A list of pairs [x, y]";
    private const string Twists = "An object of twist in degrees by the name of the hole";

    /// <summary>Null when the value does not have the form of its field.</summary>
    public static WrittenValue? Take(JsonSource source, Field field, JsonValue value)
    {
        var whole = new Token(null, value.Written, value.Pointer);
        List<Token?> tokens = field.Shape switch
        {
            FieldShape.Curve => source.Is(value, JsonValueKind.Array, Pairs)
                ? [.. value.Entries().Select(point => Point(source, field, point))]
                : [null],
            FieldShape.Quantities => source.Is(value, JsonValueKind.Array, "A list of texts")
                ? [.. value.Entries().Select(entry => Leaf(source, entry, hasUnit: true))]
                : [null],
            FieldShape.Holes => source.Is(value, JsonValueKind.Object, Twists)
                ? [.. source.Members(value, Twists).Select(h => Leaf(source, h.Value, hasUnit: false, h.Name))]
                : [null],
            FieldShape.Quantity => [Leaf(source, value, hasUnit: true)],
            FieldShape.Number or FieldShape.Count => [Leaf(source, value, hasUnit: false)],
            _ => [source.Is(value, JsonValueKind.String, "A text") ? whole : null],
        };
        return tokens.Contains(null) ? null : new WrittenValue(whole, [.. tokens.Select(t => t!.Value)]);
    }

    /// <summary>A quantity is a text, with its unit in it; a number whose name tells the unit is bare.</summary>
    public static Token? Leaf(JsonSource source, JsonValue value, bool hasUnit, string? key = null)
    {
        bool right = hasUnit
            ? source.Is(value, JsonValueKind.String, "A text with a number and its unit, such as \"3 mm\",")
            : source.Is(value, JsonValueKind.Number, "A bare number without quotes or unit");
        return right ? new Token(key, value.Written, value.Pointer) : null;
    }

    private static Token? Point(JsonSource source, Field field, JsonValue point)
    {
        if (!source.Is(point, JsonValueKind.Array, "A pair [x, y]"))
            return null;
        JsonValue[] pair = [.. point.Entries()];
        if (pair.Length != 2)
        {
            source.Refuse(point, new(FindingCodes.BadPoint, "A point is a pair [x, y]."));
            return null;
        }

        Token? x = Leaf(source, pair[0], hasUnit: field.XDimension is not null);
        Token? y = Leaf(source, pair[1], hasUnit: field.Dimension is not null);
        return x is null || y is null ? null : new Token(x.Value.Text, y.Value.Text, point.Pointer);
    }
}
