using System.Text.Json.Nodes;
using PartPicker.Parts;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Service.Tests.Parts;

/// <summary>Lists of parts: filters against a plain scan, pages that join, and every mistake by its place.</summary>
[Collection(ServiceTests.Name)]
public sealed class PartListTests(Service service)
{
    private static readonly Part[] All = [.. SampleCatalog.Snapshot.All<Part>()];

    [Fact]
    public async Task Pages_join_to_the_whole_list_in_its_order()
    {
        foreach (string query in new[] { "", "kind=driveSpring&sort=-rate", "sort=freeLength&text=spring", "kind=helix&sort=mount" })
        {
            string[] whole = await Ids($"{query}&limit=200", 1_000);
            Assert.Equal(whole.Length, whole.Distinct().Count());
            Assert.Equal(whole, await Ids($"{query}&limit=7", 7));
        }
    }

    [Fact]
    public async Task A_range_in_any_unit_is_what_a_plain_scan_finds()
    {
        string[] listed = await Ids("kind=driveSpring&rate.min=100 lbf/in&rate.max=21 N/mm&limit=200", 1_000);
        string[] scanned =
        [
            .. All.OfType<DriveSpring>()
                .Where(s => PartFacts.Number(s, Field(s, "rate")) is { } rate && rate >= 100 * 175.12683524647636 && rate <= 21_000)
                .Select(s => s.Id),
        ];
        Assert.NotEmpty(scanned);
        Assert.Equal(scanned, listed);
    }

    [Fact]
    public async Task Words_text_stock_and_fit_narrow_the_list()
    {
        Assert.Equal(
            All.OfType<DriveSpring>().Where(s => s.Material is "music-wire-a228" or "chrome-silicon-a401").Select(s => s.Id),
            await Ids("kind=driveSpring&material=music-wire-a228&material=chrome-silicon-a401&limit=200", 1_000));
        Outlet outlet = SampleCatalog.Snapshot.FindOutlet("valley-counter")!;
        Assert.Equal(
            All.Where(p => outlet.Offers.GetValueOrDefault(p.Id)?.Stock > 0).Select(p => p.Id),
            await Ids("outlet=valley-counter&inStock=true&limit=200", 1_000));
        Assert.Equal(
            All.Where(p => p.Id.Contains("VALLEY", StringComparison.OrdinalIgnoreCase)
                || p.Name.Contains("valley", StringComparison.OrdinalIgnoreCase)).Select(p => p.Id),
            await Ids("text=VaLLey&limit=200", 1_000));
        string[] fitting = await Ids("kind=helix&fitsMachine=valley-two-seater&limit=200", 1_000);
        Assert.Contains("hx-43-37", fitting);
        Assert.DoesNotContain("hx-44-small", fitting);
    }

    [Fact]
    public async Task Facets_count_what_matches_and_not_what_is_shown()
    {
        JsonNode page = (await service.GetAsync("/v1/parts?limit=1")).Json;
        Assert.Equal(All.Length, (int)page["total"]!);
        JsonNode kinds = page["facets"]!.AsArray().Single(f => (string?)f!["field"] == "kind")!;
        Assert.Equal(All.Length, kinds["counts"]!.AsArray().Sum(c => (int)c!["count"]!));
    }

    [Fact]
    public async Task A_next_page_is_linked_and_a_cursor_belongs_to_its_question()
    {
        Answer first = await service.GetAsync("/v1/parts?kind=driveSpring&limit=3");
        string cursor = (string)first.Json["nextCursor"]!;
        Assert.Contains("rel=\"next\"", first.Header("Link"));
        Assert.Contains(cursor, first.Header("Link"));
        Assert.Equal(200, (await service.GetAsync($"/v1/parts?kind=driveSpring&limit=5&cursor={cursor}")).Status);
        foreach (string other in new[] { "kind=helix", "kind=driveSpring&sort=rate", "kind=driveSpring&text=a", "kind=driveSpring&rate.min=1 N/mm" })
        {
            Answer refused = await service.GetAsync($"/v1/parts?{other}&cursor={cursor}");
            Assert.Equal((400, "cursor-mismatch"), (refused.Status, refused.Code));
        }
    }

    [Fact]
    public async Task A_replaced_part_number_shows_the_current_one()
    {
        Part old = All.First(p => p.SupersededBy is not null);
        JsonNode shown = (await service.GetAsync($"/v1/parts/{old.Id}")).Json;
        Assert.Equal(SampleCatalog.Snapshot.FindCurrentPart(old.Id)!.Id, (string?)shown["current"]!["id"]);
    }

