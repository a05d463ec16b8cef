using System.Text.Json;
using PartPicker.Parts;

namespace PartPicker.Catalog;

/// <summary>Takes a JSON value apart into the texts that <see cref="FieldReader"/> reads.</summary>
internal static class JsonTokens
{
    private const string Curves = "An object of lists of pairs [x, y] by the name of the step";
    private const string Holes =
        "An object of twist in degrees by the name of the hole, or a list of "
        + "{ \"sheave\", \"helix\", \"twistDeg\" },";

    /// <summary>Null when the value does not have the form of its field.</summary>
    public static WrittenValue? Take(JsonSource source, Field field, JsonValue value)
    {
        var whole = new Token(null, value.Written, value.Pointer);
        List<Token?> tokens = field.Shape switch
        {
            FieldShape.Curve => Points(source, field, value),
            FieldShape.NamedCurves => source.Is(value, JsonValueKind.Object, Curves)
                ? [.. source.Members(value, Curves).Select(step => Curve(source, field, step.Name, step.Value))]
                : [null],
            FieldShape.Quantities => source.Is(value, JsonValueKind.Array, "A list of texts")
                ? [.. value.Entries().Select(entry => Leaf(source, entry, hasUnit: true))]
                : [null],
            FieldShape.Holes when value.Kind != JsonValueKind.Array => source.Is(value, JsonValueKind.Object, Holes)
                ? [.. source.Members(value, Holes).Select(h => Leaf(source, h.Value, hasUnit: false, h.Name))]
                : [null],
            FieldShape.Holes or FieldShape.ClutchFits or FieldShape.KitLines =>
                source.Is(value, JsonValueKind.Array, "A list of objects")
                    ? [.. value.Entries().Select(e => Entry(source, EntryMembers.Of(field.Shape), e))]
                    : [null],
            FieldShape.Quantity => [Leaf(source, value, hasUnit: true)],
            FieldShape.Number or FieldShape.Count => [Leaf(source, value, hasUnit: false)],
            _ => [source.Is(value, JsonValueKind.String, "A text") ? whole : null],
        };
        return tokens.Contains(null) ? null : new WrittenValue(whole, [.. tokens.Select(t => t!)]);
    }

    /// <summary>A quantity is a text, with its unit in it; a number whose name tells the unit is bare.</summary>
    public static Token? Leaf(JsonSource source, JsonValue value, bool hasUnit, string? key = null)
    {
        bool right = hasUnit
            ? source.Is(value, JsonValueKind.String, "A text with a number and its unit, such as \"3 mm\",")
            : source.Is(value, JsonValueKind.Number, "A bare number without quotes or unit");
        return right ? new Token(key, value.Written, value.Pointer) : null;
    }

    /// <summary>An object with its members as parts; null when anything of its form was refused.</summary>
    public static Token? Entry(JsonSource source, IReadOnlyList<EntryMember> known, JsonValue entry)
    {
        int before = source.Findings.Count;
        string[] names = [.. known.Select(m => m.Name)];
        string expected = $"An object of {string.Join(", ", names)}";
        Dictionary<string, JsonValue> members = source.Members(entry, expected, names);
        var parts = new List<Token>();
        foreach (EntryMember member in known)
        {
            if (members.TryGetValue(member.Name, out JsonValue value))
            {
                if (source.Is(value, member.Kind, member.Kind == JsonValueKind.Number ? "A bare number" : "A text"))
                    parts.Add(new Token(member.Name, value.Written, value.Pointer));
            }
            else if (member.Required && entry.Kind == JsonValueKind.Object)
            {
                source.RefuseMissing(entry, member.Name, $"{expected} belongs here.");
            }
        }

        return source.Findings.Count == before
            ? new Token(null, entry.Written, entry.Pointer) { Parts = parts }
            : null;
    }

    private static Token? Curve(JsonSource source, Field field, string name, JsonValue value)
    {
        List<Token?> points = Points(source, field, value);
        return points.Contains(null)
            ? null
            : new Token(name, value.Written, value.Pointer) { Parts = [.. points.Select(p => p!)] };
    }

    private static List<Token?> Points(JsonSource source, Field field, JsonValue value) =>
        source.Is(value, JsonValueKind.Array, "A list of pairs [x, y]")
            ? [.. value.Entries().Select(point => Point(source, field, point))]
            : [null];

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
        return x is null || y is null ? null : new Token(x.Text, y.Text, point.Pointer);
    }
}
