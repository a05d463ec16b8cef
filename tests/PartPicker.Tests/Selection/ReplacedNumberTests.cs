using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>A fitted number that was replaced is what lies in the clutch, as long as enough is known of it.</summary>
public sealed class ReplacedNumberTests
{
    private static readonly Bench Plain = new();

    private static readonly DriveSpring Soft = Plain.DriveSpring with
    {
        Id = "ds-old",
        SupersededBy = "ds",
        Rate = ForcePerLength.FromNewtonsPerMillimeter(16),
    };

    [Fact]
    public void A_replaced_spring_of_known_rate_is_predicted_by_its_own_rate()
    {
        PredictionAnswer old = Predicted(Soft, "ds-old");
        Assert.Equal([new Supersession("parts/driveSpring", "ds-old", "ds-old", "ds")], old.Superseded);
        Assert.Empty(Predicted(Soft, "ds").Superseded);
        Assert.Equal("ds-old", old.Parts.DriveSpring);
        double own = Predicted(Soft with { Id = "same", SupersededBy = null }, "same").Prediction.EngagementRpm!.Value;
        Assert.Equal(own, old.Prediction.EngagementRpm);
        Assert.NotEqual(Predicted(Soft, "ds").Prediction.EngagementRpm!.Value, own, 10.0);
    }

    [Fact]
    public void A_replaced_number_without_data_leads_on_to_the_first_that_has_some()
    {
        Bench bench = Plain with { Shelf = [Soft, new DriveSpring { Id = "ds-older", SupersededBy = "ds-old" }] };
        PredictionAnswer answer = bench.Predict(r => r with { Parts = bench.Fitted with { DriveSpring = "ds-older" } }).Answer!;
        Assert.Equal([new Supersession("parts/driveSpring", "ds-older", "ds-old", "ds")], answer.Superseded);
        Assert.Equal(Predicted(Soft, "ds-old").Prediction.EngagementRpm, answer.Prediction.EngagementRpm);
    }

    [Fact]
    public void Each_kind_of_part_leads_on_only_where_too_little_is_known()
    {
        Bench bench = Plain with
        {
            Shelf =
            [
                new Flyweight { Id = "fw-old", SupersededBy = "fw" }, new DrivenSpring { Id = "vs-old", SupersededBy = "vs" },
                new Helix { Id = "hx-old", SupersededBy = "hx" }, Plain.Flyweight with { Id = "fw-whole", SupersededBy = "fw" },
                Plain.DrivenSpring with { Id = "vs-whole", SupersededBy = "vs" }, Plain.Helix with { Id = "hx-whole", SupersededBy = "hx" },
            ],
        };
        PartSet old = bench.Fitted with { Flyweight = "fw-old", DrivenSpring = "vs-old", Helix = "hx-old" };
        PartSet whole = bench.Fitted with { Flyweight = "fw-whole", DrivenSpring = "vs-whole", Helix = "hx-whole" };
        Assert.Equal(["fw", "vs", "hx"], bench.Predict(r => r with { Parts = old }).Answer!.Superseded.Select(s => s.Used));
        Assert.Equal(
            [("fw-whole", "fw"), ("vs-whole", "vs"), ("hx-whole", "hx")],
            bench.Predict(r => r with { Parts = whole }).Answer!.Superseded.Select(s => (s.Used, s.Successor)));
    }

    [Fact]
    public void The_successor_is_a_change_from_a_fitted_number_that_is_known()
    {
        Bench bench = Plain with { Shelf = [Soft] };
        PickAnswer answer = bench.Answer(r => r with { Fitted = bench.Fitted with { DriveSpring = "ds-old" }, Count = 50 });
        Assert.Equal("ds-old", answer.Fitted.Parts.DriveSpring);
        Assert.Equal([new Supersession("fitted/driveSpring", "ds-old", "ds-old", "ds")], answer.Superseded);
        Assert.All(answer.Picks, p => Assert.Equal(p.Parts.DriveSpring == "ds", p.Changes.Contains(Slot.DriveSpring)));
        Assert.Contains(answer.Picks, p => p.Parts.DriveSpring == "ds-old");
    }

    private static PredictionAnswer Predicted(DriveSpring other, string id)
    {
        Bench bench = Plain with { Shelf = [other] };
        return bench.Predict(r => r with { Parts = bench.Fitted with { DriveSpring = id } }).Answer!;
    }
}
