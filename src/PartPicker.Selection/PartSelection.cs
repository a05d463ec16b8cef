using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>
/// Answers which parts: request, candidate pools, exact search, explained answer. The place to start reading.
/// </summary>
public static class PartSelection
{
    /// <summary>Version of the model and of the order; it stands in every answer.</summary>
    public const string ModelVersion = "1.3";

    /// <summary>Most drive springs with their shims among which one request may choose.</summary>
    public const int MaxDriveSpringChoices = 200_000;

    /// <summary>Most flyweights with their ramp steps and masses among which one request may choose.</summary>
    public const int MaxFlyweightChoices = 200_000;

    /// <summary>Most driven springs in their holes with a helix among which one request may choose.</summary>
    public const int MaxDrivenChoices = 5_000_000;

    /// <summary>Most bytes that the preparation of one request's pools may take while it is made.</summary>
    public const long MaxPreparationBytes = 300_000_000;

    /// <summary>The ranked and explained choices, or every reason why there are none.</summary>
    /// <param name="catalog">The parts to choose from.</param>
    /// <param name="request">Within its ranges, which whoever reads it from outside checks.</param>
    /// <param name="cancellation">Calls the search off.</param>
    /// <param name="timeUp">Ends the search with the list so far, which then says so.</param>
    /// <returns>
    /// An answer, which may hold no pick but then says what stands in the way; or the problems of a request that has
    /// no answer. Nothing that the import of catalogs accepts makes it throw.
    /// </returns>
    /// <exception cref="OperationCanceledException">The search was called off.</exception>
    public static Outcome<PickAnswer> Pick(
        CatalogSnapshot catalog, PickRequest request, CancellationToken cancellation = default,
        CancellationToken timeUp = default)
    {
        var problems = new List<RequestProblem>();
        if (Rank(catalog, request, problems, cancellation, timeUp) is not { } ranking)
            return Outcome.Refused<PickAnswer>(problems);
        (Predictor predictor, Score score) = ranking.Condition;
        SetUp fitted = ranking.Fitted;
        CandidatePools pools = ranking.Prepared.Index.Pools;
        FitReport report = ranking.Prepared.Report;
        SetSearch search = ranking.Search;
        Season? season = request.Conditions.Count == 0
            ? null
            : new SeasonFinder(catalog, request, ranking).Find(problems, cancellation, timeUp);
        if (problems.Count > 0)
            return Outcome.Refused<PickAnswer>(problems);

        // Step 4. Said so that a person can follow.
        var writer = new AnswerBuilder(request, predictor, score, fitted, ranking.Planner, pools, cancellation);
        Pick[] picks = [.. ranking.Sets.Select((set, i) => writer.Listed(set, rank: i + 1))];
        IReadOnlyList<RuleCount> refused = report.ByRule(_ => true);
        IReadOnlyList<RankedSet> undominated = search.Highlights.Undominated;
        (IReadOnlyList<Waiver> waivers, int waiversLeftOut) = picks.Length > 0 || !search.Proven
            ? ([], 0)
            : new WaiverFinder(catalog, request, predictor, score, fitted).Find(
                pools, report, search, cancellation, timeUp);
        return Outcome.Of(new PickAnswer
        {
            Relative = predictor.Anchoring is null,
            Fitted = writer.FittedNow(),
            Picks = picks,
            Cheapest = search.Highlights.Cheapest is { } cheapest ? writer.InShort(cheapest, rank: 1) : null,
            FewestChanges = search.Highlights.FewestChanges is { } fewest ? writer.InShort(fewest, rank: 1) : null,
            Undominated = [.. undominated.Take(PickAnswer.MaxUndominated).Select((set, i) => writer.InShort(set, rank: i + 1))],
            UndominatedCount = undominated.Count,
            Waivers = waivers,
            WaiversLeftOut = waiversLeftOut,
            Superseded = [.. ranking.Superseded.Distinct()],
            Refusals = [.. report.Refusals.OrderBy(r => pools.InTheWay(r.Slot) ? 0 : 1).Take(request.RefusalCount)],
            RefusalsLeftOut = Math.Max(0, refused.Sum(rule => rule.Count) - request.RefusalCount),
            RefusedByRule = refused.ToDictionary(rule => rule.Rule, rule => rule.Count),
            NotChecked = report.Unknowns,
            NotCheckedLeftOut = report.UnknownsLeftOut,
            UnknownByRule = report.UnknownByRule,
            InTheWay = ObstacleFinder.Find(
                request, pools, report, search, score, picks,
                search.Highlights.Closest is { } closest ? predictor.Predict(closest.Set) : null, cancellation),
            Work = new Work(pools.Combinations, search.Predictions, search.Proven, search.LeastMissLeft,
                search.TimeWasUp || season is { TimeWasUp: true }),
            Season = season,

            // Last, when every pick has its alternates.
            AlternatesLeftOut = writer.AlternatesLeftOut,
        });
    }

