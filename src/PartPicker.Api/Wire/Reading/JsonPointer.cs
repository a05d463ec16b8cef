using System.Globalization;
using System.Text.Json;

namespace PartPicker.Api.Wire;

/// <summary>Writes and follows JSON pointers (RFC 6901).</summary>
internal static class JsonPointer
{
    public static string Member(string parent, string name) =>
        $"{parent}/{name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal)}";

    public static string Item(string parent, int index) => $"{parent}/{index}";

    /// <summary>The names and indices that a pointer leads along.</summary>
    public static string[] Steps(string pointer) =>
    [
        .. pointer.Split('/').Skip(1).Select(step =>
            step.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal)),
    ];

    /// <summary>The place in an array that a step names; null where it names none.</summary>
    public static int? Index(string step) =>
        int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out int index) && (index == 0 ? step == "0" : step[0] != '0')
            ? index
            : null;

    /// <summary>The value at that place; null where there is none.</summary>
    public static JsonElement? Find(JsonElement root, string pointer)
    {
        JsonElement at = root;
        foreach (string name in Steps(pointer))
        {
            if (at.ValueKind == JsonValueKind.Object && at.TryGetProperty(name, out JsonElement member))
                at = member;
            else if (at.ValueKind == JsonValueKind.Array && Index(name) is { } index && index < at.GetArrayLength())
                at = at[index];
            else
                return null;
        }

        return at;
    }
}
