namespace PartPicker.Selection;

/// <summary>Turns ranked sets into answers: prediction, price, changes, explanation, margins and cautions.</summary>
internal sealed class AnswerBuilder(PickRequest request, Predictor predictor, Score score, SetUp fitted)
{
    private readonly PickExplainer explainer = new(request, score);

    /// <summary>What is fitted now, against the same target. It has no miss where it does not shift.</summary>
    public FittedNow FittedNow()
    {
        Prediction prediction = predictor.Predict(fitted);
        double engagement = score.EngagementError(prediction.EngagementRpm);
        if (prediction.Curve.Any(p => p.Upshift is null))
            return new FittedNow(fitted.Ids, prediction, null, false);
        double[] errors = [.. prediction.Curve.Select((p, j) => score.ShiftError(j, p.Upshift!.Rpm))];
        return new FittedNow(
            fitted.Ids, prediction, RoundedMiss(score.Miss(engagement, errors)),
            Score.WithinTolerance(engagement, errors));
    }

    public Pick Pick(RankedSet ranked, int rank)
    {
        Prediction prediction = predictor.Predict(ranked.Set);
        double miss = RoundedMiss(ranked.Miss);
        return new Pick
        {
            Rank = rank,
            Parts = ranked.Set.Ids,
            Prediction = prediction,
            Miss = miss,
            WithinTolerance = ranked.WithinTolerance,
            Changes = ranked.Set.ChangesFrom(fitted),
            PriceMinor = ranked.Key.PriceMinor,
            Explanation = explainer.Explain(prediction, miss),
            FitMargins = [.. Margins(ranked.Set)],
            Cautions = CautionWriter.For(ranked.Set, prediction, predictor.Machine),
        };
    }

    private IEnumerable<FitMargin> Margins(SetUp set) =>
        from kept in SetRules.Of(set, predictor.Machine)
        let check = kept.Check
        where check.Verdict == FitVerdict.Kept && check.Measured.Dimension is not null
        select new FitMargin(
            kept.Slot, kept.Part, kept.Rule, check.Measured, check.Limit,
            new Measure(check.Margin, check.Measured.Dimension));

    private static double RoundedMiss(double miss) => Score.Rounded(miss) / 1000.0;
}
