namespace PartPicker.Selection;

/// <summary>By how much a set differs from the fitted one. Bands are half widths; what both sets share cancels in them.</summary>
/// <param name="EngagementRpm">Change of engagement; null where another device starts the machine.</param>
/// <param name="EngagementBandRpm">Band of that change; null where there is none.</param>
/// <param name="Curve">From low gear to full shift.</param>
public sealed record SetChange(double? EngagementRpm, double? EngagementBandRpm, IReadOnlyList<ChangePoint> Curve)
{
    internal static SetChange Of(InputModel model, SetUp set, SetUp from)
    {
        Response response = Response.OfChange(model, set, from);
        (IReadOnlyList<double?> numbers, IReadOnlyList<double?> bands) = (response.Numbers, response.HalfWidths);
        return new SetChange(
            numbers[0], bands[0],
            [.. model.Predictor.Model.Positions.Select((p, j) => new ChangePoint(p.Ratio, numbers[j + 1], bands[j + 1]))]);
    }
}

/// <summary>Change of the upshift rpm at one ratio; null where one of the two sets does not shift there.</summary>
public readonly record struct ChangePoint(double Ratio, double? UpshiftRpm, double? UpshiftBandRpm);
