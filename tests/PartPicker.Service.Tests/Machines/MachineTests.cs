using System.Text.Json.Nodes;
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
