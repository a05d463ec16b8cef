using System.Text.Json;
using PartPicker.Api.Errors;
using PartPicker.Quantities;

namespace PartPicker.Api.Wire;

/// <summary>
/// Reads the members of one JSON object strictly. Faults join a list and reading goes on, so that a caller
/// learns of all of them at once; a member with a fault reads as null.
/// </summary>
internal sealed class ObjectReader
{
    private readonly Dictionary<string, JsonElement> members = new(StringComparer.Ordinal);
    private readonly List<string> asked = [];
    private readonly FaultList faults;

    private ObjectReader(JsonElement element, string pointer, FaultList faults)
    {
        Pointer = pointer;
        this.faults = faults;
        foreach (JsonProperty member in element.EnumerateObject())
        {
            if (!members.TryAdd(member.Name, member.Value))
                faults.Add(ErrorCodes.DuplicateMember, At(member.Name), Shown(member.Value), "this member once");
        }
    }

    /// <summary>Where the object stands in the body.</summary>
    public string Pointer { get; }

    /// <summary>The reader of an object; null, with a fault, for anything else.</summary>
    public static ObjectReader? Open(JsonElement element, string pointer, FaultList faults)
    {
        if (element.ValueKind == JsonValueKind.Object)
            return new ObjectReader(element, pointer, faults);
        faults.Add(ErrorCodes.WrongType, pointer, Shown(element), "an object");
        return null;
    }

    public string At(string name) => JsonPointer.Member(Pointer, name);

    public bool Has(string name) => members.ContainsKey(name);

    /// <summary>Says that a member is missing that another one makes necessary.</summary>
    public void RefuseMissing(string name, string expected) =>
        faults.Add(ErrorCodes.MissingMember, At(name), null, expected);

    /// <summary>To be called last: whatever nobody asked for is a fault.</summary>
    public void RefuseOthers()
    {
        foreach ((string name, JsonElement value) in members.Where(member => !asked.Contains(member.Key)))
        {
            faults.Add(
                ErrorCodes.UnknownMember, At(name), Shown(value),
                $"one of: {string.Join(", ", asked)}{Nearest.Hint(name, asked)}");
        }
    }

    public ObjectReader? Object(string name, string expected, bool required = false) =>
        Take(name, JsonValueKind.Object, expected, required) is { } value
            ? new ObjectReader(value, At(name), faults)
            : null;

    public IReadOnlyList<(JsonElement Element, string Pointer)>? List(string name, int min, int max, string expected)
    {
        if (Take(name, JsonValueKind.Array, expected, required: false) is not { } value)
            return null;
        int length = value.GetArrayLength();
        if (length >= min && length <= max)
            return [.. value.EnumerateArray().Select((item, i) => (item, JsonPointer.Item(At(name), i)))];
        faults.Add(ErrorCodes.OutOfRange, At(name), $"{length} entries", $"{min} to {max} entries");
        return null;
    }

    /// <summary>A member of any type.</summary>
    public JsonElement? Any(string name, string expected, bool required = false) => TakeAny(name, expected, required);

    public string? Text(string name, string expected, bool required = false)
    {
        if (Take(name, JsonValueKind.String, expected, required) is not { } value)
            return null;
        string text = value.GetString()!;
        if (Characters.Count(text) is > 0 and <= RequestLimits.MaxNameLength)
            return text;
        faults.Add(ErrorCodes.OutOfRange, At(name), text, $"1 to {RequestLimits.MaxNameLength} characters");
        return null;
    }

    public bool? Flag(string name)
    {
        if (TakeAny(name, "true or false", required: false) is not { } value)
            return null;
        if (value.ValueKind is JsonValueKind.True or JsonValueKind.False)
            return value.GetBoolean();
        faults.Add(ErrorCodes.WrongType, At(name), Shown(value), "true or false");
        return null;
    }

    public double? Number(string name, double min, double max, bool required = false) =>
        Number(name, min, max, $"a bare number from {min} to {max}", required);

    private double? Number(string name, double min, double max, string expected, bool required)
    {
        if (Take(name, JsonValueKind.Number, expected, required) is not { } value)
            return null;
        // Beyond the range of a double the reader of JSON answers with infinity, which no range includes.
        if (value.TryGetDouble(out double number) && number >= min && number <= max)
            return number + 0.0; // −0 becomes 0.
        faults.Add(ErrorCodes.OutOfRange, At(name), Shown(value), expected);
        return null;
    }

