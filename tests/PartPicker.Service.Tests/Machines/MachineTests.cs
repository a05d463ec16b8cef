using System.Text.Json.Nodes;
using Microsoft.Extensions.DependencyInjection;
using PartPicker.Api.StartUp;
using PartPicker.Parts;
using Xunit;

namespace PartPicker.Service.Tests.Machines;

[Collection(ServiceTests.Name)]
public sealed class MachineTests(Service service)
{
    [Fact]
    public async Task Every_machine_of_the_catalog_is_listed()
    {
        JsonNode list = (await service.GetAsync("/v1/machines")).Json;

        Assert.Equal(
            SampleCatalog.Snapshot.Machines.Select(machine => machine.Machine.Id),
            list["items"]!.AsArray().Select(item => (string)item!["id"]!));
        Assert.NotEmpty((string)list["catalogRevision"]!);
    }

    [Fact]
    public async Task A_machine_shows_every_value_with_its_origin()
    {
        JsonNode machine = (await service.GetAsync("/v1/machines/valley-two-seater")).Json;

        Assert.Equal(
            ["machine", "engine", "driveClutch", "drivenClutch", "belt", "gearing"],
            machine["pieces"]!.AsArray().Select(piece => (string)piece!["kind"]!));
        JsonNode clutch = machine["pieces"]![2]!;
        Assert.Equal("""{"value":34,"unit":"mm"}""", clutch["fields"]!["contactPitchRadius"]!.ToJsonString());
        Assert.All(
            machine["pieces"]!.AsArray().SelectMany(piece => piece!["origins"]!.AsObject()),
            origin => Assert.Contains((string)origin.Value!, new[] { "measured", "drawing", "classDefault" }));
        Assert.Equal("measured", (string?)clutch["origins"]!["springLength"]);
        Assert.Equal("ds-96-201", (string?)machine["fitted"]!["driveSpring"]!["id"]);
        Assert.NotEmpty(machine["baselines"]!.AsArray());
        Assert.Equal(["1", "2", "3", "4"], machine["holes"]!.AsArray().Select(hole => (string)hole!["name"]!));
    }

    [Theory]
    [InlineData("use=snowy")]
    [InlineData("use=Snow", "plateau-snow-machine")]
    [InlineData("driveFamily=slidingRoller", "harbour-scooter")]
    [InlineData("driveFamily=rollerOnAdjustableRamp", "meadow-carrier")]
    [InlineData("drivenFamily=compressionOnly", "harbour-scooter")]
    [InlineData("startDevice=centrifugalClutch", "harbour-scooter")]
    [InlineData("startDevice=oneWayHub")]
    [InlineData("year=2012", "meadow-carrier")]
    [InlineData("year=2016", "harbour-scooter", "meadow-carrier", "plateau-snow-machine", "ridge-climber")]
    [InlineData("year=2024", "canyon-racer", "harbour-scooter", "valley-two-seater")]
    [InlineData("year=2099", "harbour-scooter")]
    [InlineData("text=RACER", "canyon-racer")]
    [InlineData("text=two+valley", "valley-two-seater")]
    [InlineData("text=two+harbour")]
    [InlineData("startDevice=belt&year=2024&use=sport", "canyon-racer")]
    public async Task Machines_are_filtered_by_what_they_are(string query, params string[] expected)
    {
        JsonNode list = (await service.GetAsync("/v1/machines?" + query)).Json;

        Assert.Equal(expected, list["items"]!.AsArray().Select(item => (string)item!["id"]!));
    }

    [Fact]
    public async Task A_machine_without_years_covers_every_year()
    {
        using Service own = new();
        await own.GetAsync("/v1/machines");
        CurrentCatalog current = own.Services.GetRequiredService<CurrentCatalog>();
        CatalogContents contents = current.Snapshot!.Contents;
        Machine ageless = contents.Items.OfType<Machine>().First() with { Id = "ageless", FromYear = null, ToYear = null };
        current.Snapshot = new CatalogSnapshot("ageless", contents with { Items = [.. contents.Items, ageless] });

        Assert.Contains("\"ageless\"", (await own.GetAsync("/v1/machines?year=1950")).Text);
        JsonNode shown = (await own.GetAsync("/v1/machines/ageless")).Json;
        Assert.Null(shown["fromYear"]);
        Assert.Null(shown["toYear"]);
    }

    [Fact]
    public async Task A_machine_says_what_kind_it_is_in_the_list_and_by_itself()
    {
        JsonNode listed = (await service.GetAsync("/v1/machines?text=harbour")).Json["items"]![0]!;
        JsonNode shown = (await service.GetAsync("/v1/machines/harbour-scooter")).Json;

        foreach (JsonNode machine in new[] { listed, shown })
        {
            Assert.Equal(("road", 2016, null), ((string?)machine["use"], (int?)machine["fromYear"], (int?)machine["toYear"]));
            Assert.Equal(
                ("slidingRoller", "compressionOnly", "centrifugalClutch"),
                ((string?)machine["driveFamily"], (string?)machine["drivenFamily"], (string?)machine["startDevice"]));
        }

        Assert.Equal("[\"none\"]", listed["holes"]!.ToJsonString());
        Assert.Null(shown["baselines"]![0]!["engagementRpm"]);
    }

    [Fact]
    public async Task Pairs_of_holes_and_settings_of_an_adjuster_are_told_by_the_names_that_a_set_takes()
    {
        JsonNode[] pairs = [.. (await service.GetAsync("/v1/machines/ridge-climber")).Json["holes"]!.AsArray()!];
        JsonNode[] settings = [.. (await service.GetAsync("/v1/machines/canyon-racer")).Json["holes"]!.AsArray()!];

        Assert.Equal(6, pairs.Length);
        Assert.Equal(
            """{"name":"3-B","sheaveHole":"3","helixHole":"B","twistDeg":100}""",
            pairs.Single(pair => (string?)pair["name"] == "3-B").ToJsonString());
        Assert.Equal("40", (string?)settings[0]["name"]);
        Assert.All(settings, setting => Assert.Equal((string?)setting["name"], $"{setting["twistDeg"]}"));
        Assert.True(settings.Length > 2);
        Assert.All(settings, setting => Assert.Null(setting["sheaveHole"]));
    }

    [Fact]
    public async Task Inch_units_are_used_where_they_are_asked_for()
    {
        JsonNode machine = (await service.GetAsync("/v1/machines/valley-two-seater?units=inch")).Json;

        JsonNode fields = machine["pieces"]![2]!["fields"]!;
        Assert.Equal("""{"value":1.3386,"unit":"in"}""", fields["contactPitchRadius"]!.ToJsonString());
    }

    [Fact]
    public async Task A_tag_that_is_known_gets_304()
    {
        Answer first = await service.GetAsync("/v1/machines");

        Assert.Equal(304, (await service.GetAsync("/v1/machines", first.Header("ETag"))).Status);
        Assert.NotEqual(first.Header("ETag"), (await service.GetAsync("/v1/machines/valley-two-seater")).Header("ETag"));
    }
}
