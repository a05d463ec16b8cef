using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>
/// Says what stands between a request and a set within tolerance: the nearest cause first. The rules of fit are named
/// only where they leave a slot without a part; else the refusals tell of them.
/// </summary>
internal static class ObstacleFinder
{
    public static IReadOnlyList<Obstacle> Find(
        PickRequest request,
        CandidatePools pools,
        FitReport report,
        SetSearch search,
        Score score,
        IReadOnlyList<Pick> picks,
        Prediction? closest,
        CancellationToken cancellation)
    {
        if (picks.Any(p => p.WithinTolerance))
            return [];
        List<Obstacle> obstacles = [];
        if (search.LeastMissLeft is { } left)
        {
            string ended = search.TimeWasUp ? "The time was up" : search.WorkDone >= request.WorkLimit
                ? $"The search reached its workLimit of {request.WorkLimit}" : $"The search reached its {SetSearch.MaxWaiting} boxes of sets at once";
            obstacles.Add(new Obstacle(TargetRules.WorkLimit, 0,
                $"{ended} before every set was covered; what is left misses by {left:0.###} or more. Keep a slot or exclude parts"
                + $"{(search.TimeWasUp ? ", or ask again" : search.WorkDone >= request.WorkLimit ? ", or raise workLimit" : "")}."));
        }

        AddEmptyPools(request, pools, report, obstacles);
        AddTarget(request, search, score, closest, obstacles, cancellation);
        obstacles.AddRange(search.Refused.Select(r => new Obstacle(r.Key, r.Value, Sentence(r.Key, r.Value, request))));
        obstacles.AddRange(report.ByRule(pools.InTheWay)
            .Where(r => pools.Empty || (RuleNames.IsOfRequest(r.Rule) && r.Rule != PoolRules.Superseded))
            .OrderByDescending(r => r.Count)
            .Select(r => new Obstacle(r.Rule, r.Count, $"{r.Count} refused by this rule. {r.Meaning}")));
        return obstacles;
    }

    private static void AddEmptyPools(PickRequest request, CandidatePools pools, FitReport report, List<Obstacle> obstacles)
    {
        Empty(pools.DriveSprings.Count, "drive spring", [Slot.DriveSpring]);
        Empty(pools.Flyweights.Count, "flyweight", [Slot.Flyweight]);
        Empty(pools.Driven.Count, "driven spring with hole and helix", [Slot.DrivenSpring, Slot.Hole, Slot.Helix]);

        void Empty(int count, string what, Slot[] slots)
        {
            if (count > 0)
                return;
            string[] rules = [.. report.ByRule(slots.Contains).Select(r => r.Rule)];
            Slot[] kept = [.. slots.Where(request.Keep.Contains)];
            obstacles.Add(new Obstacle(TargetRules.EmptyPool, 0, kept.Length > 0 ? Kept(what, kept, slots.Length) : Emptied(what, rules)));
        }
    }

    private static string Kept(string what, Slot[] kept, int slots) => kept.Length == slots
        ? $"The kept {what} is refused: the refusals say why."
        : $"No {what} can be fitted together with the kept {Words.List([.. kept.Select(Words.Of)])}: the refusals say why, part by part.";

    // What was refused for a missing number alone may fit: to say that nothing fits would be untrue.
    private static string Emptied(string what, string[] rules)
    {
        string[] asked = [.. rules.Where(r => RuleNames.IsOfRequest(r) && r != PoolRules.Superseded)];
        string sentence = asked switch
        {
            [] => $"No {what} of the catalog fits this machine",
            [FitReport.CheckedDemand] when rules.All(RuleNames.IsOfRequest) =>
                $"No {what} of the catalog can be checked by every rule, as the request demands",
            _ => $"No {what} of the catalog both fits this machine and is what the request allows",
        };
        return $"{sentence}: the refusals say why, part by part.";
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

    // What is kept is not searched: a sentence about all that fits would be untrue of it.
    private static string Engagement(PickRequest request, Score score, double nearest)
    {
        bool keepsSpring = request.Keep.Contains(Slot.DriveSpring);
        bool keepsFlyweight = request.Keep.Contains(Slot.Flyweight);
        string wanted = $"within {request.Tolerances.EngagementRpm:0} rpm of {score.EngagementTarget:0}";
        if (keepsSpring && keepsFlyweight)
            return $"The kept drive spring with the kept flyweights engages at {nearest:0} rpm, not {wanted}.";
        string what = keepsSpring ? "flyweights that may be fitted with the kept drive spring"
            : keepsFlyweight ? "drive spring that may be fitted with the kept flyweights"
            : "drive spring with flyweights that may be fitted";
        string above = request.LaunchRpm is null ? "" : " above the launch rpm";
        return $"No {what} engage{(keepsSpring ? "" : "s")} {wanted}; the nearest{above} engage{(keepsSpring ? "" : "s")} at {nearest:0} rpm.";
    }

    private static void AddTarget(
        PickRequest request, SetSearch search, Score score, Prediction? closest, List<Obstacle> obstacles,
        CancellationToken cancellation)
    {
        double limit = request.Machine.Engine.RevLimitRpm;
        double highest = score.ShiftTargets.Append(score.EngagementTarget ?? 0).Max();
        if (highest > limit)
        {
            obstacles.Add(new Obstacle(
                TargetRules.RevLimit, 0, $"The target asks for {highest:0} rpm; the engine is limited to {limit:0} rpm."));
        }

        if (score.EngagementTarget is { } takes && takes > score.ShiftTargets[0])
        {
            obstacles.Add(new Obstacle(TargetRules.Engagement, 0,
                $"The target asks the belt to take hold at {takes:0} rpm, above the {score.ShiftTargets[0]:0} rpm to be held in low gear: "
                + "the engine would have to slow down as it starts to shift."));
        }

        if (search.NearestEngagementRpm(cancellation) is { } nearest && Math.Abs(score.EngagementError(nearest)) > 1)
        {
            obstacles.Add(new Obstacle(TargetRules.Engagement, 0, Engagement(request, score, nearest)));
        }

        if (closest is null)
            return;
        (ShiftPoint point, double error) = closest.Curve
            .Select((p, j) => (Point: p, Error: score.ShiftError(j, p.Upshift!.Rpm)))
            .MaxBy(p => Math.Abs(p.Error));
        if (Math.Abs(error) > 1)
        {
            obstacles.Add(new Obstacle(TargetRules.ShiftCurve, 0,
                $"The closest set still misses the shift curve most at ratio {point.Ratio:0.00}: {point.Upshift!.Rpm:0} rpm, "
                + $"{Math.Abs(error) * request.Tolerances.ShiftRpm:0} rpm {(error > 0 ? "above" : "below")} the target."));
        }
        else if (closest.EngagementRpm is { } rpm && Math.Abs(score.EngagementError(rpm)) > 1 && !obstacles.Any(o => o.Rule == TargetRules.Engagement))
        {
            obstacles.Add(new Obstacle(TargetRules.Engagement, 0, $"The sets that hold the shift curve engage elsewhere: the closest at {rpm:0} rpm."));
        }
    }
}
