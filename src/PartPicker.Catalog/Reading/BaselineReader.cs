using System.Text.Json;
using PartPicker.Parts;
using UnitsNet;

namespace PartPicker.Catalog;

/// <summary>The measured runs of a machine.</summary>
internal sealed class BaselineReader(JsonSource source, PartSetReader sets, PartSet? fitted, bool hasFitted)
{
    private const double MinRatio = 0.1;
    private const double MaxRatio = 10;

    /// <summary>Stands in for a set that is none; the machine is not sound then.</summary>
    private static readonly PartSet Unread = new("", "", new Dictionary<StationName, double>(), "", "", "");

    public const string EngagementRpm = "engagementRpm";

    private static readonly string[] MemberNames =
        ["parts", EngagementRpm, "shiftRpm", "shiftCurve", "altitude", "temperature", "relativeHumidity"];

    public IReadOnlyList<Baseline> ReadAll(JsonValue list)
    {
        if (!source.Is(list, JsonValueKind.Array, "A list of measured runs"))
            return [];
        JsonValue[] entries = [.. list.Entries()];
        if (entries.Length <= ImportLimits.MaxBaselines)
            return [.. entries.Select(Read)];
        source.Refuse(list, new(
            FindingCodes.TooManyPoints,
            $"There are {entries.Length} runs; at most {ImportLimits.MaxBaselines} are taken. Keep the best."));
        return [];
    }

    private Baseline Read(JsonValue value)
    {
        Dictionary<string, JsonValue> members = source.Members(value, "A measured run as an object", MemberNames);
        PartSet parts = Parts(value, members);
        // Whether it may be left out is for the drive clutch to say, which may stand in another file.
        double? engagement = members.TryGetValue(EngagementRpm, out JsonValue rpm)
            ? Number(rpm, Baseline.MinRpm, Baseline.MaxRpm)
            : null;

        bool flat = members.TryGetValue("shiftRpm", out JsonValue shiftRpm);
        bool sloped = members.TryGetValue("shiftCurve", out JsonValue shiftCurve);
        if (flat == sloped && value.Kind == JsonValueKind.Object)
        {
            source.Refuse(flat ? shiftCurve : value, new(
                FindingCodes.EitherOr,
                "Give shiftRpm, where one speed was held, or shiftCurve, where ratios were noted: "
                + "one of the two."));
        }

        return new Baseline(
            parts,
            engagement,
            Shift: sloped ? Curve(shiftCurve) : [],
            FlatShiftRpm: flat ? Number(shiftRpm, Baseline.MinRpm, Baseline.MaxRpm) : null,
            Air: new AirState(
                members.TryGetValue("altitude", out JsonValue altitude)
                    ? Quantity(altitude, Length.Info, AirState.MinAltitudeM, AirState.MaxAltitudeM) : 0,
                members.TryGetValue("temperature", out JsonValue temperature)
                    ? Quantity(temperature, Temperature.Info, AirState.MinTemperatureK, AirState.MaxTemperatureK) : null)
            {
                RelativeHumidity = members.TryGetValue("relativeHumidity", out JsonValue humidity)
                    ? Quantity(humidity, Ratio.Info, AirState.MinRelativeHumidity, AirState.MaxRelativeHumidity) : null,
            });
    }

    private PartSet Parts(JsonValue value, Dictionary<string, JsonValue> members)
    {
        if (members.TryGetValue("parts", out JsonValue own))
            return sets.Read(own) ?? Unread;
        if (!hasFitted && value.Kind == JsonValueKind.Object)
            source.RefuseMissing(value, "parts", "The machine states no fitted set: say what was fitted here.");
        return fitted ?? Unread;
    }

    private List<RatioRpm> Curve(JsonValue list)
    {
        if (!source.Is(list, JsonValueKind.Array, "A list of { \"ratio\", \"rpm\" }"))
            return [];
        JsonValue[] entries = [.. list.Entries()];
        if (entries.Length is 0 or > Field.MaxPoints)
        {
            source.Refuse(list, new(
                entries.Length == 0 ? FindingCodes.TooFewPoints : FindingCodes.TooManyPoints,
                $"There are {entries.Length} points; 1 to {Field.MaxPoints} are needed."));
            return [];
        }

        var points = new List<RatioRpm>();
        foreach (JsonValue entry in entries)
        {
            RatioRpm point = Point(entry);
            if (point.Ratio > 0 && points.Exists(p => p.Ratio == point.Ratio))
                source.Refuse(entry, new(FindingCodes.DuplicateValue, "The ratio stands twice. Keep one."));
            points.Add(point);
        }

        return points;
    }

    private RatioRpm Point(JsonValue entry)
    {
        Dictionary<string, JsonValue> members =
            source.Members(entry, "An object of ratio and rpm", ["ratio", "rpm"]);
        return new RatioRpm(Member("ratio", MinRatio, MaxRatio), Member("rpm", Baseline.MinRpm, Baseline.MaxRpm));

        double Member(string name, double min, double max)
        {
            if (members.TryGetValue(name, out JsonValue value))
                return Number(value, min, max);
            if (entry.Kind == JsonValueKind.Object)
                source.RefuseMissing(entry, name, "A point of a shift curve has a ratio and an rpm.");
            return 0;
        }
    }

    private double Number(JsonValue value, double min, double max)
    {
        if (JsonTokens.Leaf(source, value, hasUnit: false) is not { } token)
            return 0;
        if (ValueReader.Number(token.Text, min, max, out double number) is not { } refusal)
            return number;
        source.Refuse(value, refusal);
        return 0;
    }

    private double Quantity(JsonValue value, QuantityInfo dimension, double min, double max)
    {
        if (JsonTokens.Leaf(source, value, hasUnit: true) is not { } token)
            return 0;
        if (ValueReader.Quantity(token.Text, unit: null, dimension, min, max, out double si) is not { } refusal)
            return si;
        source.Refuse(value, refusal);
        return 0;
    }
}
