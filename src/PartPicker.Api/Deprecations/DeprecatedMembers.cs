using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Deprecations;

/// <summary>Finds deprecated members, led by the wire record that a JSON text is read into or was written from.</summary>
internal static class DeprecatedMembers
{
    /// <summary>Those that stand in a text.</summary>
    public static IEnumerable<Deprecation> In(JsonElement json, Type wire, DeprecationTable table)
    {
        JsonTypeInfo type = WireJson.Options.GetTypeInfo(wire);
        return (json.ValueKind, type.Kind) switch
        {
            (JsonValueKind.Array, JsonTypeInfoKind.Enumerable) => json.EnumerateArray().SelectMany(item => In(item, type.ElementType!, table)),
            (JsonValueKind.Object, JsonTypeInfoKind.Dictionary) => json.EnumerateObject().SelectMany(item => In(item.Value, type.ElementType!, table)),
            (JsonValueKind.Object, JsonTypeInfoKind.Object) => json.EnumerateObject()
                .Join(type.Properties, sent => sent.Name, known => known.Name, (sent, known) => (sent, known))
                .SelectMany(member => In(member.sent.Value, member.known.PropertyType, table)
                    .Concat(Row(table, type.Type, member.known.Name))),
            _ => [],
        };
    }

    /// <summary>Those that may stand in a text of that record.</summary>
    public static IEnumerable<Deprecation> Of(Type wire, DeprecationTable table) => Of(wire, table, []);

    private static IEnumerable<Deprecation> Of(Type wire, DeprecationTable table, HashSet<Type> seen)
    {
        JsonTypeInfo type = WireJson.Options.GetTypeInfo(wire);
        if (!seen.Add(wire))
            return [];
        return type.ElementType is { } element
            ? Of(element, table, seen)
            : type.Properties.SelectMany(member => Of(member.PropertyType, table, seen).Concat(Row(table, wire, member.Name)));
    }

    private static Deprecation[] Row(DeprecationTable table, Type record, string name) =>
        table.Member(record, name) is { } row ? [row] : [];
}
