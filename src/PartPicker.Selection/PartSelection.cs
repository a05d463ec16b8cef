using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>
/// Answers which parts: request, candidate pools, exact search, explained answer. The place to start reading.
/// </summary>
public static class PartSelection
{
    /// <summary>Version of the model and of the order; it stands in every answer.</summary>
    public const string ModelVersion = "1.0";

    /// <summary>Most sets that one request may cover; the search tries them one by one.</summary>
    public const long MaxCombinations = 1_000_000;

    /// <summary>The ranked and explained choices, or every reason why there are none.</summary>
    /// <param name="catalog">The parts to choose from.</param>
    /// <param name="request">Within its ranges, which whoever reads it from outside checks.</param>
    /// <param name="cancellation">Calls the search off.</param>
    /// <returns>
    /// An answer, which may hold no pick but then says what stands in the way; or the problems of a request that has
    /// no answer. Nothing that the import of catalogs accepts makes it throw.
    /// </returns>
    /// <exception cref="OperationCanceledException">The search was called off.</exception>
    public static Outcome<PickAnswer> Pick(
        CatalogSnapshot catalog, PickRequest request, CancellationToken cancellation = default)
    {
        var problems = new List<RequestProblem>();
        if (MachineModel.Create(request.Machine, problems) is not { } machine)
            return Outcome.Refused<PickAnswer>(problems);
        RequestCheck.CheckProfile(request, problems);
        SetUp? fitted = Fitted(catalog, request, machine, problems);
        Predictor? predictor = Anchored(catalog, request, machine, problems);
        if (problems.Count > 0)
            return Outcome.Refused<PickAnswer>(problems);

        RequestCheck.CheckKept(request.Keep, fitted!, machine, problems);
        var report = new FitReport();
        CandidatePools? pools =
            CandidatePools.Build(catalog, machine, fitted!, request.Keep, report, problems, cancellation);
        if (pools is null || problems.Count > 0)
            return Outcome.Refused<PickAnswer>(problems);

        var score = new Score(
            request.Target, request.Tolerances, request.Weights, predictor!.Model.Positions.Select(p => p.Ratio));
        var search = new SetSearch(predictor, request, score, fitted!);
        IReadOnlyList<RankedSet> ranked = search.Run(pools, cancellation);

        var writer = new AnswerBuilder(request, predictor, score, fitted!);
        Pick[] picks = [.. ranked.Select((set, i) => writer.Pick(set, rank: i + 1))];
        return Outcome.Of(new PickAnswer
        {
            Fitted = writer.FittedNow(),
            Picks = picks,
            Refusals = report.Refusals,
            RefusalsLeftOut = report.RefusalsLeftOut,
            NotChecked = report.Unknowns,
            NotCheckedLeftOut = report.UnknownsLeftOut,
            InTheWay = ObstacleFinder.Find(request, pools, report, search, score, picks),
            Work = new Work(pools.Combinations, search.Predictions),
        });
    }

    private static SetUp? Fitted(
        CatalogSnapshot catalog, PickRequest request, MachineModel machine, List<RequestProblem> problems)
    {
        if ((request.Fitted ?? request.Machine.Machine.Fitted) is not { } ids)
        {
            problems.Add(new RequestProblem(
                "fitted", RequestProblemCodes.FittedNeeded, null,
                "the parts that are fitted now: the catalog does not say what this machine has as delivered"));
            return null;
        }

        SetUp? fitted = SetUpReader.Find(catalog, request.Machine, ids, "fitted", problems);
        return fitted is not null && PredictorBuilder.Computable(fitted, machine, "fitted", problems) ? fitted : null;
    }

    private static Predictor? Anchored(
        CatalogSnapshot catalog, PickRequest request, MachineModel machine, List<RequestProblem> problems)
    {
        if ((request.Baseline ?? request.Machine.OwnBaseline) is { } baseline)
        {
            return PredictorBuilder.Build(
                catalog, machine, baseline, request.Baseline is null ? "machine/baselines/0" : "baseline",
                request.Air, request.AirLaw, request.PointCount, problems);
        }

        problems.Add(new RequestProblem(
            "baseline", RequestProblemCodes.BaselineNeeded, null,
            "a measured run, since without one an absolute rpm cannot be trusted. Anyone can make it: with the parts that are "
            + "fitted now, note the rpm at which the belt takes hold and the rpm held at full throttle, and send them as "
            + "engagementRpm and shiftRpm, with altitude and temperature if they are known"));
        return null;
    }
}
