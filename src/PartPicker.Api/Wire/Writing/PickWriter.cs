using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>Writes a ranked answer.</summary>
internal static class PickWriter
{
    /// <summary>Most refusals, and most unchecked rules, that an answer lists; the rest is counted.</summary>
    public const int MaxListed = 500;

    public static PickAnswerWire Write(string id, PickRequest request, PickAnswer answer, AnswerWriter writer) => new()
    {
        Id = id,
        CatalogRevision = writer.Catalog.Revision,
        ModelVersion = PartSelection.ModelVersion,
        Units = writer.Format.UnitsWord,
        Precision = writer.Format.PrecisionWord,
        Request = RequestWriter.Write(request),
        Fitted = Fitted(answer.Fitted, writer),
        Picks = [.. answer.Picks.Select(pick => Pick(pick, request.Outlet, writer))],
        Refusals = [.. answer.Refusals.Take(MaxListed).Select(refusal => Refusal(refusal, writer))],
        RefusalsLeftOut = Math.Max(0, answer.Refusals.Count - MaxListed),
        NotChecked = [.. answer.NotChecked.Take(MaxListed).Select(NotChecked)],
        NotCheckedLeftOut = Math.Max(0, answer.NotChecked.Count - MaxListed),
        InTheWay = [.. answer.InTheWay.Select(Obstacle)],
        Work = new WorkWire { Combinations = answer.Work.Combinations, Predictions = answer.Work.Predictions },
    };

    private static FittedWire Fitted(FittedNow fitted, AnswerWriter writer) => new()
    {
        Parts = writer.Parts(fitted.Parts),
        EngagementRpm = writer.Rpm(fitted.Prediction.EngagementRpm),
        ShiftOutRpm = writer.Rpm(fitted.Prediction.ShiftOutRpm),
        Curve = Curve(fitted.Prediction, writer),
        Miss = writer.Share(fitted.Miss),
        WithinTolerance = fitted.WithinTolerance,
        Anchored = fitted.Prediction.Anchoring is not null,
    };

    private static PickWire Pick(Pick pick, Outlet? outlet, AnswerWriter writer) => new()
    {
        Rank = pick.Rank,
        Parts = writer.Parts(pick.Parts),
        Changes = [.. pick.Changes.Select(WireJson.Word)],
        EngagementRpm = writer.Rpm(pick.Prediction.EngagementRpm),
        ShiftOutRpm = writer.Rpm(pick.Prediction.ShiftOutRpm),
        Curve = Curve(pick.Prediction, writer),
        Miss = writer.Share(pick.Miss),
        WithinTolerance = pick.WithinTolerance,
        Anchored = pick.Prediction.Anchoring is not null,
        Price = pick.PriceMinor is { } amount && outlet is not null
            ? new PriceWire { AmountMinor = amount, Currency = outlet.Currency }
            : null,
        Explanation = Explanation(pick.Explanation, writer),
        FitMargins = [.. pick.FitMargins.Select(margin => FitMargin(margin, writer))],
        Cautions = [.. pick.Cautions.Select(Caution)],
    };

    public static CautionWire Caution(Caution caution) =>
        new() { Signal = caution.Signal, Sentence = caution.Sentence };

    private static PickPointWire[] Curve(Prediction prediction, AnswerWriter writer) =>
        [.. prediction.Curve.Select(point => new PickPointWire
        {
            Ratio = writer.Ratio(point.Ratio),
            UpshiftRpm = writer.Rpm(point.Upshift?.Rpm),
            BackshiftRpm = writer.Rpm(point.Backshift?.Rpm),
            SlipMargin = writer.Share(point.Upshift?.SlipMargin),
            Slips = point.Upshift?.Slips,
            Power = point.Upshift is { } upshift ? writer.Power(upshift.Power) : null,
            VehicleSpeed = point.Upshift is { } moving ? writer.Speed(moving.VehicleSpeed) : null,
        })];

    private static ExplanationWire Explanation(Explanation explanation, AnswerWriter writer) => new()
    {
        Name = explanation.Name,
        Value = explanation.Unit == "rpm" ? writer.Rpm(explanation.Value) : writer.Factor(explanation.Value),
        Unit = explanation.Unit,
        Sentence = explanation.Sentence,
        Parts = [.. explanation.Parts.Select(part => Explanation(part, writer))],
    };

    private static FitMarginWire FitMargin(FitMargin margin, AnswerWriter writer) => new()
    {
        Slot = WireJson.Word(margin.Slot),
        Part = margin.Part,
        Rule = margin.Rule,
        Measured = writer.Measure(margin.Measured),
        Limit = writer.Measure(margin.Limit),
        Margin = writer.Measure(margin.Margin),
    };

    private static RefusalWire Refusal(Refusal refusal, AnswerWriter writer) => new()
    {
        Slot = WireJson.Word(refusal.Slot),
        Part = refusal.Part,
        Rule = refusal.Rule,
        Measured = writer.Measure(refusal.Measured),
        Limit = writer.Measure(refusal.Limit),
        Sentence = refusal.Sentence,
    };

    private static NotCheckedWire NotChecked(NotChecked unchecked_) => new()
    {
        Slot = WireJson.Word(unchecked_.Slot),
        Part = unchecked_.Part,
        Rule = unchecked_.Rule,
        Missing = unchecked_.Missing,
    };

    private static ObstacleWire Obstacle(Obstacle obstacle) =>
        new() { Rule = obstacle.Rule, Count = obstacle.Count, Sentence = obstacle.Sentence };
}
