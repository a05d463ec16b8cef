using System.Text.Json;
using PartPicker.Api.CommandLine;
using PartPicker.Api.Wire;
using Xunit;

namespace PartPicker.Service.Tests.CommandLine;

/// <summary>What a person reads at a console.</summary>
[Collection(ServiceTests.Name)]
public sealed class PickTableTests(Service service)
{
    [Fact]
    public async Task Prices_work_and_what_to_buy_stand_beside_the_ranks()
    {
        string[] lines = await Printed("kits-pick.json");

        Assert.StartsWith(
            "rank  engages     shifts out  miss   price       work     within  anchored  change",
            Line(lines, "rank "));
        Assert.Matches(
            "^1 .* EUR 105\\.00 +120 min +yes +yes +drive spring ds-116-219, flyweight fw-valley-43 \\(heel 2 g, tip 8 g\\)$",
            Line(lines, "1 "));
        int list = Array.IndexOf(lines, "To buy for the first choice at valley-counter:");
        Assert.True(list > 0);
        Assert.Equal(
            "  1 x kit-valley-high  High country kit for the valley two-seater  EUR 105.00  2 in stock",
            lines[list + 1]);
        Assert.Equal("", lines[list + 2]);
        Assert.Matches(
            "^Cheapest within tolerance: price EUR [0-9.]+, work [0-9]+ min, miss [0-9.]+, ", Line(lines, "Cheapest"));
        Assert.Matches("^Fewest changes within tolerance: price ", Line(lines, "Fewest"));
    }

    [Fact]
    public async Task What_is_out_of_stock_names_what_comes_closest()
    {
        string line = Line(await Printed("adjustable-ramp-pick.json"), "  1 x ds-meadow-002 ");

        Assert.Matches(" EUR 32\\.40 +0 in stock +from stock: 1 x ds-72-129 \\+ 1 x sh-52-0\\.8 for drive spring ds-72-129 on 1 x sh-52-0\\.8, miss 0\\.523, out of tolerance$", line);
    }

    [Fact]
    public async Task Another_driven_spring_from_stock_is_named_with_its_hole()
    {
        string line = Line(await Printed("first-pick.json"), "  1 x dv-11.4-9.4 ");

        Assert.Matches(" 0 in stock +from stock: 1 x [^ ]+ for driven spring [^ ,]+ in hole [0-9], miss [0-9.]+$", line);
    }

    [Fact]
    public async Task Shims_and_steps_are_told_where_they_are_used()
    {
        string[] shims = await Printed("shims-pick.json");
        Assert.Contains("drive spring ds-124-252 on 1 x sh-66-0.5, flyweight", Line(shims, "  drive spring"));
        Assert.Matches("drive spring ds-[^ ]+ on 2 x sh-66-1\\.0$", Line(shims, "1 "));
        string[] ramp = await Printed("adjustable-ramp-pick.json");
        Assert.Contains("flyweight fw-meadow-38 (step 2, pin 8 g)", Line(ramp, "  drive spring"));
        Assert.Matches("flyweight [^ ]+ \\(step [0-9]+, pin [0-9]+ g\\)", Line(ramp, "1 "));
    }

    [Fact]
    public async Task Where_the_belt_does_not_start_the_machine_no_engagement_is_made_up()
    {
        string[] lines = await Printed("scooter-without-engagement-pick.json");

        Assert.Equal("Machine harbour-scooter: to hold 7700.0 rpm.", lines[0]);
        Assert.StartsWith("1     not by belt  ", Line(lines, "1 "));
    }

    [Theory]
    [InlineData(
        "vehicle-speed-pick.json",
        "to engage at 2150.0 rpm and to hold 8000.0 rpm at 8.3 m/s, 8020.0 rpm at 16.7 m/s, 8080.0 rpm at 31.3 m/s.")]
    [InlineData("peak-power-pick.json", "to engage at 2080.0 rpm and to hold the rpm of greatest power.")]
    [InlineData(
        "shift-curve-by-ratio-pick.json",
        "to engage at 2100.0 rpm and to hold 7750.0 rpm at ratio 3, 7950.0 rpm at ratio 1.5, 8100.0 rpm at ratio 0.8.")]
    public async Task The_goal_is_said_as_it_was_asked(string file, string goal) =>
        Assert.EndsWith(goal, (await Printed(file))[0]);

    [Fact]
    public async Task Where_nothing_fits_it_says_so_and_what_stands_in_the_way()
    {
        string[] lines = await Printed("nothing-fits-pick.json");

        Assert.Contains("No set of parts can be ranked.", lines);
        string all = string.Join('\n', lines);
        Assert.Contains("\nIn the way: No flyweight of the catalog both fits this machine and is what the request allows", all);
        Assert.DoesNotContain("\nTo buy", all);
    }

    private async Task<string[]> Printed(string file)
    {
        Answer answer = await service.PostAsync("/v1/picks", Repository.ReadSampleRequest(file));
        StringWriter text = new() { NewLine = "\n" };
        PickTable.Print(JsonSerializer.Deserialize<PickAnswerWire>(answer.Body, WireJson.Options)!, SampleCatalog.Snapshot, text);
        return text.ToString().Split('\n');
    }

    private static string Line(string[] lines, string beginning) =>
        lines.First(line => line.StartsWith(beginning, StringComparison.Ordinal));
}
