using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;

namespace PartPicker.Api.Wire;

/// <summary>Writes a ranked answer.</summary>
internal static class PickWriter
{
    public static PickAnswerWire Write(string id, PickRequest request, PickAnswer answer, AnswerWriter writer) => new()
    {
        Id = id,
        CatalogRevision = writer.Catalog.Revision,
        ModelVersion = PartSelection.ModelVersion,
        Units = writer.Format.UnitsWord,
        Precision = writer.Format.PrecisionWord,
        Request = RequestWriter.Write(request),
        Relative = answer.Relative,
        Fitted = Fitted(answer.Fitted, writer),
        Picks = [.. answer.Picks.Select(pick => Pick(pick, request.Outlet, writer))],
        Cheapest = answer.Cheapest is { } cheapest ? Short(cheapest, answer.Work, request.Outlet, writer) : null,
        FewestChanges = answer.FewestChanges is { } fewest ? Short(fewest, answer.Work, request.Outlet, writer) : null,
        Undominated = [.. answer.Undominated.Select(pick => Short(pick, answer.Work, request.Outlet, writer))],
        UndominatedCount = answer.UndominatedCount,
        Waivers = [.. answer.Waivers.Select(waiver => Waiver(waiver, writer))],
        WaiversLeftOut = answer.WaiversLeftOut,
        AlternatesLeftOut = answer.AlternatesLeftOut,
        Superseded = [.. answer.Superseded.Select(Supersession)],
        Refusals = [.. answer.Refusals.Select(refusal => Refusal(refusal, writer))],
        RefusalsLeftOut = answer.RefusalsLeftOut,
        RefusedByRule = Counts(answer.RefusedByRule),
        NotChecked = [.. answer.NotChecked.Select(NotChecked)],
        NotCheckedLeftOut = answer.NotCheckedLeftOut,
        UnknownByRule = Counts(answer.UnknownByRule),
        InTheWay = [.. answer.InTheWay.Select(Obstacle)],
        Season = answer.Season is { } season ? Season(season, request, writer) : null,
        Work = Work(answer.Work),
    };

    private static SeasonWire Season(Season season, PickRequest request, AnswerWriter writer) => new()
    {
        Conditions =
        [
            .. season.Conditions.Select(condition => new SeasonConditionWire
            {
                Air = PredictionWriter.Air(condition.Air, request.AirLaw, writer),
                TorqueFactor = writer.Factor(condition.TorqueFactor),
                Best = condition.Best is { } best ? Pick(best, request.Outlet, writer) : null,
                ForAll = condition.ForAll is { } forAll ? Pick(forAll, request.Outlet, writer) : null,
                Proven = condition.Proven,
            }),
        ],
        ForAll = season.ForAll is { } set
            ? new SeasonSetWire
            {
                Parts = writer.Parts(set.Parts),
                Miss = writer.Share(set.Miss),
                WithinTolerance = set.WithinTolerance,
                Proven = set.Proven,
            }
            : null,
    };

    private static WorkWire Work(Work work) => new()
    {
        Combinations = work.Combinations,
        Proven = work.Proven,

        // Rounded down, so that it stays true.
        MissLowerBound = work.LeastMissLeft is { } left ? Math.Floor(1000 * left) / 1000 : null,
    };

    private static RuleCountWire[] Counts(IReadOnlyDictionary<string, long> counts) =>
        [.. counts.OrderBy(rule => rule.Key, StringComparer.Ordinal).Select(rule => new RuleCountWire { Rule = rule.Key, Count = rule.Value })];

    // Without a measured run an absolute rpm cannot be trusted, so none is written.
    private static double? Trusted(double? rpm, Prediction prediction, AnswerWriter writer) =>
        prediction.Anchoring is null ? null : writer.Rpm(rpm);

    private static FittedWire Fitted(FittedNow fitted, AnswerWriter writer) => new()
    {
        Parts = writer.Parts(fitted.Parts),
        EngagementRpm = Trusted(fitted.Prediction.EngagementRpm, fitted.Prediction, writer),
        EngagementBandRpm = Trusted(fitted.Prediction.EngagementBandRpm, fitted.Prediction, writer),
        ShiftOutRpm = Trusted(fitted.Prediction.ShiftOutRpm, fitted.Prediction, writer),
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
        EngagementRpm = Trusted(pick.Prediction.EngagementRpm, pick.Prediction, writer),
        EngagementBandRpm = Trusted(pick.Prediction.EngagementBandRpm, pick.Prediction, writer),
        ShiftOutRpm = Trusted(pick.Prediction.ShiftOutRpm, pick.Prediction, writer),
        Curve = Curve(pick.Prediction, writer),
        Change = PredictionWriter.Change(pick.Change, writer),
        Miss = writer.Share(pick.Miss),
        WithinTolerance = pick.WithinTolerance,
        Likelihood = writer.Share(pick.Likelihood),
        Anchored = pick.Prediction.Anchoring is not null,
        Price = Price(pick.PriceMinor, outlet),
        ToBuy = [.. pick.ToBuy.Select(line => Purchase(line, outlet!, writer))],
        MassesToFit = [.. pick.MassesToFit.Select(mass => MassToFit(mass, writer))],
        LabourMinutes = pick.LabourMinutes,
        Explanation = Explanation(pick.Explanation, writer),
        FitMargins = [.. pick.FitMargins.Select(margin => FitMargin(margin, writer))],
        FitGaps = [.. pick.FitGaps.Select(FitGap)],
        Cautions = [.. pick.Cautions.Select(Caution)],
    };

