using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Searches the same pools in several airs: the best set for each, and the one whose greatest miss is the least.</summary>
/// <remarks>
/// Slots that the request keeps are the same in all; what else may vary, varies from air to air. The searches share what is
/// prepared, know nothing of each other and each have the work limit of the request, so that cores do not matter.
/// </remarks>
internal sealed class SeasonFinder(CatalogSnapshot catalog, PickRequest request, Ranking ranking)
{
    private readonly MachineModel machine = PreparedMachines.Of(catalog).Machine(request.Machine, [])!;
    private readonly PickRequest one = request with { Count = 1, RankBy = RankBy.Miss };

    /// <summary>What was found; null where an air or the target in it is a problem.</summary>
    public Season? Find(List<RequestProblem> problems, CancellationToken cancellation, CancellationToken timeUp)
    {
        Condition[] conditions = [.. request.Conditions.Select((air, i) => Condition(air, i, problems)).OfType<Condition>()];
        if (problems.Count > 0)
            return null;

        // The search for all is the longest: it starts first.
        Condition[][] searched = [conditions, .. conditions.Select(c => new[] { c })];
        var found = new Found[searched.Length];
        Parallel.For(
            0, searched.Length,
            new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount },
            i => found[i] = Search(searched[i], cancellation, timeUp));

        Found all = found[0];
        return new Season(
            [.. conditions.Select((c, i) => Said(c, request.Conditions[i], found[i + 1], all))],
            all.Best is { } set
                ? new SeasonSet(
                    set.Set.Ids, Score.Rounded(set.Miss) / 1000.0, set.Key.WithinTolerance, all.Search.Proven)
                : null,
            found.Any(f => f.Search.TimeWasUp));

        SeasonCondition Said(Condition condition, AirState air, Found own, Found all)
        {
            var writer = new AnswerBuilder(
                request, condition.Predictor, condition.Score, ranking.Fitted, ranking.Planner, ranking.Prepared.Index.Pools, cancellation);
            return new SeasonCondition(
                air, condition.Predictor.TorqueFactor,
                own.Best is { } best ? writer.InShort(best, rank: 1) : null,
                all.Best is { } forAll ? writer.InShort(Here(forAll, condition), rank: 1) : null,
                own.Search.Proven);
        }
    }

    private Condition? Condition(AirState air, int i, List<RequestProblem> problems)
    {
        int before = problems.Count;
        Predictor? predictor = PredictorBuilder.Build(
            catalog, machine, RequestCheck.Run(request),
            request.Baseline is null ? FromProfile.Baseline : "baseline", air, request.AirLaw, request.PointCount, problems);
        WantedRpm? wanted = predictor is null ? null : ShiftGoals.Of(request.Target, predictor, ranking.Fitted, problems);
        if (wanted is not null && problems.Count == before)
            return new Condition(predictor!, new Score(wanted, request));
        for (int at = before; at < problems.Count; at++)
            problems[at] = problems[at] with { Expected = $"{problems[at].Expected} (in the air of conditions/{i})" };
        return null;
    }

    private Found Search(Condition[] conditions, CancellationToken cancellation, CancellationToken timeUp)
    {
        var search = new SetSearch(
            conditions, one, ranking.Planner, ranking.Prepared.Index, ranking.Floors, listOnly: true);
        return new Found(search, search.Run(cancellation, timeUp) is [var best, ..] ? best : null);
    }

    // The set for all with the miss that it has in one of the airs.
    private static RankedSet Here(RankedSet set, Condition condition)
    {
        (double miss, bool within) = condition.Score.Of(condition.Predictor.Predict(set.Set))!.Value;
        return set with
        {
            Miss = miss,
            Key = set.Key with { RoundedMiss = Score.Rounded(miss), WithinTolerance = within },
        };
    }

    private readonly record struct Found(SetSearch Search, RankedSet? Best);
}
