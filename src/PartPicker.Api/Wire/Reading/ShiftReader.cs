using System.Text.Json;
using PartPicker.Api.Errors;
using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>Reads a shift curve: one rpm, or rpm over ratio.</summary>
internal static class ShiftReader
{
    private const string Flat = "shiftRpm";
    private const string Curve = "shiftCurve";
    private const string EitherOr = "either shiftRpm, one rpm through the whole shift, or shiftCurve, rpm over ratio";

    /// <summary>Exactly one of the two, or neither with a fault; the curve by falling ratio.</summary>
    public static (double? FlatRpm, IReadOnlyList<RatioRpm>? Curve) Read(ObjectReader reader, FaultList faults)
    {
        double? flat = reader.Number(Flat, RequestLimits.MinRpm, RequestLimits.MaxRpm);
        var items = reader.List(Curve, 1, RequestLimits.MaxCurvePoints, "an array of ratio and rpm");
        if (reader.Has(Flat) && reader.Has(Curve))
            faults.Add(ErrorCodes.Contradiction, reader.At(Curve), null, EitherOr);
        else if (!reader.Has(Flat) && !reader.Has(Curve))
            reader.RefuseMissing(Flat, EitherOr);
        return (flat, items is null ? null : Points(items, faults));
    }

    private static IReadOnlyList<RatioRpm> Points(
        IReadOnlyList<(JsonElement Element, string Pointer)> items, FaultList faults)
    {
        List<RatioRpm> points = [];
        HashSet<double> ratios = [];
        foreach ((JsonElement item, string pointer) in items)
        {
            if (ObjectReader.Open(item, pointer, faults) is not { } reader)
                continue;
            double? ratio = reader.Number("ratio", RequestLimits.MinRatio, RequestLimits.MaxRatio, required: true);
            double? rpm = reader.Number("rpm", RequestLimits.MinRpm, RequestLimits.MaxRpm, required: true);
            reader.RefuseOthers();
            if (ratio is { } at && !ratios.Add(at))
                faults.Add(ErrorCodes.RatioTwice, reader.At("ratio"), $"{at}", "one point for each ratio");
            else if (ratio is not null && rpm is not null)
                points.Add(new RatioRpm(ratio.Value, rpm.Value));
        }

        return [.. points.OrderByDescending(point => point.Ratio)];
    }
}
