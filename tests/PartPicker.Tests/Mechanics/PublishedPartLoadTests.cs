using System.Globalization;
using PartPicker.Service.Tests.Docs;
using PartPicker.Tests.Catalog;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>
/// SYS-1: the part-load line of a whole machine. [40 CFR 1051.505] Table 1 tests snow machine engines at 100, 85, 75 and 65 %
/// of test speed under 100, 51, 33 and 19 % of test torque; that cycle was taken from instrumented machines ([SAE 982017],
/// abstract). A belt drive tuned to hold one rpm at full throttle comes down in speed as torque does, and by how much is
/// told by its springs, weights and cam.
/// </summary>
/// <remarks>
/// The bands are derived, not published: the span (5 to 95 %) of 4000 plausible drives with the two-arc thrust. A band to fall
/// into, not a validation.
/// </remarks>
public sealed class PublishedPartLoadTests
{
    private static readonly PartLoadLine Line = new();

    private static readonly string Model = Path.Combine(Path.GetDirectoryName(SampleFolder.Path)!, "docs", "model");

    [Trait("Outside", "SYS-1")]
    [Theory]
    [InlineData(0.51, 0.76, 0.93, 0.85)]
    [InlineData(0.33, 0.65, 0.85, 0.75)]
    [InlineData(0.19, 0.54, 0.76, 0.65)]
    public void A_snow_machine_at_part_load_runs_in_the_band_around_the_published_line(
        double torqueShare, double least, double greatest, double published)
    {
        Assert.Contains((torqueShare, published, least, greatest), PartLoadLine.Cycle);
        Assert.InRange(published, least, greatest);
        Assert.All(Line.Shares(torqueShare), share => Assert.InRange(share, least, greatest));
    }

    // With all of the torque there is nothing to slow down for, and less torque means less speed at every ratio.
    [Fact]
    public void Speed_comes_down_with_torque_at_every_ratio()
    {
        Assert.All(Line.Shares(1), share => Assert.Equal(1, share));
        for (int k = 1; k < PartLoadLine.Cycle.Count; k++)
        {
            double[] more = Line.Shares(PartLoadLine.Cycle[k - 1].Torque);
            double[] less = Line.Shares(PartLoadLine.Cycle[k].Torque);
            Assert.All(less.Zip(more), pair => Assert.True(pair.First < pair.Second));
        }
    }

    [Fact]
    public void The_page_prints_what_the_model_says()
    {
        string page = File.ReadAllText(Path.Combine(Model, "part-load.md"));
        foreach ((double torque, double speed, double least, double greatest) in PartLoadLine.Cycle)
        {
            double[] shares = Line.Shares(torque);
            Assert.Contains(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"| {torque:0.00} | {speed:0.00} | {shares.Min():0.000} to {shares.Max():0.000} | {least:0.00} to {greatest:0.00} |"),
                page, StringComparison.Ordinal);
        }

        Assert.Contains("](part-load.svg)", page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_committed_picture_is_what_the_model_draws()
    {
        string drawn = PartLoadPicture.Draw(Line);
        string kept = KeptFile.Read(Path.Combine(Model, "part-load.svg"), drawn);

        Assert.True(kept == drawn, $"docs/model/part-load.svg is not what the model draws. {KeptFile.HowTo}");
    }
}
