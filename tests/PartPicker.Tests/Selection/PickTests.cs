using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.TestKit;
using UnitsNet;
using Xunit;
using static PartPicker.Tests.Selection.Bench;

namespace PartPicker.Tests.Selection;

/// <summary>The ranked answer: what holds on every pick, and how it is explained and priced.</summary>
public sealed class PickTests
{
    [Fact]
    public void Every_answer_on_random_catalogs_keeps_what_is_promised()
    {
        int kept = 0, within = 0, launched = 0, held = 0;
        for (int seed = 1001; seed <= 1120; seed++)
        {
            var catalog = new RandomCatalog(seed, maxPerPool: 3);
            PickAnswer answer = PartSelection.Pick(catalog.Snapshot, catalog.Request).Answer!;
            AnswerChecks.Holds(catalog.Request, answer);
            kept += catalog.Request.Keep.Count > 0 && answer.Picks.Count > 0 ? 1 : 0;
            launched += catalog.Request.LaunchRpm is not null && answer.Picks.Count > 0 ? 1 : 0;
            held += answer.Picks.Any(p => p.Prediction.EngagementTravel < Mm(3)) ? 1 : 0;
            within += answer.Picks.Any(p => p.WithinTolerance) ? 1 : 0;
        }

        // The promises mean something only where they were put to the test.
        Assert.True(
            kept > 20 && within > 10 && launched > 5 && held > 5,
            $"{kept} kept, {within} within tolerance, {launched} launched, {held} held back by a notch");
    }

    [Fact]
    public void The_fitted_set_is_the_first_answer_to_what_it_does_already()
    {
        Prediction now = new Bench().Predicted();
        PickRequest request = new Bench().Request() with
        {
            Target = new ShiftTarget(
                2000, new ShiftGoal.ByRatio([.. now.Curve.Select(p => new RatioRpm(p.Ratio, p.Upshift!.Rpm))])),
        };
        PickAnswer answer = PartSelection.Pick(new Bench().Snapshot(), request).Answer!;
        Pick first = answer.Picks[0];
        Assert.Equal(0, first.Miss);
        Assert.True(first.WithinTolerance);
        Assert.Empty(first.Changes);
        Assert.Equal((0.0, true), (answer.Fitted.Miss!.Value, answer.Fitted.WithinTolerance));
        Assert.Empty(answer.InTheWay);

        // Every hole and every choice of masses is a set: 1 spring, 2·3 masses, 4 holes.
        Assert.Equal(24, answer.Work.Combinations);
        AnswerChecks.Holds(request, answer);
    }

    [Fact]
    public void A_target_curve_is_straight_between_its_points_and_held_at_its_ends()
    {
        PickAnswer answer = new Bench().Answer(r => r with
        {
            Target = new ShiftTarget(2000, new ShiftGoal.ByRatio([new(1.2, 8200), new(2.2, 7800)])),
        });
        Pick first = answer.Picks[0];
        foreach ((ShiftPoint point, Explanation part) in first.Prediction.Curve.Zip(first.Explanation.Parts.Skip(1)))
        {
            double target = 8200 - 400 * Math.Clamp(point.Ratio - 1.2, 0, 1);
            Assert.Equal(target, part.Parts.Single(p => p.Name == "target").Value, 1e-9);
        }
    }

    [Fact]
    public void One_error_beyond_its_tolerance_is_enough_to_be_outside_though_the_miss_is_small()
    {
        Prediction now = new Bench().Predicted();
        RatioRpm[] curve = [.. now.Curve.Select((p, j) => new RatioRpm(p.Ratio, p.Upshift!.Rpm + (j == 4 ? 101 : 0)))];
        Pick pick = Only(Tolerances.Standard);
        Assert.False(pick.WithinTolerance);
        Assert.Equal(Math.Sqrt(0.7 / 9) * 1.01, pick.Miss, 0.0005);
        Assert.True(Only(new Tolerances(100, 101.01)).WithinTolerance);

        Pick Only(Tolerances tolerances) => Assert.Single(new Bench().Answer(r => r with
        {
            Target = new ShiftTarget(2000, new ShiftGoal.ByRatio(curve)),
            Tolerances = tolerances,
            Keep = Enum.GetValues<Slot>().ToHashSet(),
        }).Picks);
    }

    [Fact]
    public void The_price_is_that_of_what_is_not_fitted_and_unknown_where_one_price_is()
    {
        Bench bench = Shelved();
        PickRequest request = bench.Request() with
        {
            Count = 50,
            Keep = new HashSet<Slot> { Slot.Flyweight, Slot.Hole },
            Outlet = new Outlet("corner", "EUR", new Dictionary<string, Offer>
            {
                ["ds"] = new(100, 1), ["ds-2"] = new(2000, 1), ["hx-2"] = new(30_000, null), ["vs-2"] = new(null, 3),
            }),
        };
        PickAnswer answer = PartSelection.Pick(bench.Snapshot(), request).Answer!;
        Assert.Equal(8, answer.Picks.Count);
        Assert.Equal(0, Price("ds", "vs", "hx"));
        Assert.Equal(2000, Price("ds-2", "vs", "hx"));
        Assert.Equal(32_000, Price("ds-2", "vs", "hx-2"));
        Assert.Null(Price("ds", "vs-2", "hx"));
        Assert.Null(Price("ds-2", "vs-2", "hx-2"));
        PickAnswer unpriced = PartSelection.Pick(bench.Snapshot(), request with { Outlet = null }).Answer!;
        Assert.All(unpriced.Picks, p => Assert.Null(p.PriceMinor));

        long? Price(string drive, string driven, string helix) => answer.Picks.Single(p =>
            (p.Parts.DriveSpring, p.Parts.DrivenSpring, p.Parts.Helix) == (drive, driven, helix)).PriceMinor;
    }

