using System.Buffers;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using PartPicker.Parts;

namespace PartPicker.Storage;

/// <summary>Catalog items as JSON: SI numbers, enums as words, members in rising order of name.</summary>
/// <remarks>
/// Members that this program does not know are passed over and absent ones stay unknown, so that a new field
/// needs no migration. The order makes equal items equal bytes, however their dictionaries were filled.
/// </remarks>
internal static class ItemJson
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        // What an item computes from its fields is not kept.
        IgnoreReadOnlyProperties = true,
        Converters = { new QuantityConverters(), new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
    };

    public static string Word(ItemKind kind) => JsonNamingPolicy.CamelCase.ConvertName(kind.ToString());

    public static string Write(CatalogItem item)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer))
            WriteSorted(JsonSerializer.SerializeToElement(item, item.GetType(), Options), writer);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    public static CatalogItem Read(string kind, string json) =>
        (CatalogItem)(JsonSerializer.Deserialize(json, TypeOf(kind), Options)
            ?? throw new StoreException($"A stored {kind} is empty. Restore the file from a back-up."));

    private static Type TypeOf(string kind) =>
        Enum.TryParse(kind, ignoreCase: true, out ItemKind known)
            ? FieldRegistry.Blank(known).GetType()
            : throw new StoreException(
                $"The store holds an item of the unknown kind '{kind}'. Use the program that wrote it.");

    private static void WriteSorted(JsonElement element, Utf8JsonWriter writer)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                writer.WriteStartObject();
                foreach (JsonProperty member in element.EnumerateObject()
                    .OrderBy(m => m.Name, StringComparer.Ordinal))
                {
                    writer.WritePropertyName(member.Name);
                    WriteSorted(member.Value, writer);
                }

                writer.WriteEndObject();
                break;
            case JsonValueKind.Array:
                writer.WriteStartArray();
                foreach (JsonElement entry in element.EnumerateArray())
                    WriteSorted(entry, writer);
                writer.WriteEndArray();
                break;
            default:
                element.WriteTo(writer);
                break;
        }
    }
}
