using System.Text.Json.Nodes;
using PartPicker.Parts;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Service.Tests.Parts;

[Collection(ServiceTests.Name)]
public sealed class PartListTests(Service service)
{
    [Theory]
    [InlineData("driveSpring", typeof(DriveSpring))]
    [InlineData("flyweight", typeof(Flyweight))]
    [InlineData("drivenSpring", typeof(DrivenSpring))]
    [InlineData("helix", typeof(Helix))]
    [InlineData("belt", typeof(Belt))]
    [InlineData("shim", typeof(Shim))]
    [InlineData("kit", typeof(Kit))]
    public async Task A_kind_lists_its_parts_by_id(string kind, Type type)
    {
        JsonNode list = await List($"kind={kind}&limit=200");

        string[] expected = [.. SampleCatalog.Snapshot.All<Part>().Where(type.IsInstanceOfType).Select(part => part.Id)];
        Assert.NotEmpty(expected);
        Assert.Equal(expected, Ids(list));
        Assert.Equal(expected.Length, (int?)list["total"]);
        Assert.Null(list["nextCursor"]);
        Assert.All(Items(list), item => Assert.Equal(kind, (string?)item["kind"]));
    }

    [Fact]
    public async Task A_list_says_which_catalog_and_which_units()
    {
        JsonNode metric = await List("kind=shim&limit=1");
        JsonNode inch = await List("kind=shim&limit=1&units=inch");

        Assert.NotEmpty((string)metric["catalogRevision"]!);
        Assert.Equal(("metric", "inch"), ((string)metric["units"]!, (string)inch["units"]!));
        Assert.Equal("mm", (string?)Items(metric)[0]["fields"]!["thickness"]!["unit"]);
        Assert.Equal("in", (string?)Items(inch)[0]["fields"]!["thickness"]!["unit"]);
    }

    [Theory]
    [InlineData("rate.min=60%20lbf/in&rate.max=120%20lbf/in")]
    [InlineData("rate.min=60+lb%2Fin&rate.max=120+lb%2Fin")]
    [InlineData("rate.max=21.0152202295716%20N/mm&rate.min=10.5076101147858%20N/mm")]
    [InlineData("rate.min=10507.6101147858%20N/m&rate.max=21.0152202295716%20kN/m")]
    public async Task A_range_of_a_quantity_may_be_written_in_any_unit(string range)
    {
        const double least = 60 * 175.12683524647636;
        const double most = 120 * 175.12683524647636;

        JsonNode list = await List($"kind=driveSpring&limit=200&{range}");

        string[] expected =
        [
            .. SampleCatalog.Snapshot.All<DriveSpring>()
                .Where(spring => PartFacts.Number(spring, Field(ItemKind.DriveSpring, "rate")) is >= least and <= most)
                .Select(spring => spring.Id),
        ];
        Assert.InRange(expected.Length, 2, 199);
        Assert.Equal(expected, Ids(list));
    }

    [Fact]
    public async Task The_ends_of_a_range_belong_to_it_and_a_part_that_does_not_state_the_field_does_not()
    {
        JsonNode list = await List("kind=helix&helixDeg.min=40&helixDeg.max=40&limit=200");

        Assert.Equal(
            SampleCatalog.Snapshot.All<Helix>().Where(helix => helix.HelixDeg == 40).Select(helix => helix.Id), Ids(list));
        Assert.NotEmpty(Ids(list));
        JsonNode open = await List("kind=helix&finishDeg.min=0&limit=200");
        Assert.InRange((int)open["total"]!, 1, SampleCatalog.Snapshot.All<Helix>().Count() - 1);
        Assert.All(Items(open), item => Assert.NotNull(item["fields"]!["finishDeg"]));
    }

