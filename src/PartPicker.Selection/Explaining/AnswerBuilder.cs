using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Turns ranked sets into answers: prediction, price, changes, explanation, margins and cautions.</summary>
internal sealed class AnswerBuilder(
    PickRequest request, Predictor predictor, Score score, SetUp fitted, PurchasePlanner planner, CandidatePools pools,
    CancellationToken cancellation)
{
    private readonly bool relative = predictor.Anchoring is null;
    private readonly PickExplainer explainer = new(
        request.Tolerances, score, predictor.Anchoring is null ? predictor.Predict(fitted) : null);
    private readonly InputModel inputs = new(predictor);
    private readonly AlternateFinder alternates = new(request, predictor, score, planner, pools, cancellation);

    /// <summary>What the alternates of every pick so far left out.</summary>
    public long AlternatesLeftOut => alternates.LeftOut;

    /// <summary>What is fitted now, against the same target. It has no miss where it does not shift.</summary>
    public FittedNow FittedNow()
    {
        Prediction prediction = Response.Of(inputs, fitted).Banded(predictor.Predict(fitted));
        return score.Of(prediction) is { } scored
            ? new FittedNow(fitted.Ids, prediction, RoundedMiss(scored.Miss), scored.WithinTolerance)
            : new FittedNow(fitted.Ids, prediction, null, false);
    }

    /// <summary>A listed pick, with its bands and its likelihood.</summary>
    public Pick Listed(RankedSet ranked, int rank)
    {
        Pick pick = InShort(ranked, rank);
        Response response = Response.Of(inputs, ranked.Set);
        Prediction banded = response.Banded(pick.Prediction);
        return pick with
        {
            Prediction = banded,
            Cautions = CautionWriter.BySeverity([.. pick.Cautions, .. CautionWriter.ForMissingBands(banded)]),
            Likelihood = relative ? null : response.Likelihood(
                [score.EngagementTarget ?? double.NaN, .. score.ShiftTargets],
                [
                    request.Tolerances.EngagementRpm,
                    .. score.ShiftTargets.Select(_ => request.Tolerances.ShiftRpm),
                ]),
        };
    }

    /// <summary>A pick without bands: each of them costs as much as dozens of predictions, and beside the list nobody reads them.</summary>
    public Pick InShort(RankedSet ranked, int rank)
    {
        cancellation.ThrowIfCancellationRequested();
        Prediction prediction = predictor.Predict(ranked.Set);
        double miss = RoundedMiss(ranked.Miss);
        IReadOnlyList<Slot> changes = ranked.Set.ChangesFrom(fitted);
        return new Pick
        {
            Rank = rank,
            Parts = ranked.Set.Ids,
            Prediction = prediction,
            Change = relative ? SetChange.Of(inputs, ranked.Set, fitted) : null,
            Miss = miss,
            WithinTolerance = ranked.Key.WithinTolerance,
            Changes = changes,
            PriceMinor = ranked.Key.PriceMinor,
            ToBuy = [.. planner.List(ranked.Set).Select(line => alternates.Complete(line, ranked.Set))],
            MassesToFit = [.. MassesToFit(ranked.Set.Flyweight)],
            LabourMinutes = Labour(changes),
            Explanation = explainer.Explain(prediction, miss),
            FitMargins = [.. SetRules.Margins(ranked.Set, predictor.Machine)],
            FitGaps = [.. SetRules.Gaps(ranked.Set, predictor.Machine)],
            Cautions = CautionWriter.For(ranked.Set, prediction, predictor.Machine),
        };
    }

    private IEnumerable<MassToFit> MassesToFit(FlyweightChoice flyweight)
    {
        bool sameBody = flyweight.Body.Id == fitted.Flyweight.Body.Id;
        return
            from station in flyweight.Body.Stations()
            let mass = flyweight.Masses.GetValueOrDefault(station.Name)
            where mass != (sameBody ? fitted.Flyweight.Masses.GetValueOrDefault(station.Name) : 0)
            select new MassToFit(station.Name, mass, request.Machine.DriveClutch.ArmCount);
    }

    private int? Labour(IReadOnlyList<Slot> changes)
    {
        if (request.Outlet is not { } outlet || !changes.All(outlet.LabourMinutes.ContainsKey))
            return null;
        return changes.Sum(slot => outlet.LabourMinutes[slot]);
    }

    private static double RoundedMiss(double miss) => Score.Rounded(miss) / 1000.0;
}