    [Fact]
    public void Between_equals_the_cheaper_goes_first_and_an_unknown_price_last()
    {
        var bench = new Bench();
        bench = bench with
        {
            Shelf = [.. new[] { "a", "b", "c" }.Select(id => bench.DriveSpring with { Id = id })],
        };
        PickAnswer answer = bench.Answer(r => r with
        {
            Keep = new HashSet<Slot> { Slot.Flyweight, Slot.DrivenSpring, Slot.Hole, Slot.Helix },
            Outlet = new Outlet("corner", "EUR", new Dictionary<string, Offer> { ["b"] = new(500, 1), ["c"] = new(400, 1) }),
        });
        Assert.Equal(["ds", "c", "b", "a"], answer.Picks.Select(p => p.Parts.DriveSpring));
    }

    [Fact]
    public void Each_pick_says_by_how_much_every_checked_rule_is_kept()
    {
        Pick pick = new Bench().Answer().Picks[0];

        // Its outside diameter of 57.4 mm is 57.9893 mm at full shift, under a cup of 62 mm.
        Assert.Contains(pick.FitMargins, m =>
            m is { Slot: Slot.DriveSpring, Part: "ds", Rule: "drive-spring-outside-diameter" }
            && Math.Abs(m.Margin!.Value.Value - 0.0040107) < 1e-8 && m.Margin.Value.Dimension!.Name == Length.Info.Name);
        Assert.Contains(pick.FitMargins, m => m is { Slot: Slot.Helix, Rule: "helix-self-lock" }
            && Math.Abs(m.Margin!.Value.Value - m.Measured.Value + m.Limit.Value) < 1e-12);
        Assert.Contains(pick.FitMargins, m => m is { Slot: Slot.DrivenSpring, Rule: "driven-spring-wound-diameter" });
    }

    [Fact]
    public void Kept_slots_hold_what_is_fitted_also_where_the_request_says_what_that_is()
    {
        Bench bench = Shelved();
        var empty = new Dictionary<StationName, double>();
        PartSet fitted = bench.Fitted with { DriveSpring = "ds-2", Hole = "3", StationMasses = empty };
        PickAnswer answer = bench.Answer(r => r with
        {
            Fitted = fitted,
            Baseline = new Baseline(fitted, 2000, [], 8000, default),
            Keep = new HashSet<Slot> { Slot.DriveSpring, Slot.Hole, Slot.Flyweight },
            Count = 50,
        });
        Assert.Equal(4, answer.Picks.Count);
        Assert.All(answer.Picks, p => Assert.Equal(("ds-2", "3", "fw"), (p.Parts.DriveSpring, p.Parts.Hole, p.Parts.Flyweight)));
        Assert.All(answer.Picks, p => Assert.All(p.Parts.StationMasses.Values, m => Assert.Equal(0, m)));
    }

    [Fact]
    public void A_search_that_is_called_off_stops() =>
        Assert.Throws<OperationCanceledException>(() =>
            PartSelection.Pick(new Bench().Snapshot(), new Bench().Request(), new CancellationToken(canceled: true)));

    [Fact]
    public void Writing_out_the_picks_that_is_called_off_stops()
    {
        using var source = new CancellationTokenSource();
        PickRequest request = new Bench().Request() with
        {
            // Nothing reads the minutes of work before the first pick is written out.
            Outlet = new Outlet("corner", "EUR", new Dictionary<string, Offer>())
            {
                LabourMinutes = new Dictionary<Slot, int>(new CallsOff(source)) { [Slot.Hole] = 10 },
            },
        };
        Assert.False(source.IsCancellationRequested);
        Assert.Throws<OperationCanceledException>(() => PartSelection.Pick(new Bench().Snapshot(), request, source.Token));
    }

    /// <summary>Calls a search off as soon as a slot is looked up.</summary>
    private sealed class CallsOff(CancellationTokenSource source) : IEqualityComparer<Slot>
    {
        public bool Equals(Slot x, Slot y)
        {
            source.Cancel();
            return x == y;
        }

        public int GetHashCode(Slot slot) => 0;
    }

    private static Bench Shelved()
    {
        var bench = new Bench();
        return bench with
        {
            Shelf =
            [
                bench.DriveSpring with { Id = "ds-2", Rate = ForcePerLength.FromNewtonsPerMillimeter(20) },
                bench.DrivenSpring with { Id = "vs-2", TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(8) },
                bench.Helix with { Id = "hx-2", HelixDeg = 45 },
            ],
        };
    }
}
