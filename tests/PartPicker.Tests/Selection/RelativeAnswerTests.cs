using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>Targets that are changes against the fitted set, and answers that count from it.</summary>
public sealed class RelativeAnswerTests
{
    private static readonly Bench Shelved = new Bench() is var bench
        ? bench with
        {
            Run = _ => null,
            Shelf =
            [
                bench.DriveSpring with { Id = "ds-firm", Rate = ForcePerLength.FromNewtonsPerMillimeter(21) },
                bench.DrivenSpring with { Id = "vs-soft", TwistRate = RotationalStiffness.FromNewtonMetersPerRadian(8) },
                bench.Flyweight with { Id = "fw-heavy", BodyMass = Mass.FromGrams(52) },
            ],
        }
        : throw new InvalidOperationException();

    [Fact]
    public void A_change_counts_from_the_rpm_of_the_fitted_set()
    {
        var bench = new Bench();
        Prediction fitted = bench.Predicted();
        PickAnswer answer = bench.Answer(r => r with { Target = Change(120, -80) });

        Assert.False(answer.Relative);
        Pick first = answer.Picks[0];
        Assert.Null(first.Change);
        Assert.NotNull(first.Likelihood);
        Assert.Equal(
            fitted.Curve.Select(p => p.Upshift!.Rpm - 80).Prepend(fitted.EngagementRpm!.Value + 120),
            first.Explanation.Parts.Select(p => p.Parts.Single(q => q.Name == "target").Value));
    }

    [Fact]
    public void No_change_is_what_is_fitted()
    {
        Pick first = Shelved.Answer(r => r with { Target = Change(0, 0) }).Picks[0];
        Assert.Empty(first.Changes);
        Assert.Equal(0, first.Miss);
        SetChange change = first.Change!;
        Assert.Equal((0, 0), (change.EngagementRpm, change.EngagementBandRpm));
        Assert.All(change.Curve, p => Assert.Equal((0, 0), (p.UpshiftRpm, p.UpshiftBandRpm)));
    }

    [Fact]
    public void Without_a_run_each_pick_says_by_how_much_it_differs_and_nobody_says_how_likely()
    {
        PickAnswer answer = Shelved.Answer(r => r with { Target = Change(200, 100) });
        Assert.True(answer.Relative);
        Assert.True(answer.Picks.Count > 4);
        Prediction fitted = answer.Fitted.Prediction;
        foreach (Pick pick in answer.Picks)
        {
            Assert.Null(pick.Likelihood);
            Assert.Equal(pick.Prediction.EngagementRpm!.Value - fitted.EngagementRpm!.Value, pick.Change!.EngagementRpm!.Value, 1e-6);
            double[] changes = [.. pick.Prediction.Curve.Select((p, j) => p.Upshift!.Rpm - fitted.Curve[j].Upshift!.Rpm)];
            for (int j = 0; j < changes.Length; j++)
                Assert.Equal(changes[j], pick.Change.Curve[j].UpshiftRpm!.Value, 1e-6);
            Assert.Equal(
                changes.Prepend(pick.Prediction.EngagementRpm.Value - fitted.EngagementRpm.Value),
                pick.Explanation.Parts.Select(p => p.Parts.Single(q => q.Name == "prediction").Value));
            Assert.Equal([200, .. changes.Select(_ => 100.0)], pick.Explanation.Parts.Select(
                p => Math.Round(p.Parts.Single(q => q.Name == "target").Value, 6)));
        }
    }

    [Fact]
    public void What_both_sets_share_cancels_in_the_band()
    {
        Pick other = Shelved.Answer(r => r with { Target = Change(200, 0) }).Picks.First(p => p.Changes is [Slot.DriveSpring]);

        // In low gear the belt's friction alone is most of the absolute band, and both sets run on the same belt.
        double change = other.Change!.Curve[0].UpshiftBandRpm!.Value;
        double absolute = other.Prediction.Curve[0].UpshiftBandRpm!.Value;
        Assert.InRange(change, 1, absolute / 2);
    }

