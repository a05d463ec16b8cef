namespace PartPicker.Selection;

/// <summary>Says how a miss comes about: target, prediction, error and weight, for engagement and at each ratio.</summary>
/// <param name="from">The fitted set where the answer is relative to it; null where rpm count from 0.</param>
internal sealed class PickExplainer(Tolerances tolerances, Score score, Prediction? from)
{
    public Explanation Explain(Prediction prediction, double miss)
    {
        int count = prediction.Curve.Count;
        double shiftWeight = score.ShiftWeight / count;
        return new Explanation(
            "miss", miss, "",
            "square root of the weighted sum of squared errors; an error counts in tolerances",
            [
                .. Engagement(prediction),
                .. prediction.Curve.Select((p, j) => Error(
                    $"shift at ratio {p.Ratio:0.00}", p.Upshift!.Rpm, score.ShiftTargets[j], from?.Curve[j].Upshift!.Rpm,
                    tolerances.ShiftRpm, shiftWeight)),
            ]);
    }

    private IEnumerable<Explanation> Engagement(Prediction prediction) =>
        score.EngagementTarget is { } target && prediction.EngagementRpm is { } rpm
            ? [Error("engagement", rpm, target, from?.EngagementRpm, tolerances.EngagementRpm, score.EngagementWeight)]
            : [];

    private static Explanation Error(
        string what, double predicted, double target, double? from, double tolerance, double weight)
    {
        double error = (predicted - target) / tolerance;
        return new Explanation(
            what, weight * error * error, "", "weight times squared error",
            [
                new Explanation("target", target - (from ?? 0), "rpm", from is null ? "as asked" : "change from what is fitted, as asked", []),
                new Explanation("prediction", predicted - (from ?? 0), "rpm", from is null ? "by the model" : "change from what is fitted, by the model", []),
                new Explanation("error", error, "tolerances", "prediction less target, over the tolerance", []),
                new Explanation("weight", weight, "", "share of this error in the sum", []),
            ]);
    }
}
