using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using PartPicker.Service.Tests.Contract;

namespace PartPicker.Service.Tests.Fuzz;

/// <summary>Makes JSON that a schema of the API document allows.</summary>
/// <param name="api">The document.</param>
/// <param name="pools">What texts mean something.</param>
/// <param name="random">Where chance comes from.</param>
internal sealed class ValueMaker(ApiFile api, Pools pools, Random random)
{
    // Answers of a few parts and of little work, so that many requests can be tried.
    private const int MostWork = 60;
    private const int MostCount = 3;
    private const int MostItems = 3;
    private const int MostPoints = 8;

    /// <summary>A value for a member of that name, as JSON text: JSON nodes could not hold every number.</summary>
    public string Make(JsonNode schema, string member)
    {
        JsonObject shape = api.Resolved(schema);
        if (shape["oneOf"]?.AsArray() is { } several)
            return member is "id" ? Scalar() : QuantityOr(several);
        return (string?)shape["type"] switch
        {
            "object" => Object(shape),
            "array" => List(shape, member),
            "boolean" => shape["enum"] is null && random.Next(2) == 0 ? "false" : "true",
            "integer" or "number" => Number(shape, member),
            "string" => Text(shape, member),
            _ => Scalar(),
        };
    }

    private string Object(JsonObject shape)
    {
        string[] required = [.. (shape["required"]?.AsArray() ?? []).Select(name => (string)name!)];
        JsonObject properties = shape["properties"]!.AsObject();
        // The wishes of a target exclude each other, and so do the two ways to state an axis.
        HashSet<string> left = properties.ContainsKey("peakPower") ? Chosen(["engagementRpm", "engagementChangeRpm"],
                ["shiftRpm", "shiftCurve", "speedCurve", "peakPower", "shiftChangeRpm"])
            : properties.ContainsKey("solveFriction") ? Chosen(["shiftRpm", "shiftCurve"])
            : properties.ContainsKey("step") ? (random.Next(2) == 0 ? ["from", "to", "step", "unit"] : ["values"])
            : [];
        IEnumerable<string> members = properties
            .Where(property => !left.Contains(property.Key)
                && (required.Contains(property.Key) || IsSent(property.Key, properties.Count)))
            .Select(property => $"{JsonSerializer.Serialize(property.Key)}: {Make(property.Value!, property.Key)}");
        return $"{{ {string.Join(", ", members)} }}";
    }

    // All but one of each group are left out; now and then none is.
    private HashSet<string> Chosen(params string[][] groups) => random.Next(30) == 0
        ? []
        : [.. groups.SelectMany(group => group.Where(name => name != Pools.Pick(random, group)).Take(group.Length - 1))];

    private bool IsSent(string member, int siblings) => member switch
    {
        // Left out, they would make the answer large or the search long.
        "workLimit" or "count" or "refusals" => true,
        "engagementRpm" or "shiftRpm" or "from" or "to" or "step" or "values" => true,
        "ratioPoints" => random.Next(3) > 0,
        _ => random.Next(siblings) < 4,
    };

    private string List(JsonObject shape, string member)
    {
        int least = (int?)shape["minItems"] ?? 0;
        int count = random.Next(least, Math.Min((int)shape["maxItems"]!, MostItems) + 1);
        return $"[{string.Join(", ", Enumerable.Range(0, count).Select(_ => Make(shape["items"]!, member)))}]";
    }

    private string QuantityOr(JsonArray several)
    {
        string text = Pools.Quantity(random);
        string[] words = text.Split(' ');
        return random.Next(4) == 0 && words.Length == 2 && double.TryParse(words[0], CultureInfo.InvariantCulture, out _)
            ? $$"""{ "value": {{words[0].TrimStart('+')}}, "unit": {{JsonSerializer.Serialize(words[1])}} }"""
            : JsonSerializer.Serialize(text);
    }

    private string Number(JsonObject shape, string member)
    {
        double least = (double?)shape["minimum"] ?? -1e6;
        double most = (double?)shape["maximum"] ?? 1e6;
        most = member switch
        {
            "workLimit" => MostWork,
            "count" => Math.Min(most, MostCount),
            "refusals" => MostItems,
            _ => most,
        };
        (double low, double high) = (member, random.Next(8)) switch
        {
            (_, 0) => (least, most), // Anywhere.
            ("engagementRpm", _) => (1_500, 4_000),
            ("shiftRpm" or "rpm", _) => (5_500, 9_000),
            ("ratio", _) => (0.7, 3.5),
            ("ratioPoints", _) => (3, MostPoints),
            ("from", _) => (0, 100),
            ("to", _) => (100, 300),
            ("step", _) => (60, 300),
            _ => (least, most),
        };
        if ((string?)shape["type"] == "integer")
            return $"{random.NextInt64((long)low, (long)high + 1)}";
        return random.Next(6) == 0
            ? Pools.Pick(random, [low, high]).ToString("R", CultureInfo.InvariantCulture)
            : (low + random.NextDouble() * (high - low)).ToString("R", CultureInfo.InvariantCulture);
    }

    private string Text(JsonObject shape, string member) => JsonSerializer.Serialize(
        shape["enum"] is JsonArray words ? (string)Pools.Pick(random, [.. words])! : pools.Text(random, member));

    private string Scalar() => random.Next(3) switch
    {
        0 => $"{random.Next(10_000)}",
        1 => JsonSerializer.Serialize(Pools.Quantity(random)),
        _ => "0.5",
    };
}
