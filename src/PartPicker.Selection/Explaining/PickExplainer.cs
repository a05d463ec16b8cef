namespace PartPicker.Selection;

/// <summary>Says how a miss comes about: target, prediction, error and weight, for engagement and at each ratio.</summary>
internal sealed class PickExplainer(Tolerances tolerances, Score score)
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
                    $"shift at ratio {p.Ratio:0.00}", p.Upshift!.Rpm, score.ShiftTargets[j],
                    tolerances.ShiftRpm, shiftWeight)),
            ]);
    }

    private IEnumerable<Explanation> Engagement(Prediction prediction) =>
        score.EngagementTarget is { } target && prediction.EngagementRpm is { } rpm
            ? [Error("engagement", rpm, target, tolerances.EngagementRpm, score.EngagementWeight)]
            : [];

    private static Explanation Error(string what, double predicted, double target, double tolerance, double weight)
    {
        double error = (predicted - target) / tolerance;
        return new Explanation(
            what, weight * error * error, "", "weight times squared error",
            [
                new Explanation("target", target, "rpm", "as asked", []),
                new Explanation("prediction", predicted, "rpm", "by the model", []),
                new Explanation("error", error, "tolerances", "prediction less target, over the tolerance", []),
                new Explanation("weight", weight, "", "share of this error in the sum", []),
            ]);
    }
}
