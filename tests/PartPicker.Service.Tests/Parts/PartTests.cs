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
    public async Task A_replaced_number_is_shown_and_says_what_stands_for_it_today()
    {
        Answer answer = await service.GetAsync("/v1/parts/ds-95-195");

        Assert.Equal(200, answer.Status);
        Assert.Equal("ds-95-195", (string?)answer.Json["id"]);
        Assert.NotNull(answer.Json["fields"]!["supersededBy"]);
        Assert.Equal("ds-96-201", (string?)answer.Json["current"]!["id"]);
        Assert.Equal(
            SampleCatalog.Snapshot.FindPart("ds-96-201")!.Name, (string?)answer.Json["current"]!["name"]);
        Assert.Null((await service.GetAsync("/v1/parts/ds-96-201")).Json["current"]);
    }

    [Fact]
    public async Task What_is_not_stated_is_computed_where_it_can_be()
    {
        DriveSpring spring = SampleCatalog.Snapshot.All<DriveSpring>().First(s => s.Rate is null && s.KnownByGeometry);

        JsonNode part = (await service.GetAsync($"/v1/parts/{spring.Id}?precision=full")).Json;

        Assert.Null(part["fields"]!["rate"]);
        double rate = (double)part["computed"]!["rate"]!["value"]!;
        Assert.Equal("N/mm", (string?)part["computed"]!["rate"]!["unit"]);
        // Closed form: G d⁴ / (8 D³ N), with a shear modulus that no wire of the table lies outside of.
        double d = spring.WireDiameter!.Value.Millimeters;
        double mean = spring.OutsideDiameter!.Value.Millimeters - d;
        double perModulus = Math.Pow(d, 4) / (8 * Math.Pow(mean, 3) * spring.ActiveCoils!.Value);
        Assert.InRange(rate / perModulus, 65_000, 85_000);
    }

    [Fact]
    public async Task A_kit_says_what_is_in_it_and_which_clutches_it_is_listed_for()
    {
        JsonNode kit = (await service.GetAsync("/v1/parts/kit-valley-high")).Json;

        Assert.Equal(
            """[{"part":"ds-116-219","packs":1},{"part":"fw-valley-43","packs":1}]""",
            kit["fields"]!["contents"]!.ToJsonString());
        Assert.Equal(
            """[{"clutch":"valley-drive","fromYear":2017,"toYear":2024}]""",
            kit["fields"]!["fitsClutches"]!.ToJsonString());
    }

    [Theory]
    [InlineData("quay-stores")]
    [InlineData("valley-counter")]
    public async Task An_outlet_that_is_named_makes_its_offer(string outlet)
    {
        Outlet seller = SampleCatalog.Snapshot.FindOutlet(outlet)!;
        Part sold = SampleCatalog.Snapshot.FindPart(seller.Offers.First(offer => offer.Value.PriceMinor is not null).Key)!;

        JsonNode offer = (await service.GetAsync($"/v1/parts/{sold.Id}?outlet={outlet}")).Json["offer"]!;

        Assert.Equal(seller.Offers[sold.Id].PriceMinor, (long?)offer["price"]!["amountMinor"]);
        Assert.Equal(seller.Currency, (string?)offer["price"]!["currency"]);
        Assert.Equal(seller.Offers[sold.Id].Stock, (int?)offer["stock"]);
        Assert.Null((await service.GetAsync($"/v1/parts/{sold.Id}")).Json["offer"]);
        Part other = SampleCatalog.Snapshot.All<Part>().First(part => !seller.Offers.ContainsKey(part.Id));
        Assert.Null((await service.GetAsync($"/v1/parts/{other.Id}?outlet={outlet}")).Json["offer"]);
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
