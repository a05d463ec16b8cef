using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace PartPicker.Service.Tests.Docs;

/// <summary>JSON for a person: an object or array that fits on its line stays on one.</summary>
public static class ReadableJson
{
    private const int Width = 200;
    private const int Indent = 2;

    private static readonly JsonSerializerOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Write(JsonNode node)
    {
        var text = new StringBuilder();
        Write(node, text, indent: 0, used: 0);
        return text.Append('\n').ToString();
    }

    private static void Write(JsonNode? node, StringBuilder text, int indent, int used)
    {
        string flat = Flat(node);
        if (used + flat.Length <= Width || node is not (JsonObject { Count: > 0 } or JsonArray { Count: > 0 }))
        {
            text.Append(flat);
            return;
        }

        (char open, char close) = node is JsonObject ? ('{', '}') : ('[', ']');
        text.Append(open);
        string separator = "\n";
        foreach ((string name, JsonNode? value) in Members(node))
        {
            text.Append(separator).Append(' ', indent + Indent).Append(name);
            Write(value, text, indent + Indent, indent + Indent + name.Length + 1);
            separator = ",\n";
        }

        text.Append('\n').Append(' ', indent).Append(close);
    }

    private static string Flat(JsonNode? node) => node switch
    {
        JsonObject { Count: > 0 } => $"{{ {string.Join(", ", Members(node).Select(m => m.Name + Flat(m.Value)))} }}",
        JsonArray => $"[{string.Join(", ", Members(node).Select(m => Flat(m.Value)))}]",
        null => "null",
        _ => node.ToJsonString(Options),
    };

    private static IEnumerable<(string Name, JsonNode? Value)> Members(JsonNode node) => node is JsonObject members
        ? members.Select(m => (JsonSerializer.Serialize(m.Key, Options) + ": ", m.Value))
        : ((JsonArray)node).Select(value => ("", value));
}
