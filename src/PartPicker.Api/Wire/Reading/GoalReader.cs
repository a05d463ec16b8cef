using System.Text.Json;
using PartPicker.Api.Errors;
using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>
/// Reads what the engine shall hold: one rpm, rpm over ratio, rpm over vehicle speed, its greatest power, or a
/// change.
/// </summary>
internal static class GoalReader
{
    private const string Speed = "speedCurve";
    private const string Peak = "peakPower";
    private const string Change = "shiftChangeRpm";
    private const string OneOf = "exactly one of shiftRpm, shiftCurve, speedCurve, peakPower and shiftChangeRpm";

    /// <summary>The goal; null where there is a fault.</summary>
    public static ShiftGoal? Read(ObjectReader reader, FaultList faults)
    {
        int faultsBefore = faults.Count;
        bool? peakPower = reader.Flag(Peak);
        double? change = reader.Number(Change, -RequestLimits.MaxChangeRpm, RequestLimits.MaxChangeRpm);
        var speeds = reader.List(Speed, 1, RequestLimits.MaxCurvePoints, "an array of speed and rpm");
        string[] sent = [.. ShiftReader.Names.Append(Speed).Append(Peak).Append(Change).Where(reader.Has)];
        (double? flat, IReadOnlyList<RatioRpm>? curve) = ShiftReader.ReadEither(reader, faults);
        SpeedRpm[] bySpeed = speeds is null ? [] : Points(speeds, faults);
        if (sent.Length == 0)
            reader.RefuseMissing(ShiftReader.Names[0], OneOf);
        foreach (string extra in sent.Skip(1))
            faults.Add(ErrorCodes.Contradiction, reader.At(extra), null, OneOf);
        if (peakPower is false)
            faults.Add(ErrorCodes.OutOfRange, reader.At(Peak), "false", "true, or another goal in its place");
        if (faults.Count > faultsBefore)
            return null;

        // A curve of one point is flat, wherever it stands: a target has one spelling.
        return (flat, curve, bySpeed) switch
        {
            ({ } rpm, _, _) => new ShiftGoal.Flat(rpm),
            (_, [var only], _) => new ShiftGoal.Flat(only.Rpm),
            (_, { } points, _) => new ShiftGoal.ByRatio(points),
            (_, _, [var only]) => new ShiftGoal.Flat(only.Rpm),
            (_, _, { Length: > 0 }) => new ShiftGoal.BySpeed(bySpeed),
            _ when change is { } by => new ShiftGoal.Change(by),
            _ => new ShiftGoal.PeakPower(),
        };
    }

    private static SpeedRpm[] Points(IReadOnlyList<(JsonElement Element, string Pointer)> items, FaultList faults)
    {
        List<SpeedRpm> points = [];
        HashSet<double> speeds = [];
        foreach ((JsonElement item, string pointer) in items)
        {
            if (ObjectReader.Open(item, pointer, faults) is not { } reader)
                continue;
            double? speed = reader.Quantity("speed", QuantityRule.VehicleSpeed);
            double? rpm = reader.Number("rpm", RequestLimits.MinRpm, RequestLimits.MaxRpm, required: true);
            if (!reader.Has("speed"))
                reader.RefuseMissing("speed", QuantityRule.VehicleSpeed.Expected);
            reader.RefuseOthers();
            if (speed is { } at && !speeds.Add(at))
                faults.Add(ErrorCodes.SpeedTwice, reader.At("speed"), $"{at} m/s", "one point for each speed");
            else if (speed is not null && rpm is not null)
                points.Add(new SpeedRpm(speed.Value, rpm.Value));
        }

        return [.. points.OrderBy(point => point.SpeedMPerS)];
    }
}
