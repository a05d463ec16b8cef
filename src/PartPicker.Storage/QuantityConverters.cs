using System.Text.Json;
using System.Text.Json.Serialization;
using UnitsNet;

namespace PartPicker.Storage;

/// <summary>Writes a quantity as its bare SI number and builds it back in SI.</summary>
/// <remarks>
/// A closed list: a quantity that is not here is refused, since the serializer would otherwise read it back as
/// zero without a word.
/// </remarks>
internal sealed class QuantityConverters : JsonConverterFactory
{
    private static readonly Dictionary<Type, JsonConverter> Known = new()
    {
        [typeof(Length)] = new SiNumber<Length>(q => q.Meters, v => Length.FromMeters(v)),
        [typeof(Mass)] = new SiNumber<Mass>(q => q.Kilograms, v => Mass.FromKilograms(v)),
        [typeof(Force)] = new SiNumber<Force>(q => q.Newtons, v => Force.FromNewtons(v)),
        [typeof(Torque)] = new SiNumber<Torque>(q => q.NewtonMeters, v => Torque.FromNewtonMeters(v)),
        [typeof(Power)] = new SiNumber<Power>(q => (double)q.Watts, v => Power.FromWatts(v)),
        [typeof(ForcePerLength)] = new SiNumber<ForcePerLength>(
            q => q.NewtonsPerMeter, v => ForcePerLength.FromNewtonsPerMeter(v)),
        [typeof(RotationalStiffness)] = new SiNumber<RotationalStiffness>(
            q => q.NewtonMetersPerRadian, v => RotationalStiffness.FromNewtonMetersPerRadian(v)),
        [typeof(LinearDensity)] = new SiNumber<LinearDensity>(
            q => q.KilogramsPerMeter, v => LinearDensity.FromKilogramsPerMeter(v)),
    };

    public override bool CanConvert(Type typeToConvert) =>
        typeToConvert.IsValueType && typeof(IQuantity).IsAssignableFrom(typeToConvert);

    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
        Known.GetValueOrDefault(typeToConvert)
        ?? throw new NotSupportedException($"No SI unit is chosen yet for storing {typeToConvert.Name}.");

    private sealed class SiNumber<T>(Func<T, double> write, Func<double, T> read) : JsonConverter<T>
        where T : struct
    {
        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            read(reader.GetDouble());

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
            writer.WriteNumberValue(write(value));
    }
}
