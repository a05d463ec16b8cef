using System.Text.Json;
using System.Text.Json.Nodes;

namespace PartPicker.Api.Wire;

/// <summary>One axis of a grid.</summary>
/// <param name="Member">JSON pointer to the member of the request that it sets.</param>
/// <param name="Values">How many values it has.</param>
/// <param name="Value">The value of that index, made anew each time.</param>
internal sealed record GridAxis(string Member, int Values, Func<int, JsonNode?> Value);

/// <summary>One point of a grid.</summary>
/// <param name="Number">From 1, in the order of the points.</param>
/// <param name="Of">How many points the grid has.</param>
/// <param name="Axes">The values of this point by the pointer of their member.</param>
/// <param name="Request">The base request with these values.</param>
internal sealed record GridPoint(int Number, int Of, JsonObject Axes, JsonElement Request);

/// <summary>A base request, and the axes along which it is asked.</summary>
/// <param name="Base">The request that every point begins with; no member stands in it twice.</param>
/// <param name="Axes">The last one moves fastest.</param>
/// <param name="Count">How many points there are.</param>
internal sealed record Grid(JsonObject Base, IReadOnlyList<GridAxis> Axes, int Count)
{
    /// <summary>Every point, made when it is asked for.</summary>
    public IEnumerable<GridPoint> Points() => Enumerable.Range(0, Count).Select(Point);

    private GridPoint Point(int index)
    {
        var values = new JsonNode?[Axes.Count];
        int rest = index;
        for (int i = Axes.Count - 1; i >= 0; i--)
        {
            (rest, int at) = Math.DivRem(rest, Axes[i].Values);
            values[i] = Axes[i].Value(at);
        }

        JsonNode request = Base.DeepClone();
        JsonObject told = [];
        foreach ((GridAxis axis, JsonNode? value) in Axes.Zip(values))
        {
            told[axis.Member] = value?.DeepClone();
            TrySet(request, axis.Member, value);
        }

        return new GridPoint(index + 1, Count, told, JsonSerializer.SerializeToElement(request));
    }

    /// <summary>
    /// Sets the member at a pointer; objects that are missing on the way are made, places of an array are not.
    /// </summary>
    /// <returns>False where the pointer leads through a value that has no such place.</returns>
    public static bool TrySet(JsonNode root, string pointer, JsonNode? value)
    {
        string[] steps = JsonPointer.Steps(pointer);
        JsonNode? at = root;
        foreach (string step in steps[..^1])
        {
            if (at is JsonObject inner && !inner.ContainsKey(step))
                inner[step] = new JsonObject();
            at = at is JsonArray list ? Item(list, step) is { } index ? list[index] : null
                : (at as JsonObject)?[step];
        }

        if (at is JsonObject members)
            members[steps[^1]] = value;
        else if (at is JsonArray items && Item(items, steps[^1]) is { } index)
            items[index] = value;
        else
            return false;
        return true;
    }

    private static int? Item(JsonArray list, string step) => JsonPointer.Index(step) is { } i && i < list.Count ? i : null;
}
