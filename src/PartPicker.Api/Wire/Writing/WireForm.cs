using System.Text.Json.Serialization.Metadata;

namespace PartPicker.Api.Wire;

/// <summary>What a wire record is made of, in words: another member anywhere in it gives other words.</summary>
internal static class WireForm
{
    public static string Of(Type type) => Of(WireJson.Options.GetTypeInfo(type), []);

    private static string Of(JsonTypeInfo type, HashSet<Type> told) => type switch
    {
        { Kind: not JsonTypeInfoKind.None, ElementType: { } element } => $"[{Of(WireJson.Options.GetTypeInfo(element), told)}]",
        { Kind: JsonTypeInfoKind.Object } when told.Add(type.Type) => $"{{{string.Join(',', type.Properties.Select(
            member => $"{member.Name}:{Of(WireJson.Options.GetTypeInfo(member.PropertyType), told)}"))}}}",
        _ => (Nullable.GetUnderlyingType(type.Type) ?? type.Type).Name,
    };
}
