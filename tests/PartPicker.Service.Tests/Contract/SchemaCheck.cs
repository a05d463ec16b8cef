using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace PartPicker.Service.Tests.Contract;

/// <summary>
/// Holds JSON against the schemas of the API document: the part of JSON Schema 2020-12 that the document uses. A keyword that
/// it does not know is refused, so that none is passed over.
/// </summary>
internal sealed class SchemaCheck(ApiFile api)
{
    // Nothing of these says which values are valid.
    private static readonly string[] Silent = ["description", "format", "default", "example", "examples", "title", "deprecated", "x-growing"];

    /// <summary>What is wrong with a value, each with its place; empty where nothing is.</summary>
    public IReadOnlyList<string> Faults(JsonNode schema, JsonElement value, string pointer = "")
    {
        List<string> faults = [];
        Check(schema.AsObject(), value, pointer, faults);
        return faults;
    }

    private void Check(JsonObject schema, JsonElement value, string pointer, List<string> faults)
    {
        foreach ((string keyword, JsonNode? told) in schema)
        {
            if (Silent.Contains(keyword))
                continue;
            if (WhyNot(schema, keyword, told, value, pointer, faults) is { } why)
                faults.Add($"{pointer}: {why}");
        }
    }

    private string? WhyNot(
        JsonObject schema, string keyword, JsonNode? told, JsonElement value, string pointer, List<string> faults)
    {
        switch (keyword)
        {
            case "$ref":
                Check(api.Resolved(new JsonObject { ["$ref"] = told!.DeepClone() }), value, pointer, faults);
                return null;
            case "type":
                return IsOf(told!, value) ? null : $"{value.ValueKind} is not of type {told!.ToJsonString()}";
            case "enum":
                return told!.AsArray().Any(word => JsonNode.DeepEquals(word, Node(value))) ? null : $"{value} is not one of the words";
            case "anyOf" or "oneOf":
                IReadOnlyList<string>[] each = [.. told!.AsArray().Select(one => Faults(one!, value, pointer))];
                int holding = each.Count(one => one.Count == 0);
                if (holding == 0)
                    return $"none of {keyword} holds; the nearest: {string.Join("; ", each.MinBy(one => one.Count)!)}";
                return keyword == "anyOf" || holding == 1 ? null : $"{holding} of oneOf hold";
            case "properties" or "items" or "additionalProperties":
                Inner(schema, keyword, told!, value, pointer, faults);
                return null;
            case "required":
                return value.ValueKind == JsonValueKind.Object && told!.AsArray().Select(name => (string)name!)
                    .FirstOrDefault(name => !value.TryGetProperty(name, out _)) is { } missing
                    ? $"{missing} is missing"
                    : null;
            case "minimum" or "maximum" or "minLength" or "maxLength" or "minItems" or "maxItems" or "pattern":
                return WithinLimit(keyword, told!, value) ? null : $"breaks {keyword} {told!.ToJsonString()}";
            default:
                throw new NotSupportedException($"The schema at {pointer} has a keyword that is not checked: {keyword}.");
        }
    }

    private void Inner(
        JsonObject schema, string keyword, JsonNode told, JsonElement value, string pointer, List<string> faults)
    {
        if (keyword == "items" && value.ValueKind == JsonValueKind.Array)
        {
            int at = 0;
            foreach (JsonElement item in value.EnumerateArray())
                Check(told.AsObject(), item, $"{pointer}/{at++}", faults);
        }
        else if (keyword != "items" && value.ValueKind == JsonValueKind.Object)
        {
            foreach (JsonProperty member in value.EnumerateObject())
            {
                JsonNode? named = schema["properties"]?[member.Name];
                if (keyword == "properties" && named is not null)
                    Check(named.AsObject(), member.Value, $"{pointer}/{member.Name}", faults);
                else if (keyword == "additionalProperties" && named is null && told is JsonValue flag && !(bool)flag)
                    faults.Add($"{pointer}: {member.Name} is not known");
                else if (keyword == "additionalProperties" && named is null && told is JsonObject each)
                    Check(each, member.Value, $"{pointer}/{member.Name}", faults);
            }
        }
    }

    private static bool WithinLimit(string keyword, JsonNode told, JsonElement value) => (keyword, value.ValueKind) switch
    {
        ("minimum", JsonValueKind.Number) => value.GetDouble() >= (double)told,
        ("maximum", JsonValueKind.Number) => value.GetDouble() <= (double)told,
        ("minLength", JsonValueKind.String) => value.GetString()!.EnumerateRunes().Count() >= (int)told,
        ("maxLength", JsonValueKind.String) => value.GetString()!.EnumerateRunes().Count() <= (int)told,
        ("pattern", JsonValueKind.String) => Regex.IsMatch(value.GetString()!, (string)told!, RegexOptions.ECMAScript),
        ("minItems", JsonValueKind.Array) => value.GetArrayLength() >= (int)told,
        ("maxItems", JsonValueKind.Array) => value.GetArrayLength() <= (int)told,
        _ => true, // A limit says nothing of values of another type.
    };

    private static bool IsOf(JsonNode types, JsonElement value) =>
        (types is JsonArray several ? several.Select(type => (string)type!) : [(string)types!]).Any(type => type switch
        {
            "null" => value.ValueKind == JsonValueKind.Null,
            "string" => value.ValueKind == JsonValueKind.String,
            "object" => value.ValueKind == JsonValueKind.Object,
            "array" => value.ValueKind == JsonValueKind.Array,
            "boolean" => value.ValueKind is JsonValueKind.True or JsonValueKind.False,
            "number" => value.ValueKind == JsonValueKind.Number,
            "integer" => value.ValueKind == JsonValueKind.Number && double.IsInteger(value.GetDouble()),
            _ => throw new NotSupportedException($"No such type: {type}."),
        });

    private static JsonNode? Node(JsonElement value) => JsonNode.Parse(value.GetRawText());
}
