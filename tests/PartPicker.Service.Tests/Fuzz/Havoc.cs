using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace PartPicker.Service.Tests.Fuzz;

/// <summary>Spoils JSON a little, or wholly.</summary>
internal sealed class Havoc(Random random)
{
    private static readonly string[] Values =
    [
        "null", "true", "[]", "{}", "\"\"", "\"x\"", "0", "-1", "1e400", "-1e400", "1e-400", "-0", "0.1", "99999999999999999999", "NaN",
        "Infinity", "01", "+1", "1.", ".5", "0x10", "\"\\ud800\"", "\"\\u0000\"", "\"\\x\"", "'x'", "[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]",
        "{ \"a\": 1, \"a\": 2 }", "[1, 2, 3]", "\"7 m\"", "{ \"value\": 7, \"unit\": \"m\" }", "{ \"value\": \"7\", \"unit\": 3 }",
        new('9', 4_000), "1e" + new string('9', 400), "\"" + new string('x', 5_000) + "\"",
    ];

    private static readonly string[] Members = ["refuse", "machine", "Machine", "", "/", "~", "\\u0061", "__proto__", "targets", "workLimit", "é"];

    /// <summary>The same JSON with one thing wrong, or with nothing wrong but unusual.</summary>
    public string Spoil(string json)
    {
        try
        {
            JsonNode root = JsonNode.Parse(json)!;
            List<JsonNode> holders = [];
            Gather(root, holders);
            JsonNode holder = Pools.Pick(random, holders);
            string put = $"\"@{random.Next()}@\"";
            switch (holder)
            {
                case JsonObject members when members.Count > 0 && random.Next(3) == 0:
                    members.Remove(Pools.Pick(random, [.. members]).Key);
                    return root.ToJsonString();
                case JsonObject members when members.Count > 0 && random.Next(2) == 0:
                    members[Pools.Pick(random, [.. members]).Key] = JsonNode.Parse(put);
                    break;
                case JsonObject members:
                    members[Pools.Pick(random, Members)] = JsonNode.Parse(put);
                    break;
                case JsonArray items when items.Count > 0 && random.Next(2) == 0:
                    items[random.Next(items.Count)] = JsonNode.Parse(put);
                    break;
                case JsonArray items:
                    items.Add(JsonNode.Parse(put));
                    break;
            }

            return root.ToJsonString().Replace(put, Pools.Pick(random, Values), StringComparison.Ordinal);
        }
        catch (Exception notJson) when (notJson is JsonException or InvalidOperationException or ArgumentException)
        {
            return json;
        }
    }

    /// <summary>The bytes with something wrong with them.</summary>
    public byte[] Break(byte[] bytes)
    {
        byte[] broken = [.. bytes];
        switch (random.Next(9))
        {
            case 0 when broken.Length > 0:
                return broken[..random.Next(broken.Length)];
            case 1 when broken.Length > 0:
                broken[random.Next(broken.Length)] = (byte)random.Next(256);
                return broken;
            case 2:
                return [.. "\uFEFF"u8, .. broken];
            case 3:
                return Encoding.Unicode.GetBytes(Encoding.UTF8.GetString(broken));
            case 4:
                return Encoding.ASCII.GetBytes(new string('[', random.Next(1, 3_000)));
            case 5:
                random.NextBytes(broken);
                return broken;
            case 6:
                return [.. broken, .. broken];
            case 7:
                int at = random.Next(broken.Length + 1);
                return [.. broken[..at], 0xC0, 0xAF, .. broken[at..]];
            default:
                return [];
        }
    }

    private static void Gather(JsonNode? node, List<JsonNode> holders)
    {
        if (node is not (JsonObject or JsonArray))
            return;
        holders.Add(node);
        foreach (JsonNode? inner in node is JsonObject members ? members.Select(m => m.Value) : node.AsArray())
            Gather(inner, holders);
    }
}
