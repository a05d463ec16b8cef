using System.Text.Json;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.Tests.Mechanics;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>Sensitivities against those of the independent implementation behind the agreement cases.</summary>
public sealed class SensitivityTests
{
    // Differences of two roots, each narrowed to 1e-6 rpm or better, over the smallest half-step used.
    private const double RelativeTolerance = 1e-3;

    public static TheoryData<string> Ids =>
        [.. AgreementCase.All.Where(c => c.Expected.TryGetProperty("sensitivities", out _)).Select(c => c.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_sensitivity_of_the_case_agrees(string id)
    {
        AgreementNouns nouns = AgreementNouns.Of(id);
        IReadOnlyList<Sensitivity> actual = SetPrediction.Predict(nouns.Snapshot, nouns.Request).Answer!.Sensitivities;
        int compared = 0;
        foreach (JsonProperty expected in AgreementCase.Of(id).Expected.GetProperty("sensitivities").EnumerateObject())
        {
            Sensitivity ours = actual.Single(s => s.Parameter == Name(expected.Name));
            double[] numbers = [.. expected.Value.EnumerateArray().Select(n => n.GetDouble())];
            double scale = numbers.Max(Math.Abs);
            double[] perUnit = [.. ours.UpshiftRpm.Prepend(ours.EngagementRpm).Select(n => n!.Value / ours.Step.Value)];
            Assert.Equal(10, perUnit.Length);
            for (int n = 0; n < numbers.Length; n++)
                Assert.True(Math.Abs(numbers[n] - perUnit[n]) <= RelativeTolerance * scale, $"{expected.Name}[{n}]: {perUnit[n]} for {numbers[n]}");
            compared++;
        }

        Assert.Equal(10, compared);
    }

    // The run was made in hole 2 of four; a prediction of the neighbouring hole with the same run says the same.
    [Theory]
    [InlineData("2", "3", 20)]
    [InlineData("4", "3", -20)]
    public void The_next_hole_moves_the_curve_as_predictions_of_both_say(string hole, string next, double degrees)
    {
        var bench = new Bench();
        var run = new Baseline(bench.Fitted, 2000, [], 8000, default);
        PredictionAnswer In(string name) => bench.Predict(r => r with { Baseline = run, Parts = bench.Fitted with { Hole = name } }).Answer!;
        PredictionAnswer here = In(hole);
        PredictionAnswer there = In(next);

        Sensitivity moved = here.Sensitivities.Single(s => s.Parameter.StartsWith("hole", StringComparison.Ordinal));
        Assert.Equal($"hole {next}", moved.Parameter);
        Assert.Equal(degrees, moved.Step.Value * 180 / Math.PI, 1e-9);
        Assert.Equal(0, moved.EngagementRpm);
        for (int j = 0; j < moved.UpshiftRpm.Count; j++)
        {
            double change = there.Prediction.Curve[j].Upshift!.Rpm - here.Prediction.Curve[j].Upshift!.Rpm;
            Assert.Equal(change, moved.UpshiftRpm[j]!.Value, 1e-5);
            Assert.Equal(Math.Sign(degrees), Math.Sign(change)); // More twist, more clamp, more rpm.
        }
    }

    [Fact]
    public void One_hole_has_no_next()
    {
        var bench = new Bench();
        bench = bench with { DrivenClutch = bench.DrivenClutch with { Holes = [new("2", 70)] } };
        Assert.DoesNotContain(
            bench.Predict().Answer!.Sensitivities, s => s.Parameter.StartsWith("hole", StringComparison.Ordinal));
    }

    private static string Name(string theirs) => theirs.Split('(', ',')[0].Trim() switch
    {
        "drive_spring_rate" => "drive spring rate",
        "drive_spring_free_length" => "drive spring preload",
        "base mass per arm" => "body mass",
        "tip mass per arm" => "tip mass",
        "driven_spring_rate" => "driven spring rate",
        "driven twist rate" => "driven spring twist rate",
        "preload twist" => "preload twist",
        "helix angle" => "helix angle",
        "belt friction mu" => "belt friction",
        "torque scale" => "engine torque",
        _ => throw new ArgumentException($"No sensitivity {theirs}."),
    };
}
