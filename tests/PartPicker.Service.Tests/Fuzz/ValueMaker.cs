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

    private static readonly string[] Steps = ["from", "to", "step", "unit"];
    private static readonly string[][] Runs = [["shiftRpm", "shiftCurve"]];
    private static readonly string[][] Wishes =
    [
        ["engagementRpm", "engagementRpm", "engagementChangeRpm"],
        ["shiftRpm", "shiftRpm", "shiftCurve", "speedCurve", "peakPower", "shiftChangeRpm"],
    ];

    /// <summary>A value for a member of that name, as JSON text: JSON nodes could not hold every number.</summary>
    public string Make(JsonNode schema, string member)
    {
        JsonObject shape = api.Resolved(schema);
        if (shape["oneOf"] is not null)
            return member is "id" ? Scalar() : Quantity(member);
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
        // Of some members one alone can hold: the wishes of a target, the ways to state a run or an axis.
        string[][] groups = properties.ContainsKey("peakPower") ? Wishes : properties.ContainsKey("solveFriction") ? Runs : [];
        string[] left = [];
        if (random.Next(30) > 0)
        {
            string[] chosen = [.. groups.Select(group => Pools.Pick(random, group))];
            required = [.. required, .. chosen];
            left = [.. groups.SelectMany(group => group).Except(chosen)];
        }

        if (properties.ContainsKey("step"))
            left = random.Next(2) == 0 ? Steps : ["values"];
        if (properties.ContainsKey("engagement") && random.Next(6) > 0)
        {
            int share = random.Next(0, 101);
            return $$"""{ "engagement": {{share}}e-2, "shift": {{100 - share}}e-2 }"""; // Together 1.
        }

        IEnumerable<string> members = properties
            .Where(property => !left.Contains(property.Key)
                && (required.Contains(property.Key) || IsSent(property.Key, properties.Count)))
            .Select(property => $"{JsonSerializer.Serialize(property.Key)}: {Make(property.Value!, property.Key)}");
        return $"{{ {string.Join(", ", members)} }}";
    }

    private bool IsSent(string member, int siblings) => member switch
    {
        // Left out, they would make the answer large or the search long.
        "workLimit" or "count" or "refusals" => true,
        "engagementRpm" or "shiftRpm" or "rpm" or "from" or "to" or "step" or "values" => true,
        "ratioPoints" => random.Next(3) > 0,
        // These seldom go together with what else there is.
        "stationMasses" or "adjusterStep" or "hole" or "shims" or "baseline" or "fitted" or "solveFriction" => random.Next(10) == 0,
        "launchMarginRpm" or "inStockOnly" or "priceCeilingMinor" or "anchor" or "airLaw" or "shim" => random.Next(15) == 0,
        _ => random.Next(siblings) < 4,
    };

    private string List(JsonObject shape, string member)
    {
        int least = (int?)shape["minItems"] ?? 0;
        int count = random.Next(least, Math.Min((int)shape["maxItems"]!, MostItems) + 1);
        return $"[{string.Join(", ", Enumerable.Range(0, count).Select(_ => Make(shape["items"]!, member)))}]";
    }

    private string Quantity(string member)
    {
        string text = Pools.Quantity(random, member);
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
        1 => JsonSerializer.Serialize(Pools.Quantity(random, "")),
        _ => "0.5",
    };
}
