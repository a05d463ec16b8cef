using PartPicker.Parts;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>What every answer must keep, whatever was asked.</summary>
internal static class AnswerChecks
{
    public static void Holds(PickRequest request, PickAnswer answer)
    {
        Assert.Null(FiniteNumbers.FirstBad(answer));
        Assert.Equal(Enumerable.Range(1, answer.Picks.Count), answer.Picks.Select(p => p.Rank));
        Assert.InRange(answer.Picks.Count, 0, (int)Math.Min(request.Count, answer.Work.Combinations));
        Assert.InRange(answer.Work.Predictions, Math.Min(1, answer.Picks.Count), answer.Work.Combinations);
        Assert.True(answer.Work.Proven);
        Assert.Equal(answer.Picks.Any(p => p.WithinTolerance), answer.InTheWay.Count == 0);
        Assert.All(answer.InTheWay, o => Assert.NotEmpty(o.Sentence));
        Assert.All(answer.InTheWay, o => Assert.Contains(RuleNames.Obstacles, name => name.Name == o.Rule));
        Assert.All(answer.Refusals, r => Assert.NotEmpty(r.Sentence));
        Assert.All(answer.NotChecked, n => Assert.NotEmpty(n.Missing));
        var order = answer.Picks.Select(p => request.RankBy == RankBy.Miss
            ? (Group: 0, First: p.Miss, Changes: p.Changes.Count, Price: Price(p), Last: 0.0)
            : (Group: p.WithinTolerance ? 0 : 1, First: 0.0, Changes: p.Changes.Count, Price: Price(p), Last: p.Miss)).ToList();
        Assert.Equal(order.Order(), order);
        if (request.Group)
            Assert.Equal(answer.Picks.Count, answer.Picks.DistinctBy(p => (p.Parts.DriveSpring, p.Parts.Flyweight)).Count());
        Assert.All(answer.Undominated, p => Assert.True(p.WithinTolerance));
        Assert.All(answer.Picks, pick => Holds(request, answer.Fitted.Parts, pick));
    }

    private static void Holds(PickRequest request, PartSet fitted, Pick pick)
    {
        Assert.Equal(Differences(pick.Parts, fitted), pick.Changes);
        Assert.DoesNotContain(pick.Changes, request.Keep.Contains);
        Assert.Equal(
            request.Outlet is null ? null : pick.ToBuy.Aggregate((long?)0, (sum, line) => sum + line.PriceMinor), pick.PriceMinor);
        if (request.PriceCeilingMinor is { } ceiling)
            Assert.True(pick.PriceMinor <= ceiling);
        if (request.InStockOnly)
            Assert.All(pick.ToBuy, line => Assert.True(line.Stock >= line.Packs));
        Assert.Equal(request.PointCount, pick.Prediction.Curve.Count);
        Assert.All(pick.Prediction.Curve, p => Assert.NotNull(p.Upshift));
        if (request.LaunchRpm is { } launch)
            Assert.True(pick.Prediction.EngagementRpm >= launch + request.LaunchMarginRpm);
        if (request.SlipMargin is { } margin)
            Assert.All(pick.Prediction.Curve, p => Assert.True(p.Upshift!.SlipMargin is null || p.Upshift.SlipMargin >= margin));
        Assert.All(pick.FitMargins, m => Assert.True(m.Margin is null or { Value: >= 0 }));
        Assert.Equal(
            pick.Prediction.Curve.Any(p => p.Upshift!.Slips),
            pick.Cautions.Any(c => c.Sentence.StartsWith("By the model the belt slips", StringComparison.Ordinal)));
        Assert.Equal(2, pick.Cautions.Count(c => c.Signal == "WARNING" && c.Sentence.Contains("spring", StringComparison.Ordinal)));
        Explained(request, pick);
    }

    // miss² = w_e e₀² + w_s mean(e_j²), and each part of the tree is its weight times its squared error.
    private static void Explained(PickRequest request, Pick pick)
    {
        Explanation root = pick.Explanation;
        Assert.Equal(pick.Miss, root.Value);
        double sum = root.Parts.Sum(p => p.Value);
        Assert.Equal(root.Value, Math.Sqrt(sum), 0.0005 + 1e-9);
        Assert.Equal((request.Target.EngagementRpm is null ? 0 : 1) + request.PointCount, root.Parts.Count);
        Assert.Equal(1, root.Parts.Sum(p => Part(p, "weight")), 1e-9);
        foreach (Explanation part in root.Parts)
        {
            double error = Part(part, "error");
            double tolerance = part.Name == "engagement" ? request.Tolerances.EngagementRpm : request.Tolerances.ShiftRpm;
            Assert.Equal(Part(part, "weight") * error * error, part.Value, 1e-9 * (1 + part.Value));
            Assert.Equal((Part(part, "prediction") - Part(part, "target")) / tolerance, error, 1e-9 * (1 + Math.Abs(error)));
        }

        Assert.Equal(root.Parts.All(p => Math.Abs(Part(p, "error")) <= 1), pick.WithinTolerance);
        Assert.Equal(
            pick.Prediction.EngagementRpm is { } engagement
                ? pick.Prediction.Curve.Select(p => p.Upshift!.Rpm).Prepend(engagement)
                : pick.Prediction.Curve.Select(p => p.Upshift!.Rpm),
            root.Parts.Select(p => Part(p, "prediction")));

        static double Part(Explanation of, string name) => of.Parts.Single(p => p.Name == name).Value;
    }

    private static List<Slot> Differences(PartSet set, PartSet fitted)
    {
        var slots = new List<Slot>();
        if (set.DriveSpring != fitted.DriveSpring || set.Shims != fitted.Shims)
            slots.Add(Slot.DriveSpring);
        if (set.Flyweight != fitted.Flyweight || set.AdjusterStep != fitted.AdjusterStep || Enum.GetValues<StationName>().Any(
            s => set.StationMasses.GetValueOrDefault(s) != fitted.StationMasses.GetValueOrDefault(s)))
        {
            slots.Add(Slot.Flyweight);
        }

        if (set.DrivenSpring != fitted.DrivenSpring)
            slots.Add(Slot.DrivenSpring);
        if (set.Hole != fitted.Hole)
            slots.Add(Slot.Hole);
        if (set.Helix != fitted.Helix)
            slots.Add(Slot.Helix);
        return slots;
    }

    private static long Price(Pick pick) => pick.PriceMinor ?? long.MaxValue;
}