    public int? Count(string name, int min, int max)
    {
        string expected = $"a whole number from {min} to {max}";
        if (Take(name, JsonValueKind.Number, expected, required: false) is not { } value)
            return null;
        if (value.TryGetDouble(out double number) && number >= min && number <= max && double.IsInteger(number))
            return (int)number;
        faults.Add(ErrorCodes.OutOfRange, At(name), Shown(value), expected);
        return null;
    }

    public T? Word<T>(string name) where T : struct, Enum =>
        Take(name, JsonValueKind.String, Words<T>(), required: false) is { } value
            ? WordOf<T>(value, At(name))
            : null;

    public IReadOnlySet<T>? WordSet<T>(string name) where T : struct, Enum
    {
        T[] all = Enum.GetValues<T>();
        if (List(name, 0, all.Length, $"an array; each entry {Words<T>()}") is not { } items)
            return null;
        HashSet<T> set = [];
        foreach ((JsonElement item, string pointer) in items)
        {
            if (item.ValueKind != JsonValueKind.String)
                faults.Add(ErrorCodes.WrongType, pointer, Shown(item), Words<T>());
            else if (WordOf<T>(item, pointer) is { } word)
                set.Add(word);
        }

        return set;
    }

    /// <summary>A quantity in SI, sent as text with its unit or as value and unit.</summary>
    public double? Quantity(string name, QuantityRule rule)
    {
        if (TakeAny(name, rule.Expected, required: false) is not { } value)
            return null;
        QuantityReading reading;
        switch (value.ValueKind)
        {
            case JsonValueKind.String:
                reading = QuantityReader.Read(value.GetString()!, rule.Dimension);
                break;
            case JsonValueKind.Number:
                reading = QuantityReader.Read(value.GetDouble(), unit: "", rule.Dimension);
                break;
            case JsonValueKind.Object when ValueAndUnit(value, At(name)) is var (number, unit):
                reading = QuantityReader.Read(number, unit, rule.Dimension);
                break;
            case JsonValueKind.Object:
                return null;
            default:
                faults.Add(ErrorCodes.WrongType, At(name), Shown(value), rule.Expected);
                return null;
        }

        if (reading.UnitMissing)
            faults.Add(ErrorCodes.UnitNeeded, At(name), Shown(value), rule.WithUnit(value.ToString().Trim()));
        else if (reading.Problem is { } problem)
            faults.Add(ErrorCodes.UnreadableQuantity, At(name), Shown(value), problem);
        else if (rule.Holds(reading.Value))
            return SiDigits.Round(reading.Value);
        else
            faults.Add(ErrorCodes.OutOfRange, At(name), Shown(value), rule.Expected);
        return null;
    }

    private (double Number, string Unit)? ValueAndUnit(JsonElement value, string pointer)
    {
        var inner = new ObjectReader(value, pointer, faults);
        double? number = inner.Number("value", double.MinValue, double.MaxValue, "a bare number", required: true);
        string? unit = inner.Text("unit", "text, as in \"mm\"", required: true);
        inner.RefuseOthers();
        return number is { } n && unit is not null ? (n, unit) : null;
    }

    private T? WordOf<T>(JsonElement text, string pointer) where T : struct, Enum
    {
        string sent = text.GetString()!;
        foreach (T word in Enum.GetValues<T>())
        {
            if (WireJson.Word(word) == sent)
                return word;
        }

        faults.Add(
            ErrorCodes.UnknownWord, pointer, sent,
            Words<T>() + Nearest.Hint(sent, Enum.GetValues<T>().Select(WireJson.Word)));
        return null;
    }

    private static string Words<T>() where T : struct, Enum =>
        $"one of: {string.Join(", ", Enum.GetValues<T>().Select(WireJson.Word))}";

    private JsonElement? Take(string name, JsonValueKind kind, string expected, bool required)
    {
        if (TakeAny(name, expected, required) is not { } value)
            return null;
        if (value.ValueKind == kind)
            return value;
        faults.Add(ErrorCodes.WrongType, At(name), Shown(value), expected);
        return null;
    }

    private JsonElement? TakeAny(string name, string expected, bool required)
    {
        asked.Add(name);
        if (members.TryGetValue(name, out JsonElement value))
            return value;
        if (required)
            RefuseMissing(name, expected);
        return null;
    }

    private static string Shown(JsonElement value) => value.GetRawText();
}
