using System.Buffers;
using System.Security.Cryptography;
using System.Text.Json;
using PartPicker.Parts;

namespace PartPicker.Storage;

/// <summary>Names contents by what they hold: equal contents have equal revisions, in any order of rows.</summary>
internal static class RevisionHash
{
    private const int HexDigits = 12;

    public static string Of(CatalogContents contents)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer))
            WriteCanonical(contents, writer);
        return Convert.ToHexStringLower(SHA256.HashData(buffer.WrittenSpan))[..HexDigits];
    }

    private static void WriteCanonical(CatalogContents contents, Utf8JsonWriter writer)
    {
        writer.WriteStartArray();
        foreach (CatalogItem item in contents.Items
            .OrderBy(i => ItemJson.Word(i.Kind), StringComparer.Ordinal)
            .ThenBy(i => i.Id, StringComparer.Ordinal))
        {
            writer.WriteStringValue(ItemJson.Word(item.Kind));
            writer.WriteRawValue(ItemJson.Write(item));
        }

        foreach (Outlet outlet in contents.Outlets.OrderBy(o => o.Id, StringComparer.Ordinal))
        {
            writer.WriteStartArray();
            writer.WriteStringValue(outlet.Id);
            writer.WriteStringValue(outlet.Currency);
            foreach ((string part, Offer offer) in outlet.Offers.OrderBy(o => o.Key, StringComparer.Ordinal))
                WriteOffer(part, offer, writer);
            writer.WriteEndArray();
        }

        writer.WriteEndArray();
    }

    private static void WriteOffer(string part, Offer offer, Utf8JsonWriter writer)
    {
        writer.WriteStringValue(part);
        JsonSerializer.Serialize(writer, offer.PriceMinor);
        JsonSerializer.Serialize(writer, offer.Stock);
    }
}