    [Fact]
    public void An_absolute_rpm_without_a_run_is_refused_and_told_of_changes()
    {
        ShiftTarget[] absolute = [ShiftTarget.Flat(2000, 8000), Change(100, 0) with { Shift = new ShiftGoal.PeakPower() }, Change(null, 50) with { EngagementRpm = 2000 }];
        foreach (ShiftTarget target in absolute)
        {
            RequestProblem none = Assert.Single(Shelved.Pick(r => r with { Target = target }).Problems);
            Assert.Equal(("baseline", "baseline-needed"), (none.Place, none.Code));
            Assert.Contains("engagementChangeRpm and shiftChangeRpm", none.Expected);

            RequestProblem aside = Assert.Single(new Bench().Pick(r => r with { Target = target, Anchor = false }).Problems);
            Assert.Equal("baseline-needed", aside.Code);

            RequestProblem guessed = Assert.Single(Guessed().Pick(r => r with { Target = target }).Problems);
            Assert.Equal(("machine", "profile-not-measured"), (guessed.Place, guessed.Code));
            Assert.Contains("engagementChangeRpm and shiftChangeRpm", guessed.Expected);
        }
    }

    [Fact]
    public void A_profile_of_class_defaults_gets_a_relative_answer_and_its_run_is_left_aside()
    {
        PickAnswer answer = Guessed().Answer(r => r with { Target = Change(0, 0) });
        Assert.True(answer.Relative);
        Assert.Null(answer.Picks[0].Prediction.Anchoring);
        Assert.Contains(answer.Picks[0].Cautions, c => c.Sentence.Contains("class defaults (belt/friction)", StringComparison.Ordinal));
    }

    [Fact]
    public void A_launch_rpm_has_nothing_to_be_compared_with()
    {
        RequestProblem problem = Assert.Single(Shelved.Pick(r => r with { Target = Change(0, 0), LaunchRpm = 1500 }).Problems);
        Assert.Equal(("launchRpm", "baseline-needed"), (problem.Place, problem.Code));
        Assert.Equal("profile-not-measured", Assert.Single(Guessed().Pick(r => r with { Target = Change(0, 0), LaunchRpm = 1500 }).Problems).Code);
    }

    [Fact]
    public void A_fitted_set_that_does_not_shift_has_nothing_to_count_from()
    {
        Bench light = Shelved with { Flyweight = Shelved.Flyweight with { BodyMass = Mass.FromGrams(12) } };
        RequestProblem problem = Assert.Single(light.Pick(r => r with { Target = Change(0, 0) }).Problems);
        Assert.Equal(("targets/shiftChangeRpm", "target-unclear"), (problem.Place, problem.Code));
        Assert.Contains("at ratio", problem.Expected);
    }

    [Fact]
    public void A_bare_prediction_says_what_changes_against_the_set_of_the_profile()
    {
        PredictionAnswer other = Shelved.Predict(r => r with { Parts = Shelved.Fitted with { DriveSpring = "ds-firm" } }).Answer!;
        double engagement = Shelved.Predicted().EngagementRpm!.Value;
        Assert.Equal(other.Prediction.EngagementRpm!.Value - engagement, other.Change!.EngagementRpm!.Value, 1e-6);
        Assert.True(other.Change.EngagementRpm > 10);
        Assert.True(other.Change.EngagementBandRpm > 0);
        Assert.Equal(other.Prediction.Curve.Count, other.Change.Curve.Count);

        Assert.Null(new Bench().Predict().Answer!.Change);
        Assert.Equal(0, Shelved.Predict().Answer!.Change!.EngagementRpm);
    }

    private static ShiftTarget Change(double? engagement, double shift) =>
        new(null, new ShiftGoal.Change(shift)) { EngagementChangeRpm = engagement };

    private static Bench Guessed()
    {
        var bench = new Bench();
        return bench with
        {
            Belt = bench.Belt with { Origins = new Dictionary<string, Origin> { ["friction"] = Origin.ClassDefault } },
        };
    }
}