    [Theory]
    [InlineData("kind=wheel", "kind unknown-word")]
    [InlineData("kind=driveSpring&kind=helix", "kind out-of-range")]
    [InlineData("colour=any", "colour unknown-parameter")]
    [InlineData("kind=helix&rate.min=5 N/mm", "rate.min unknown-field")]
    [InlineData("name.min=5", "name.min unknown-field")]
    [InlineData("rate.min=5", "rate.min unreadable-quantity")]
    [InlineData("rate.min=5 mm", "rate.min unreadable-quantity")]
    [InlineData("rate.min=5,5 N/mm", "rate.min unreadable-quantity")]
    [InlineData("rate.min=", "rate.min out-of-range")]
    [InlineData("rate.min=9 N/mm&rate.max=8 N/mm", "rate.min out-of-range")]
    [InlineData("activeCoils.min=five", "activeCoils.min out-of-range")]
    [InlineData("activeCoils.min=NaN", "activeCoils.min out-of-range")]
    [InlineData("activeCoils.min=1e999", "activeCoils.min out-of-range")]
    [InlineData("helixDeg.max=40 deg", "helixDeg.max out-of-range")]
    [InlineData("sort=none", "sort unknown-field")]
    [InlineData("sort=-", "sort unknown-field")]
    [InlineData("sort=loadTable", "sort unknown-field")]
    [InlineData("kind=helix&sort=rate", "sort unknown-field")]
    [InlineData("limit=0", "limit out-of-range")]
    [InlineData("limit=201", "limit out-of-range")]
    [InlineData("limit=-1", "limit out-of-range")]
    [InlineData("limit=2.5", "limit out-of-range")]
    [InlineData("limit=ten", "limit out-of-range")]
    [InlineData("cursor=none", "cursor cursor-invalid")]
    [InlineData("cursor=%F0%9F%92%A5", "cursor cursor-invalid")]
    [InlineData("cursor=e30", "cursor cursor-invalid")]
    [InlineData("cursor=", "cursor out-of-range")]
    [InlineData("fitsMachine=moon-buggy", "fitsMachine unknown-machine")]
    [InlineData("fitsMachine=", "fitsMachine out-of-range")]
    [InlineData("outlet=nowhere", "outlet unknown-outlet")]
    [InlineData("inStock=true", "inStock outlet-needed")]
    [InlineData("inStock=yes&outlet=valley-counter", "inStock unknown-word")]
    [InlineData("units=imperial", "units unknown-word")]
    [InlineData("precision=half", "precision unknown-word")]
    [InlineData("text=", "text out-of-range")]
    [InlineData("loadTable=5", "loadTable unknown-parameter")]
    [InlineData("rate=5 N/mm", "rate unknown-parameter")]
    [InlineData("kind=wheel&limit=0&sort=none&units=imperial",
        "units unknown-word", "kind unknown-word", "sort unknown-field", "limit out-of-range")]
    public async Task A_mistake_is_told_by_its_parameter(string query, params string[] expected)
    {
        Answer answer = await service.GetAsync($"/v1/parts?{query}");
        Assert.Equal(400, answer.Status);
        Assert.Equal("application/problem+json", answer.MediaType);
        Assert.Equal(expected, answer.Json["errors"]!.AsArray().Select(e => $"{e!["parameter"]} {e["code"]}"));
    }

    [Fact]
    public async Task More_filters_than_the_limit_are_refused()
    {
        string many = string.Join("&", FieldRegistry.For(ItemKind.DriveSpring).Concat(FieldRegistry.For(ItemKind.Flyweight))
            .Where(f => f.Shape == FieldShape.Quantity).Select(f => f.Name).Distinct().Take(PartQuery.MaxFilters + 1)
            .Select(name => $"{name}.min={Least(name)}"));
        Answer answer = await service.GetAsync($"/v1/parts?{many}");
        Assert.Contains(answer.Json["errors"]!.AsArray(), e => ((string)e!["expected"]!).Contains("filters", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("use=snow", "plateau-snow-machine")]
    [InlineData("startDevice=centrifugalClutch", "harbour-scooter")]
    [InlineData("driveFamily=rollerOnAdjustableRamp", "meadow-carrier")]
    [InlineData("text=canyon", "canyon-racer")]
    public async Task Machines_are_found_by_what_they_are(string query, string id)
    {
        JsonNode list = (await service.GetAsync($"/v1/machines?{query}")).Json;
        Assert.Equal([id], list["items"]!.AsArray().Select(m => (string)m!["id"]!));
    }

    [Theory]
    [InlineData("year=1800", "year out-of-range")]
    [InlineData("driveFamily=wheel", "driveFamily unknown-word")]
    [InlineData("wheels=4", "wheels unknown-parameter")]
    public async Task A_mistake_about_machines_is_told_by_its_parameter(string query, string expected)
    {
        Answer answer = await service.GetAsync($"/v1/machines?{query}");
        Assert.Equal(400, answer.Status);
        JsonNode error = Assert.Single(answer.Json["errors"]!.AsArray())!;
        Assert.Equal(expected, $"{error["parameter"]} {error["code"]}");
    }

    private async Task<string[]> Ids(string query, int mostPerPage)
    {
        var ids = new List<string>();
        string? cursor = null;
        do
        {
            Answer answer = await service.GetAsync($"/v1/parts?{query}{(cursor is null ? "" : $"&cursor={cursor}")}");
            Assert.Equal(200, answer.Status);
            JsonArray items = answer.Json["items"]!.AsArray();
            Assert.True(items.Count <= mostPerPage);
            ids.AddRange(items.Select(p => (string)p!["id"]!));
            cursor = (string?)answer.Json["nextCursor"];
        }
        while (cursor is not null);

        return [.. ids];
    }

    private static Field Field(Part part, string name) => FieldRegistry.For(part.Kind).Single(f => f.Name == name);

    private static string Least(string name)
    {
        Field field = FieldRegistry.For(ItemKind.DriveSpring).Concat(FieldRegistry.For(ItemKind.Flyweight)).First(f => f.Name == name);
        string unit = field.Dimension!.Name switch
        {
            "Length" => "mm",
            "Mass" => "g",
            "Force" => "N",
            _ => "N/mm",
        };
        return $"0 {unit}";
    }
}