    /// <summary>The first three steps of an answer: the sets in their order; null where there are problems.</summary>
    internal static Ranking? Rank(
        CatalogSnapshot catalog, PickRequest request, List<RequestProblem> problems, CancellationToken cancellation = default,
        CancellationToken timeUp = default)
    {
        // Step 1. What the request means: machine, fitted parts, anchor, target.
        if (PreparedMachines.Of(catalog).Machine(request.Machine, problems) is not { } machine)
            return null;
        var superseded = new List<Supersession>();
        RequestCheck.CheckRelative(request, problems);
        RequestCheck.CheckWishes(request, machine, problems);
        SetUp? fitted = Fitted(catalog, request, machine, problems, superseded);
        Predictor? predictor = PredictorBuilder.Build(
            catalog, machine, RequestCheck.Run(request), request.Baseline is null ? FromProfile.Baseline : "baseline",
            request.Air, request.AirLaw, request.PointCount, problems, superseded);
        WantedRpm? wanted = predictor is null || fitted is null ? null : ShiftGoals.Of(request.Target, predictor, fitted, problems);
        if (problems.Count > 0)
            return null;
        RequestCheck.CheckExcluded(request, fitted!, problems);
        RequestCheck.CheckKept(request.Keep, fitted!, machine, problems);

        // Step 2. What fits and is allowed.
        Prepared? prepared = PreparedPools.Of(catalog).Get(
            PoolKey.Of(request, fitted!), () => Prepare(catalog, request, machine, fitted!, problems, cancellation));
        if (prepared is null || problems.Count > 0)
            return null;

        // Step 3. The sets, ranked: the same list as trying every one.
        var condition = new Condition(predictor!, new Score(wanted!, request));
        var planner = new PurchasePlanner(catalog, request, fitted!);
        PriceFloors? floors = PriceFloors.Of(prepared.Index, catalog, request, planner, fitted!);
        var search = new SetSearch([condition], request, planner, prepared.Index, floors);
        return new Ranking(condition, fitted!, planner, prepared, floors, search, search.Run(cancellation, timeUp), superseded);
    }

    private static Prepared? Prepare(
        CatalogSnapshot catalog, PickRequest request, MachineModel machine, SetUp fitted, List<RequestProblem> problems,
        CancellationToken cancellation)
    {
        var report = new FitReport(request.DemandChecked);
        CandidatePools? pools = new PoolBuilder(catalog, machine, fitted, request, report).Build(problems, cancellation);
        return pools is null || problems.Count > 0
            ? null
            : new Prepared(SearchIndex.Build(pools, fitted, machine, request.PointCount, cancellation), report);
    }

    private static SetUp? Fitted(
        CatalogSnapshot catalog, PickRequest request, MachineModel machine,
        List<RequestProblem> problems, List<Supersession> superseded)
    {
        if ((request.Fitted ?? request.Machine.Machine.Fitted) is not { } ids)
        {
            problems.Add(new RequestProblem(
                "fitted", RequestProblemCodes.FittedNeeded, null,
                "the parts that are fitted now: the catalog does not say what this machine has as delivered"));
            return null;
        }

        string place = request.Fitted is null ? FromProfile.Fitted : "fitted";
        SetUp? fitted = new SetUpReader(catalog, request.Machine, problems, superseded).Find(ids, place);
        return fitted is not null && PredictorBuilder.Computable(fitted, machine, place, problems) ? fitted : null;
    }
}

/// <summary>What a search was asked, and what it found.</summary>
internal sealed record Ranking(
    Condition Condition, SetUp Fitted, PurchasePlanner Planner, Prepared Prepared, PriceFloors? Floors, SetSearch Search,
    IReadOnlyList<RankedSet> Sets, IReadOnlyList<Supersession> Superseded);