    [Fact]
    public async Task Words_of_one_field_are_alternatives_and_two_fields_join()
    {
        JsonNode one = await List("kind=driveSpring&material=music-wire-a228&limit=200");
        JsonNode either = await List("kind=driveSpring&material=music-wire-a228&material=chrome-silicon-a401&limit=200");
        JsonNode both = await List("kind=driveSpring&material=music-wire-a228&ends=closedGround&limit=200");

        Assert.All(Items(one), item => Assert.Equal("music-wire-a228", (string?)item["fields"]!["material"]));
        Assert.Equal(
            SampleCatalog.Snapshot.All<DriveSpring>()
                .Where(s => s.Material is "music-wire-a228" or "chrome-silicon-a401").Select(s => s.Id),
            Ids(either));
        Assert.InRange((int)both["total"]!, 1, (int)one["total"]! - 1);
        Assert.All(Items(both), item => Assert.Equal("closedGround", (string?)item["fields"]!["ends"]));
    }

    [Fact]
    public async Task An_id_that_a_field_refers_to_is_a_word_too()
    {
        JsonNode list = await List("supersededBy=belt-992-hd");

        JsonNode only = Assert.Single(Items(list));
        Assert.Equal("belt-992-old", (string?)only["id"]);
        Assert.Equal("belt-992-hd", (string?)only["current"]!["id"]);
    }

