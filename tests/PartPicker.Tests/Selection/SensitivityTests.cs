using System.Text.Json;
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
