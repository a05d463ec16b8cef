using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.TestKit;

/// <summary>The judge: tries every set of a catalog, skips nothing, sorts the whole list, then cuts it.</summary>
/// <remarks>It shares the mechanics and the rules of fit with the service, and nothing of its pools, score, order, prices or lists.</remarks>
public static class PlainSearch
{
    /// <summary>Everything that the service promises of one request.</summary>
    public static PlainAnswer Run(CatalogSnapshot catalog, PickRequest request)
    {
        var problems = new List<RequestProblem>();
        MachineModel machine = MachineModel.Create(request.Machine, problems)
            ?? throw new ArgumentException("The machine is impossible.");
        Predictor predictor = PredictorBuilder.Build(
            catalog, machine, request.Baseline ?? request.Machine.OwnBaseline, "", request.Air, request.AirLaw,
            request.PointCount, problems) ?? throw new ArgumentException("The baseline is unusable.");
        double[] targets = PlainTargets.Of(request, predictor);
        PartSet fitted = request.Fitted ?? request.Machine.Machine.Fitted!;

        PlainPick[] found =
        [
            .. PlainSets.Every(catalog, machine, request, fitted)
                .Select(set => Try(set, predictor, request, fitted, targets, catalog))
                .OfType<PlainPick>(),
        ];
        PlainPick[] byMiss = [.. ByIds(found.OrderBy(p => p.RoundedMiss).ThenBy(p => p.Changes).ThenBy(Price))];
        PlainPick[] wanted = request.RankBy == RankBy.Miss
            ? byMiss
            : [.. ByIds(found.OrderBy(p => !p.WithinTolerance).ThenBy(p => p.Changes).ThenBy(Price).ThenBy(p => p.RoundedMiss))];
        if (request.Group)
            wanted = [.. wanted.DistinctBy(p => (p.Parts.DriveSpring, p.Parts.Flyweight))];
        PlainPick[] within = [.. byMiss.Where(p => p.WithinTolerance)];
        return new PlainAnswer(
            [.. wanted.Take(request.Count)],
            within.Where(p => p.Price is not null).MinBy(p => p.Price),
            within.MinBy(p => p.Changes),
            [.. within.Where((p, i) => !within.Where((q, k) => Beats(q, k, p, i)).Any())]);
    }

    // No worse in all three, and better in one of them or earlier in the order.
    private static bool Beats(PlainPick q, int k, PlainPick p, int i)
    {
        bool noWorse = q.RoundedMiss <= p.RoundedMiss && Price(q) <= Price(p) && q.Changes <= p.Changes;
        bool better = q.RoundedMiss < p.RoundedMiss || Price(q) < Price(p) || q.Changes < p.Changes;
        return noWorse && (better || k < i);
    }

    private static long Price(PlainPick pick) => pick.Price ?? long.MaxValue;

    private static IOrderedEnumerable<PlainPick> ByIds(IOrderedEnumerable<PlainPick> picks) => picks
        .ThenBy(p => p.Parts.DriveSpring, StringComparer.Ordinal)
        .ThenBy(p => p.Parts.Shims?.ShimId ?? "", StringComparer.Ordinal)
        .ThenBy(p => p.Parts.Shims?.Count ?? 0)
        .ThenBy(p => p.Parts.Flyweight, StringComparer.Ordinal)
        .ThenBy(p => p.StepPlace)
        .ThenBy(p => Mass(p, StationName.Pin))
        .ThenBy(p => Mass(p, StationName.Heel))
        .ThenBy(p => Mass(p, StationName.Middle))
        .ThenBy(p => Mass(p, StationName.Tip))
        .ThenBy(p => p.Parts.DrivenSpring, StringComparer.Ordinal)
        .ThenBy(p => p.Parts.Hole, StringComparer.Ordinal)
        .ThenBy(p => p.Parts.Helix, StringComparer.Ordinal);

    private static double Mass(PlainPick pick, StationName station) => pick.Parts.StationMasses.GetValueOrDefault(station);

    private static PlainPick? Try(
        SetUp set, Predictor predictor, PickRequest request, PartSet fitted, double[] targets, CatalogSnapshot catalog)
    {
        double engages = predictor.Drive(set.Spring, set.Flyweight).Engagement.Rpm;
        Prediction prediction = predictor.Predict(set);
        if (request.LaunchRpm is { } launch && engages < launch + request.LaunchMarginRpm)
            return null;
        double engagement = request.Target.EngagementRpm is { } wanted ? (engages - wanted) / request.Tolerances.EngagementRpm : 0;
        double sum = 0;
        bool within = Math.Abs(engagement) <= 1;
        for (int j = 0; j < targets.Length; j++)
        {
            if (prediction.Curve[j].Upshift is not { } balance || balance.SlipMargin < request.SlipMargin)
                return null;
            double error = (balance.Rpm - targets[j]) / request.Tolerances.ShiftRpm;
            sum += error * error;
            within &= Math.Abs(error) <= 1;
        }

        if (!PlainPrice.TryOf(set, fitted, request, catalog, out long? price)
            || (request.PriceCeilingMinor is { } ceiling && !(price <= ceiling)))
        {
            return null;
        }

        bool asked = request.Target.EngagementRpm is not null;
        double miss = Math.Sqrt(
            (asked ? request.Weights.Engagement : 0) * engagement * engagement
            + (asked ? request.Weights.Shift : 1) * (sum / targets.Length));
        return new PlainPick(
            set.Ids,
            (long)Math.Floor(1000 * miss + 0.5),
            Enum.GetValues<Slot>().Count(slot => PlainSets.Changed(slot, set, fitted)),
            price,
            within,
            set.Flyweight.Body.AdjusterCurves?.ToList().FindIndex(c => c.Name == set.Flyweight.AdjusterStep) ?? 0);
    }
}

/// <summary>A set as the judge ranks it.</summary>
public sealed record PlainPick(
    PartSet Parts, long RoundedMiss, int Changes, long? Price, bool WithinTolerance, int StepPlace);

/// <summary>What the judge found.</summary>
public sealed record PlainAnswer(
    IReadOnlyList<PlainPick> Picks, PlainPick? Cheapest, PlainPick? FewestChanges, IReadOnlyList<PlainPick> Undominated);