    private static ShortPickWire Short(Pick pick, Work work, Outlet? outlet, AnswerWriter writer) => new()
    {
        Rank = pick.Rank,
        Provisional = !work.Proven,
        Parts = writer.Parts(pick.Parts),
        Changes = [.. pick.Changes.Select(WireJson.Word)],
        EngagementRpm = Trusted(pick.Prediction.EngagementRpm, pick.Prediction, writer),
        ShiftOutRpm = Trusted(pick.Prediction.ShiftOutRpm, pick.Prediction, writer),
        Change = PredictionWriter.Change(pick.Change, writer),
        Miss = writer.Share(pick.Miss),
        Price = Price(pick.PriceMinor, outlet),
        ToBuy = [.. pick.ToBuy.Select(line => Purchase(line, outlet!, writer))],
        MassesToFit = [.. pick.MassesToFit.Select(mass => MassToFit(mass, writer))],
        LabourMinutes = pick.LabourMinutes,
    };

    private static PriceWire? Price(long? minor, Outlet? outlet) => minor is { } amount && outlet is not null
        ? new PriceWire { AmountMinor = amount, Currency = outlet.Currency }
        : null;

    private static PurchaseWire Purchase(Purchase line, Outlet outlet, AnswerWriter writer) => new()
    {
        Id = line.Id,
        Name = writer.Catalog.FindPart(line.Id)?.Name ?? "",
        Packs = line.Packs,
        Price = Price(line.PriceMinor, outlet),
        Stock = line.Stock,
        Covers = [.. line.Covers.Select(WireJson.Word)],
        Alternate = line.Alternate is { } alternate
            ? new AlternateWire
            {
                Parts = writer.Parts(alternate.Parts),
                Miss = writer.Share(alternate.Miss),
                WithinTolerance = alternate.WithinTolerance,
                ToBuy = [.. alternate.ToBuy.Select(other => new AlternatePurchaseWire
                {
                    Id = other.Id,
                    Name = writer.Catalog.FindPart(other.Id)?.Name ?? "",
                    Packs = other.Packs,
                    Price = Price(other.PriceMinor, outlet),
                    Stock = other.Stock!.Value,
                })],
            }
            : null,
    };

    private static MassToFitWire MassToFit(MassToFit mass, AnswerWriter writer) => new()
    {
        Station = WireJson.Word(mass.Station),
        Mass = writer.Quantity(mass.MassKg, Mass.Info),
        Pieces = mass.Pieces,
    };

    private static WaiverWire Waiver(Waiver waiver, AnswerWriter writer) => new()
    {
        Rule = waiver.Rule,
        Refused = waiver.Refused,
        Sets = [.. waiver.Sets.Select(set => new WaivedSetWire
        {
            Parts = writer.Parts(set.Parts),
            Miss = writer.Share(set.Miss),
            WithinTolerance = set.WithinTolerance,
            Broken = [.. set.Broken.Select(refusal => Refusal(refusal, writer))],
        })],
    };

    private static FitGapWire FitGap(FitGap gap) => new()
    {
        Slot = WireJson.Word(gap.Slot),
        Part = gap.Part,
        Rule = gap.Rule,
        Ground = WireJson.Word(gap.Ground),
        Missing = gap.Missing,
    };

    public static SupersessionWire Supersession(Supersession superseded) =>
        new() { Pointer = "/" + superseded.Place, Sent = superseded.Sent, Used = superseded.Used, Successor = superseded.Successor };

    public static CautionWire Caution(Caution caution) =>
        new() { Signal = caution.Signal, Sentence = caution.Sentence };

    private static PickPointWire[] Curve(Prediction prediction, AnswerWriter writer) =>
        [.. prediction.Curve.Select(point => prediction.Anchoring is null ? Untrusted(point, writer) : Point(point, writer))];

    private static PickPointWire Point(ShiftPoint point, AnswerWriter writer) => new()
    {
        Ratio = writer.Ratio(point.Ratio),
        UpshiftRpm = writer.Rpm(point.Upshift?.Rpm),
        UpshiftBandRpm = writer.Rpm(point.UpshiftBandRpm),
        BackshiftRpm = writer.Rpm(point.Backshift?.Rpm),
        SlipMargin = writer.Share(point.Upshift?.SlipMargin),
        Slips = point.Upshift?.Slips,
        Power = point.Upshift is { } upshift ? writer.Power(upshift.Power) : null,
        VehicleSpeed = point.Upshift is { } moving ? writer.Speed(moving.VehicleSpeed) : null,
    };

    // Slip is said all the same: the margin of the bare model, flattering or not, is a caution that nobody should miss.
    private static PickPointWire Untrusted(ShiftPoint point, AnswerWriter writer) => Point(point, writer) with
    {
        UpshiftRpm = null,
        UpshiftBandRpm = null,
        BackshiftRpm = null,
        Power = null,
        VehicleSpeed = null,
    };

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
        Margin = margin.Margin is { } room ? writer.Measure(room) : null,
    };

    private static RefusalWire Refusal(Refusal refusal, AnswerWriter writer) => new()
    {
        Slot = WireJson.Word(refusal.Slot),
        Part = refusal.Part,
        Rule = refusal.Rule,
        Measured = writer.MeasureOrNull(refusal.Measured, refusal.Limit),
        Limit = writer.MeasureOrNull(refusal.Limit, refusal.Measured),
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