    [Fact]
    public async Task Text_is_found_in_ids_and_names_whatever_the_case()
    {
        JsonNode list = await List("text=VALLEY+arm&limit=200");

        Assert.NotEmpty(Ids(list));
        Assert.Equal(
            SampleCatalog.Snapshot.All<Part>().Where(p => Has(p, "valley") && Has(p, "arm")).Select(p => p.Id),
            Ids(list));

        static bool Has(Part part, string word) =>
            $"{part.Id}\n{part.Name}".Contains(word, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task What_fits_a_machine_keeps_its_rules()
    {
        JsonNode all = await List("kind=flyweight&limit=200");
        JsonNode fitting = await List("kind=flyweight&limit=200&fitsMachine=harbour-scooter");

        Assert.InRange((int)fitting["total"]!, 1, (int)all["total"]! - 1);
        Assert.Contains("fw-roller-13", Ids(fitting));
        Assert.DoesNotContain("fw-valley-46", Ids(fitting));
        JsonNode belts = await List("kind=belt&fitsMachine=valley-two-seater");
        Assert.All(Items(belts), belt => Assert.Equal(992.0, (double)belt["fields"]!["pitchLength"]!["value"]!, 1.0));
        Assert.All(Items(belts), belt => Assert.Null(belt["current"]));
    }

    [Fact]
    public async Task An_outlet_shows_its_prices_and_stock_and_may_narrow_the_list_to_what_it_has()
    {
        Outlet outlet = SampleCatalog.Snapshot.FindOutlet("quay-stores")!;
        JsonNode shown = await List("kind=driveSpring&limit=200&outlet=quay-stores");
        JsonNode stocked = await List("kind=driveSpring&limit=200&outlet=quay-stores&inStock=true");

        foreach (JsonNode item in Items(shown))
        {
            Offer? offer = outlet.Offers.GetValueOrDefault((string)item["id"]!);
            Assert.Equal(offer is null, item["offer"] is null);
            Assert.Equal(offer?.PriceMinor, (long?)item["offer"]?["price"]?["amountMinor"]);
            Assert.Equal(offer?.PriceMinor is null ? null : outlet.Currency, (string?)item["offer"]?["price"]?["currency"]);
            Assert.Equal(offer?.Stock, (int?)item["offer"]?["stock"]);
        }

        Assert.Equal(
            SampleCatalog.Snapshot.All<DriveSpring>()
                .Where(s => outlet.Offers.GetValueOrDefault(s.Id)?.Stock > 0).Select(s => s.Id),
            Ids(stocked));
        Assert.NotEmpty(Ids(stocked));
        JsonNode either = await List("kind=driveSpring&limit=1&outlet=quay-stores&inStock=false");
        Assert.Equal((int?)shown["total"], (int?)either["total"]);
        Assert.All(Items(await List("kind=driveSpring")), item => Assert.Null(item["offer"]));
    }

    [Theory]
    [InlineData("sort=freeLength", 1)]
    [InlineData("sort=-freeLength", -1)]
    public async Task A_field_orders_the_list_and_parts_without_it_come_last(string sort, int direction)
    {
        JsonNode list = await List($"kind=driveSpring&limit=200&{sort}&precision=full");

        double?[] lengths = [.. Items(list).Select(FreeLength)];
        double[] known = [.. lengths.TakeWhile(length => length is not null).Select(length => length!.Value)];
        Assert.Equal(known.OrderBy(length => direction * length), known);
        Assert.True(known.Length > 10);
        Assert.All(lengths.Skip(known.Length), Assert.Null);

        static double? FreeLength(JsonNode item) =>
            (double?)(item["fields"]!["freeLength"] ?? item["computed"]!["freeLength"])?["value"];
    }

    [Fact]
    public async Task Words_order_a_list_too()
    {
        string?[] materials = [.. Items(await List("kind=driveSpring&limit=200&sort=material"))
            .Select(item => (string?)item["fields"]!["material"])];

        Assert.Equal(materials.OrderBy(word => word is null).ThenBy(word => word, StringComparer.Ordinal), materials);
    }

    [Fact]
    public async Task Facets_count_what_matches_on_all_pages_and_their_words_can_be_asked_for()
    {
        JsonNode list = await List("kind=driveSpring&limit=1&rate.min=10%20N/mm");

        JsonNode[] facets = [.. list["facets"]!.AsArray()!];
        Assert.Equal("kind", (string?)facets[0]["field"]);
        foreach (JsonNode facet in facets.Skip(1))
        {
            foreach (JsonNode? count in facet["counts"]!.AsArray())
            {
                JsonNode narrowed = await List(
                    $"kind=driveSpring&limit=1&rate.min=10%20N/mm&{facet["field"]}={count!["word"]}");
                Assert.Equal((int?)count["count"], (int?)narrowed["total"]);
            }
        }

        Assert.Contains("material", facets.Select(facet => (string)facet["field"]!));
    }

    [Theory]
    [InlineData("driveSpring", "rate")]
    [InlineData("driveSpring", "freeLength")]
    [InlineData("drivenSpring", "twistRate")]
    public async Task A_range_copied_from_a_shown_value_finds_its_part(string kind, string field)
    {
        foreach (string units in new[] { "metric", "inch" })
        {
            JsonNode list = await List($"kind={kind}&limit=200&units={units}");
            foreach (JsonNode item in Items(list))
            {
                if ((item["fields"]![field] ?? item["computed"]![field]) is not { } shown)
                    continue;
                string text = Uri.EscapeDataString($"{shown["value"]} {shown["unit"]}");
                Assert.Contains((string)item["id"]!, Ids(await List($"kind={kind}&limit=200&{field}.min={text}&{field}.max={text}")));
            }
        }
    }

    [Fact]
    public async Task The_rate_of_two_loads_is_that_of_the_line_through_both()
    {
        // (900 − 460) N over (72 − 47.5) mm.
        JsonNode part = (await service.GetAsync("/v1/parts/ds-103-202")).Json;
        Assert.Equal(17.959, (double)part["computed"]!["rate"]!["value"]!);

        // The wire of this one would give another rate; the loads count: (996 − 450) N over (76 − 50) mm.
        JsonNode wired = (await service.GetAsync("/v1/parts/ds-canyon-006")).Json;
        Assert.Equal(21, (double)wired["computed"]!["rate"]!["value"]!);
        Assert.Contains("ds-103-202", Ids(await List("kind=driveSpring&limit=200&rate.min=17.9%20N/mm&rate.max=18%20N/mm")));
    }

    [Fact]
    public async Task What_is_computed_is_shown_beside_what_is_stated_and_never_twice()
    {
        foreach (string kind in new[] { "driveSpring", "drivenSpring" })
        {
            JsonNode[] items = Items(await List($"kind={kind}&limit=200"));
            Assert.Contains(items, item => item["computed"]!.AsObject().Count > 0);
            foreach (JsonNode item in items)
            {
                IEnumerable<string> computed = item["computed"]!.AsObject().Select(c => c.Key);
                Assert.Empty(computed.Intersect(item["fields"]!.AsObject().Select(f => f.Key)));
            }
        }
    }

    [Fact]
    public async Task As_many_ranges_as_a_list_takes_may_have_both_ends()
    {
        string[] numbers = [.. PartListing.Fields(null).Select(named => named.First())
            .Where(field => field.Shape == FieldShape.Quantity && field.Dimension == UnitsNet.Length.Info)
            .Select(field => field.Name)];
        Assert.True(numbers.Length > PartQuery.MaxFilters);

        string[] ranges = [.. numbers.Select(name => $"{name}.min=0%20mm&{name}.max=9%20m")];
        Assert.Equal(0, (int)(await List(string.Join('&', ranges.Take(PartQuery.MaxFilters))))["total"]!);
        Answer answer = await service.GetAsync("/v1/parts?" + string.Join('&', ranges.Take(PartQuery.MaxFilters + 1)));

        Assert.Equal((400, "too-many-filters"), (answer.Status, answer.Code));
        Assert.Equal(numbers[PartQuery.MaxFilters] + ".min", (string?)answer.Json["errors"]![0]!["pointer"]);
    }

    [Fact]
    public async Task The_link_header_leads_to_the_next_page_and_is_left_out_on_the_last()
    {
        Answer first = await service.GetAsync("/v1/parts?kind=belt&limit=6&text=belt&sort=-pitchLength&topWidth.min=1%20in");
        string link = first.Header("Link")!;

        Assert.StartsWith("</v1/parts?kind=belt&limit=6&text=belt&sort=-pitchLength&topWidth.min=1%20in&cursor=", link);
        Assert.EndsWith(">; rel=\"next\"", link);
        Answer second = await service.GetAsync(link[1..link.IndexOf('>')]);
        Assert.Equal(200, second.Status);
        Assert.Null(second.Header("Link"));
        Assert.Equal(
            Ids(await List("kind=belt&limit=200&sort=-pitchLength&topWidth.min=1%20in")),
            Ids(first.Json).Concat(Ids(second.Json)));
    }

    [Fact]
    public async Task A_tag_that_is_known_gets_304()
    {
        Answer first = await service.GetAsync("/v1/parts?kind=shim");

        Assert.Equal(304, (await service.GetAsync("/v1/parts?kind=shim", first.Header("ETag"))).Status);
        Assert.NotEqual(first.Header("ETag"), (await service.GetAsync("/v1/parts?kind=kit")).Header("ETag"));
    }

    [Fact]
    public void No_field_has_the_name_of_another_parameter_and_one_name_means_one_thing()
    {
        IEnumerable<string> parameters = Api.Wire.PartListReader.Parameters.Select(parameter => parameter.Name);
        ILookup<string, Field> fields = PartListing.Fields(null);

        Assert.Empty(fields.Select(named => named.Key).Intersect(parameters));
        Assert.All(fields, named => Assert.Single(named.Select(f => (f.Shape, f.Dimension, f.ChoiceType)).Distinct()));
        Assert.DoesNotContain(fields, named => named.Key.EndsWith(".min") || named.Key.EndsWith(".max"));
    }

    private async Task<JsonNode> List(string query)
    {
        Answer answer = await service.GetAsync("/v1/parts?" + query);
        Assert.True(answer.Status == 200, answer.Text);
        return answer.Json;
    }

    private static JsonNode[] Items(JsonNode list) => [.. list["items"]!.AsArray()!];

    private static IEnumerable<string> Ids(JsonNode list) => Items(list).Select(item => (string)item["id"]!);

    private static Field Field(ItemKind kind, string name) => FieldRegistry.For(kind).Single(field => field.Name == name);
}
