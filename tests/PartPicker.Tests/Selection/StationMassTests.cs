using PartPicker.Parts;
using PartPicker.Selection;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>What a station carries is judged against what its supplier allows.</summary>
public sealed class StationMassTests
{
    [Theory]
    [InlineData(10.0, true)]
    [InlineData(9.9, false)]
    public void A_station_beyond_its_limit_is_a_caution_in_metric_and_in_ounces(double limitGrams, bool kept)
    {
        foreach (Mass limit in new[] { Mass.FromGrams(limitGrams), Mass.FromOunces(limitGrams / 28.349523125) })
        {
            PredictionAnswer answer = Limited(limit).Predict().Answer!;
            Assert.Equal(!kept, answer.Cautions.Any(c => c.Sentence.Contains("by rule flyweight-station-mass", StringComparison.Ordinal)));
        }

        Assert.Contains(
            Limited(Mass.FromGrams(9.9)).Predict().Answer!.Cautions,
            c => c.Sentence == "The masses in the flyweight fw are too heavy for it by rule flyweight-station-mass: its tip station carries "
                + "10 g; its supplier allows 9.9 g. Fit lighter ones.");
    }

    [Fact]
    public void In_a_pick_it_is_a_refusal_and_kept_a_problem()
    {
        Bench bench = Limited(Mass.FromGrams(9.9));
        PickAnswer answer = bench.Answer();
        Refusal refusal = Assert.Single(answer.Refusals, r => r.Rule == "flyweight-station-mass");
        Assert.Equal((Slot.Flyweight, "fw", 0.010, 0.0099), (refusal.Slot, refusal.Part, refusal.Measured.Value, refusal.Limit.Value));
        Assert.All(answer.Picks, p => Assert.Equal(0.008, p.Parts.StationMasses[StationName.Tip]));
        RequestProblem problem = Assert.Single(bench.Pick(r => r with { Keep = new HashSet<Slot> { Slot.Flyweight } }).Problems);
        Assert.Equal("kept-part-does-not-fit", problem.Code);
        Assert.Contains("flyweight-station-mass", problem.Expected);
    }

    [Fact]
    public void A_rule_of_equality_has_no_margin_and_one_of_room_has()
    {
        Pick pick = new Bench().Answer().Picks[0];
        Assert.Null(pick.FitMargins.Single(m => m.Rule == "helix-cam-radius").Margin);
        Assert.NotNull(pick.FitMargins.Single(m => m.Rule == "drive-spring-outside-diameter").Margin);
    }

    [Theory]
    [InlineData(2015, 2024, true)]
    [InlineData(2016, 2020, true)]
    [InlineData(2020, 2024, false)]
    [InlineData(2010, 2016, false)]
    [InlineData(null, null, true)]
    public void A_list_counts_where_it_covers_every_year(int? from, int? to, bool listed)
    {
        Part part = new Helix { FitsClutches = [new ClutchFit("dn", from, to)] };
        Assert.Equal(listed, part.ListedFor("dn", 2016, 2020));
        Assert.False(part.ListedFor("other", 2016, 2020));
    }

    private static Bench Limited(Mass limit)
    {
        var bench = new Bench();
        return bench with { Flyweight = bench.Flyweight with { TipMassLimit = limit } };
    }
}
