using System.Text.Json.Nodes;

namespace PartPicker.Service.Tests.Picks;

/// <summary>Compares two answers that differ in nothing but the units of their quantities.</summary>
/// <remarks>
/// The factors are written down here anew, from their definitions: the international inch and pound (1959), standard
/// gravity, the mechanical horsepower of 550 ft·lbf/s.
/// </remarks>
internal static class UnitsApart
{
    private const double Inch = 0.0254;
    private const double Foot = 12 * Inch;
    private const double Pound = 0.45359237;
    private const double PoundForce = Pound * 9.80665;
    private const double Degree = Math.PI / 180;
    private const double Tolerance = 1e-9;

    private static readonly Dictionary<string, Func<double, double>> ToSi = new()
    {
        [""] = v => v,
        ["mm"] = v => v / 1000,
        ["in"] = v => v * Inch,
        ["m"] = v => v,
        ["ft"] = v => v * Foot,
        ["N"] = v => v,
        ["lbf"] = v => v * PoundForce,
        ["N/mm"] = v => v * 1000,
        ["lbf/in"] = v => v * PoundForce / Inch,
        ["N·m"] = v => v,
        ["lbf·ft"] = v => v * PoundForce * Foot,
        ["N·mm/°"] = v => v / 1000 / Degree,
        ["lbf·in/°"] = v => v * PoundForce * Inch / Degree,
        ["g"] = v => v / 1000,
        ["kg"] = v => v,
        ["oz"] = v => v * Pound / 16,
        ["kW"] = v => v * 1000,
        ["hp"] = v => v * 550 * PoundForce * Foot,
        ["°C"] = v => v + 273.15,
        ["°F"] = v => ((v - 32) / 1.8) + 273.15,
        ["K"] = v => v,
        ["m/s"] = v => v,
        ["km/h"] = v => v / 3.6,
        ["mph"] = v => v * 5280 * Foot / 3600,
        ["rpm"] = v => v,
        ["deg"] = v => v,
        ["tolerances"] = v => v,
    };

    // What says in which units the answer is written, and what is made of that.
    private static readonly string[] Apart = ["units", "id"];

    /// <summary>Where the two first differ; null when they say the same.</summary>
    public static string? FirstDifference(JsonNode? a, JsonNode? b, string at = "")
    {
        switch (a, b)
        {
            case (JsonObject x, JsonObject y) when x.Count == y.Count:
                bool quantity = x["value"] is JsonValue && x["unit"] is JsonValue;
                if (quantity && !Same(Si(x), Si(y)))
                    return $"{at}: {x.ToJsonString()} and {y.ToJsonString()}";
                return x.Where(member => !Skipped(member.Key, quantity, at))
                    .Select(member => FirstDifference(member.Value, y[member.Key], $"{at}/{member.Key}"))
                    .FirstOrDefault(difference => difference is not null);
            case (JsonArray x, JsonArray y) when x.Count == y.Count:
                return x.Zip(y).Select((pair, i) => FirstDifference(pair.First, pair.Second, $"{at}/{i}"))
                    .FirstOrDefault(difference => difference is not null);
            default:
                return JsonNode.DeepEquals(a, b) ? null : $"{at}: {a?.ToJsonString()} and {b?.ToJsonString()}";
        }
    }

    private static bool Skipped(string member, bool quantity, string at) =>
        quantity ? member is "value" or "unit" : at.Length == 0 && Apart.Contains(member);

    private static double Si(JsonObject quantity) => ToSi[(string)quantity["unit"]!]((double)quantity["value"]!);

    private static bool Same(double a, double b) => Math.Abs(a - b) <= Tolerance * Math.Max(Math.Abs(a), 1e-6);
}
