namespace PartPicker.Selection;

/// <summary>Says what stands between a request and a set within tolerance: the nearest cause first, the rules of fit last.</summary>
internal static class ObstacleFinder
{
    public static IReadOnlyList<Obstacle> Find(
        PickRequest request,
        CandidatePools pools,
        FitReport report,
        SetSearch search,
        Score score,
        IReadOnlyList<Pick> picks,
        CancellationToken cancellation)
    {
        if (picks.Any(p => p.WithinTolerance))
            return [];
        List<Obstacle> obstacles = [];
        if (search.LeastMissLeft is { } left)
        {
            obstacles.Add(new Obstacle(
                "work-limit", 0, $"The search was ended before it had covered every set; what is left misses by {left:0.###} or more."));
        }

        AddEmptyPools(pools, obstacles);
        AddTarget(request, search, score, picks, obstacles, cancellation);
        obstacles.AddRange(search.Refused.Select(r => new Obstacle(r.Key, r.Value, Sentence(r.Key, r.Value, request))));
        obstacles.AddRange(report.ByRule(pools.InTheWay)
            .OrderByDescending(r => r.Count)
            .Select(r => new Obstacle(r.Rule, r.Count, $"{r.Count} refused by this rule. {r.Meaning}")));
        return obstacles;
    }

    private static void AddEmptyPools(CandidatePools pools, List<Obstacle> obstacles)
    {
        Empty(pools.DriveSprings.Count, "drive spring");
        Empty(pools.Flyweights.Count, "flyweight");
        Empty(pools.Driven.Count, "driven spring with hole and helix");

        void Empty(int count, string what)
        {
            if (count == 0)
            {
                obstacles.Add(new Obstacle(
                    "empty-pool", 0, $"No {what} of the catalog fits this machine: the refusals say why, part by part."));
            }
        }
    }

    private static string Sentence(string rule, long count, PickRequest request) => rule switch
    {
        PoolRules.LaunchRpm => $"{count} sets engage below the launch rpm {request.LaunchRpm:0} plus its margin {request.LaunchMarginRpm:0}.",
        PoolRules.DoesNotShift => $"{count} sets or more do not shift through below the rev limit.",
        PoolRules.SlipMargin => $"{count} sets or more have a slip margin below {request.SlipMargin:0.##} somewhere on the upshift.",
        PoolRules.PriceCeiling => $"{count} sets or more cost more than the ceiling, or their price is not known.",
        PoolRules.InStock => $"{count} sets or more need more packs than {request.Outlet!.Id} has in stock.",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "No such rule."),
    };

    private static void AddTarget(
        PickRequest request, SetSearch search, Score score, IReadOnlyList<Pick> picks, List<Obstacle> obstacles,
        CancellationToken cancellation)
    {
        double limit = request.Machine.Engine.RevLimitRpm;
        double highest = score.ShiftTargets.Append(score.EngagementTarget ?? 0).Max();
        if (highest > limit)
        {
            obstacles.Add(new Obstacle(
                "rev-limit", 0, $"The target asks for {highest:0} rpm; the engine is limited to {limit:0} rpm."));
        }

        if (search.NearestEngagementRpm(cancellation) is { } nearest && Math.Abs(score.EngagementError(nearest)) > 1)
        {
            obstacles.Add(new Obstacle("engagement", 0, $"No drive spring with flyweights that fits engages within {request.Tolerances.EngagementRpm:0} rpm of {score.EngagementTarget:0}; the nearest engages at {nearest:0} rpm."));
        }

        if (picks.Count == 0)
            return;
        Prediction best = picks[0].Prediction;
        (ShiftPoint point, double error) = best.Curve
            .Select((p, j) => (Point: p, Error: score.ShiftError(j, p.Upshift!.Rpm)))
            .MaxBy(p => Math.Abs(p.Error));
        if (Math.Abs(error) > 1)
        {
            obstacles.Add(new Obstacle("shift-curve", 0,
                $"The closest set still misses the shift curve most at ratio {point.Ratio:0.00}: {point.Upshift!.Rpm:0} rpm, "
                + $"{Math.Abs(error) * request.Tolerances.ShiftRpm:0} rpm {(error > 0 ? "above" : "below")} the target."));
        }
        else if (best.EngagementRpm is { } rpm && Math.Abs(score.EngagementError(rpm)) > 1 && !obstacles.Any(o => o.Rule == "engagement"))
        {
            obstacles.Add(new Obstacle("engagement", 0, $"The sets that hold the shift curve engage elsewhere: the closest at {rpm:0} rpm."));
        }
    }
}
