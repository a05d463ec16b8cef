using System.Text.Json.Nodes;
using PartPicker.Parts;
using Xunit;

namespace PartPicker.Service.Tests.Parts;

[Collection(ServiceTests.Name)]
public sealed class PartTests(Service service)
{
    [Fact]
    public async Task A_part_shows_its_values_in_the_order_of_the_registry()
    {
        JsonNode part = (await service.GetAsync("/v1/parts/ds-96-201")).Json;

        Assert.Equal("driveSpring", (string?)part["kind"]);
        Assert.Equal("""{"value":5.4,"unit":"mm"}""", part["fields"]!["wireDiameter"]!.ToJsonString());
        string[] names = [.. part["fields"]!.AsObject().Select(field => field.Key)];
        Assert.Equal(
            FieldRegistry.For(ItemKind.DriveSpring).Select(field => field.Name).Where(names.Contains), names);
    }

    [Fact]
    public async Task Every_part_of_the_catalog_can_be_shown_in_both_systems()
    {
        foreach (Part part in SampleCatalog.Snapshot.All<Part>())
        {
            foreach (string units in new[] { "metric", "inch" })
            {
                JsonNode shown = (await service.GetAsync($"/v1/parts/{part.Id}?units={units}")).Json;

                int stated = FieldRegistry.For(part.Kind).Count(field =>
                    field.Name is not ("id" or "name") && field.Get(part) is not null);
                Assert.Equal(stated, shown["fields"]!.AsObject().Count);
            }
        }
    }

    [Fact]
    public async Task A_curve_has_units_and_points_and_a_list_has_quantities()
    {
        JsonNode part = (await service.GetAsync("/v1/parts/fw-valley-46")).Json;

        JsonNode curve = part["fields"]!["radiusCurve"]!;
        Assert.Equal(("mm", "mm"), ((string)curve["xUnit"]!, (string)curve["yUnit"]!));
        Assert.All(curve["points"]!.AsArray(), point => Assert.Equal(2, point!.AsArray().Count));
        Assert.All(part["fields"]!["tipMasses"]!.AsArray(), mass => Assert.Equal("g", (string?)mass!["unit"]));
    }

    [Fact]
    public async Task Bare_angles_of_a_curve_are_degrees_again()
    {
        Helix helix = SampleCatalog.Snapshot.All<Helix>().First(h => h.AnglePoints is not null);

        JsonNode curve = (await service.GetAsync($"/v1/parts/{helix.Id}")).Json["fields"]!["anglePoints"]!;

        Assert.Equal("", (string?)curve["yUnit"]);
        Assert.Equal(helix.AnglePoints![0].Y * 180 / Math.PI, (double)curve["points"]![0]![1]!, 1e-9);
    }
}
