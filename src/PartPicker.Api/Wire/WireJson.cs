using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace PartPicker.Api.Wire;

/// <summary>How wire records become bytes: one way, so that equal answers have equal bytes.</summary>
/// <remarks>
/// Members stand in the order of their declaration. Units such as "N·m" stay readable; the media type says
/// that the bytes are JSON, so nothing in them is markup.
/// </remarks>
internal static class WireJson
{
    public const string MediaType = "application/json";

    /// <summary>One JSON text on each line.</summary>
    public const string LinesMediaType = "application/x-ndjson";

    public static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        NumberHandling = JsonNumberHandling.Strict,
        TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { LeaveOutWhatARequestDoesNotState } },
    };

    public static byte[] Bytes<T>(T wire) => JsonSerializer.SerializeToUtf8Bytes(wire, Options);

    /// <summary>An enum value as it stands on the wire.</summary>
    public static string Word<T>(T value) where T : struct, Enum => Word((Enum)value);

    /// <inheritdoc cref="Word{T}(T)"/>
    public static string Word(Enum value) => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());

    private static void LeaveOutWhatARequestDoesNotState(JsonTypeInfo type)
    {
        if (!typeof(IRequestWire).IsAssignableFrom(type.Type))
            return;
        foreach (JsonPropertyInfo member in type.Properties)
            member.ShouldSerialize = (_, value) => value is not null;
    }
}
