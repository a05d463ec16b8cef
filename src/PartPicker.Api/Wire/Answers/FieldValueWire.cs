using System.Text.Json;
using System.Text.Json.Serialization;

namespace PartPicker.Api.Wire;

/// <summary>
/// A value of a catalog item: a quantity, a bare number, a text, a curve, a list of quantities or a list of
/// holes, whichever the field holds.
/// </summary>
/// <param name="Value">A double, a string, a quantity, a curve, or an array of quantities or of holes.</param>
[JsonConverter(typeof(Converter))]
internal sealed record FieldValueWire(object Value)
{
    /// <summary>Writes the value itself; answers are only ever written.</summary>
    internal sealed class Converter : JsonConverter<FieldValueWire>
    {
        public override FieldValueWire Read(
            ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new NotSupportedException("Field values are written, not read.");

        public override void Write(Utf8JsonWriter writer, FieldValueWire value, JsonSerializerOptions options) =>
            JsonSerializer.Serialize(writer, value.Value, value.Value.GetType(), options);
    }
}
