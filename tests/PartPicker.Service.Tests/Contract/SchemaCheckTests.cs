using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit;

namespace PartPicker.Service.Tests.Contract;

public sealed class SchemaCheckTests
{
    private static readonly SchemaCheck Check = new(ApiFile.Parse("""
        {
          "paths": {},
          "components": { "schemas": { "Leaf": { "type": "object", "properties": { "leaf": { "$ref": "#/components/schemas/Leaf" } } } } }
        }
        """));

    [Theory]
    [InlineData("""{ "type": "integer" }""", "[2, -3, 2.0, 1e2]", """[2.5, "2", null, true]""")]
    [InlineData("""{ "type": "number" }""", "[2, 2.5]", """["2"]""")]
    [InlineData("""{ "type": ["string", "null"] }""", """["", null]""", "[0, [], {}]")]
    [InlineData("""{ "enum": ["a", 1] }""", """["a", 1]""", """["A", "1", null]""")]
    [InlineData("""{ "minimum": 2, "maximum": 3 }""", """[2, 3, "9"]""", "[1.999, 3.001]")]
    [InlineData("""{ "minLength": 1, "maxLength": 2 }""", """["a", "😀😀", 9]""", """["", "abc"]""")]
    [InlineData("""{ "pattern": "^/" }""", """["/a"]""", """["a"]""")]
    [InlineData("""{ "type": "array", "minItems": 1, "maxItems": 2, "items": { "type": "number" } }""", "[[1], [1, 2]]", """[[], [1, 2, 3], ["a"]]""")]
    [InlineData("""{ "required": ["a"] }""", """[{ "a": null }]""", """[{}, { "A": 1 }]""")]
    [InlineData("""{ "properties": { "a": { "type": "number" } }, "additionalProperties": false }""", """[{}, { "a": 1 }]""", """[{ "a": "" }, { "b": 1 }]""")]
    [InlineData("""{ "additionalProperties": { "type": "number" } }""", """[{ "a": 1 }]""", """[{ "a": "" }]""")]
    [InlineData("""{ "anyOf": [{ "type": "number" }, { "minimum": 3 }] }""", """[1, "a"]""", "[]")]
    [InlineData("""{ "oneOf": [{ "type": "number" }, { "type": "string" }] }""", """[1, "a"]""", "[null]")]
    [InlineData("""{ "oneOf": [{ "type": "number" }, { "minimum": 3 }] }""", "[1]", "[4]")]
    [InlineData("""{ "$ref": "#/components/schemas/Leaf" }""", """[{ "leaf": { "leaf": {} } }]""", """[{ "leaf": { "leaf": 1 } }]""")]
    public void Values_are_told_from_one_another(string schema, string right, string wrong)
    {
        foreach (JsonNode? value in JsonNode.Parse(right)!.AsArray())
            Assert.Empty(Faults(schema, value));
        foreach (JsonNode? value in JsonNode.Parse(wrong)!.AsArray())
            Assert.NotEmpty(Faults(schema, value));
    }

    [Fact]
    public void A_keyword_that_it_does_not_know_is_refused() =>
        Assert.Throws<NotSupportedException>(() => Faults("""{ "uniqueItems": true }""", new JsonArray()));

    private static IReadOnlyList<string> Faults(string schema, JsonNode? value) =>
        Check.Faults(JsonNode.Parse(schema)!, JsonSerializer.SerializeToElement(value));
}
