using System.Text.Json.Nodes;
using PartPicker.Parts;
using Xunit;

namespace PartPicker.Service.Tests.Picks;

/// <summary>What a request may wish beyond its target, and what an answer says beyond its ranks.</summary>
[Collection(ServiceTests.Name)]
public sealed class WidePickTests(Service service)
{
    private const string Least = """
        "machine": "valley-two-seater", "targets": { "engagementRpm": 2200, "shiftRpm": 7800 }, "ratioPoints": 3
        """;

    private const string DriveSide = """ "keep": ["drivenSpring", "hole", "helix"] """;

    [Fact]
    public async Task What_is_excluded_is_never_proposed_and_is_told()
    {
        JsonNode before = await Ask(DriveSide);
        JsonNode best = Picks(before)[0]["parts"]!;
        string[] first = [(string)best["driveSpring"]!["id"]!, (string)best["flyweight"]!["id"]!];

        JsonNode after = await Ask($$"""{{DriveSide}}, "exclude": ["{{first[0]}}", "{{first[1]}}"] """);

        foreach (JsonNode pick in Picks(after))
        {
            Assert.NotEqual(first[0], (string?)pick["parts"]!["driveSpring"]!["id"]);
            Assert.NotEqual(first[1], (string?)pick["parts"]!["flyweight"]!["id"]);
        }

        JsonNode[] refusals = [.. after["refusals"]!.AsArray().Where(r => (string?)r!["rule"] == "excluded")!];
        Assert.Equal(first.ToHashSet(), refusals.Select(r => (string)r["part"]!).ToHashSet());
        // It is no number that refuses them.
        Assert.All(refusals, r => Assert.True(r["measured"] is null && r["limit"] is null));
        Assert.Contains(after["refusals"]!.AsArray(), r => (string?)r!["measured"]?["unit"] == "mm");
    }

    [Fact]
    public async Task A_shopping_list_adds_up_and_serves_every_change_that_needs_a_part()
    {
        JsonNode answer = await Ask(""" "keep": ["helix", "hole"], "outlet": "valley-counter", "count": 50 """);
        Outlet outlet = SampleCatalog.Snapshot.FindOutlet("valley-counter")!;

        int priced = 0;
        foreach (JsonNode pick in Picks(answer))
        {
            JsonNode[] lines = [.. pick["toBuy"]!.AsArray()!];
            // Other masses in the same arms need no new arms.
            IEnumerable<string> bought = pick["changes"]!.AsArray().Select(slot => (string)slot!)
                .Where(slot => (string?)pick["parts"]![slot]!["id"] != (string?)answer["fitted"]!["parts"]![slot]!["id"]);
            Assert.Equal(bought.Order(StringComparer.Ordinal), lines.SelectMany(Covers).Order(StringComparer.Ordinal));
            foreach (JsonNode line in lines)
            {
                Offer? offer = outlet.Offers.GetValueOrDefault((string)line["id"]!);
                Assert.Equal(offer?.Stock, (int?)line["stock"]);
                Assert.Equal(offer?.PriceMinor * (int)line["packs"]!, (long?)line["price"]?["amountMinor"]);
            }

            if (pick["price"] is { } price)
            {
                priced++;
                Assert.Equal("EUR", (string?)price["currency"]);
                Assert.Equal((long)price["amountMinor"]!, lines.Sum(line => (long)line["price"]!["amountMinor"]!));
            }
        }

        Assert.True(priced > 5);
        Assert.Contains(Picks(answer), pick => (int?)pick["labourMinutes"] > 0);
        Assert.All(Picks(await Ask(DriveSide)), pick => Assert.Empty(pick["toBuy"]!.AsArray()));

        // Three arms: a mass that changes is needed three times.
        JsonNode[] masses = [.. Picks(answer).SelectMany(pick => pick["massesToFit"]!.AsArray())!];
        Assert.NotEmpty(masses);
        Assert.All(masses, mass => Assert.Equal((3, "g"), ((int)mass["pieces"]!, (string)mass["mass"]!["unit"]!)));

        static IEnumerable<string> Covers(JsonNode line) => line["covers"]!.AsArray().Select(slot => (string)slot!);
    }

    [Fact]
    public async Task What_is_out_of_stock_names_what_comes_closest()
    {
        JsonNode answer = await Ask($$"""{{DriveSide}}, "outlet": "valley-counter", "count": 50 """);

        JsonNode[] lines = [.. Picks(answer).SelectMany(pick => pick["toBuy"]!.AsArray())!];
        Assert.Contains(lines, line => (int?)line["stock"] == 0 && line["alternate"] is not null);
        Assert.All(
            lines.Where(line => (int?)line["stock"] >= (int)line["packs"]!), line => Assert.Null(line["alternate"]));
        Outlet outlet = SampleCatalog.Snapshot.FindOutlet("valley-counter")!;
        foreach (JsonNode alternate in lines.Select(line => line["alternate"]).OfType<JsonNode>())
        {
            Assert.All(
                alternate["toBuy"]!.AsArray(),
                line => Assert.True(outlet.Offers[(string)line!["id"]!].Stock >= (int)line["packs"]!));
            Assert.NotEmpty(alternate["toBuy"]!.AsArray());
            Assert.NotNull(alternate["parts"]!["helix"]!["id"]);
            Assert.True((double?)alternate["miss"] >= 0);
            Assert.NotNull((bool?)alternate["withinTolerance"]);
        }
    }

    [Fact]
    public async Task Only_what_is_in_stock_is_only_what_is_in_stock()
    {
        JsonNode answer = await Ask($$"""{{DriveSide}}, "outlet": "quay-stores", "inStockOnly": true, "count": 50 """);

        Assert.NotEmpty(Picks(answer));
        Assert.All(
            Picks(answer).SelectMany(pick => pick["toBuy"]!.AsArray()),
            line => Assert.True((int?)line!["stock"] >= (int)line["packs"]!));
        Assert.Contains(answer["refusals"]!.AsArray(), refusal => (string?)refusal!["rule"] == "in-stock");
    }

    [Fact]
    public async Task A_price_ceiling_holds_and_an_unknown_price_does_not_pass_it()
    {
        JsonNode answer = await Ask($$"""{{DriveSide}}, "outlet": "valley-counter", "priceCeilingMinor": 4000, "count": 50 """);

        Assert.NotEmpty(Picks(answer));
        Assert.All(Picks(answer), pick => Assert.InRange((long)pick["price"]!["amountMinor"]!, 0, 4000));
    }

    [Fact]
    public async Task Where_every_rule_must_be_checked_no_pick_has_a_gap()
    {
        const string racer = """
            "machine": "canyon-racer", "targets": { "engagementRpm": 2200, "shiftRpm": 8050 }, "ratioPoints": 3, "count": 50,
            "keep": ["driveSpring", "flyweight"]
            """;
        JsonNode free = (await service.PostAsync("/v1/picks", $$"""{ {{racer}} }""")).Json;
        JsonNode strict = (await service.PostAsync("/v1/picks", $$"""{ {{racer}}, "demandChecked": true }""")).Json;

        JsonNode[] gaps = [.. Picks(free).SelectMany(pick => pick["fitGaps"]!.AsArray())!];
        Assert.NotEmpty(gaps);
        Assert.All(gaps, gap => Assert.Contains((string)gap["ground"]!, new[] { "listed", "unknown" }));
        Assert.All(gaps, gap => Assert.NotEmpty((string)gap["missing"]!));
        Assert.NotEmpty(Picks(strict));
        Assert.All(Picks(strict), pick => Assert.Empty(pick["fitGaps"]!.AsArray()));
        Assert.Contains(strict["refusals"]!.AsArray(), refusal => (string?)refusal!["rule"] == "checked-fit");
    }

    [Fact]
    public async Task Least_work_comes_first_where_it_is_asked_for()
    {
        JsonNode answer = await Ask(
            """ "keep": ["hole", "helix"], "rankBy": "leastWork", "outlet": "valley-counter", "count": 50 """);

        JsonNode[] within = [.. Picks(answer).TakeWhile(pick => (bool)pick["withinTolerance"]!)];
        int[] changes = [.. within.Select(pick => pick["changes"]!.AsArray().Count)];
        Assert.Equal(changes.Order(), changes);
        Assert.True(changes.Length > 1);
        Assert.Equal(changes[0], answer["fewestChanges"]!["changes"]!.AsArray().Count);
    }

    [Fact]
    public async Task A_group_is_given_once()
    {
        JsonNode answer = await Ask(""" "keep": ["helix"], "group": true, "count": 50 """);

        string[] groups =
            [.. Picks(answer).Select(pick => $"{pick["parts"]!["driveSpring"]!["id"]} {pick["parts"]!["flyweight"]!["id"]}")];
        Assert.True(groups.Length > 3);
        Assert.Equal(groups.Length, groups.Distinct().Count());
    }

    [Fact]
    public async Task The_cheapest_and_the_fewest_changes_and_what_nothing_beats_are_shown_in_short()
    {
        JsonNode answer = await Ask(""" "keep": ["helix", "hole"], "outlet": "valley-counter", "count": 50 """);

        JsonNode[] undominated = [.. answer["undominated"]!.AsArray()!];
        Assert.InRange(undominated.Length, 1, 20);
        Assert.InRange((int)answer["undominatedCount"]!, undominated.Length, int.MaxValue);
        Assert.Equal(Enumerable.Range(1, undominated.Length), undominated.Select(pick => (int)pick["rank"]!));
        Assert.DoesNotContain(undominated, one => undominated.Any(other => other != one && Beats(other, one)));
        Assert.All(undominated, pick => Assert.False(pick.AsObject().ContainsKey("explanation")));
        long cheapest = (long)answer["cheapest"]!["price"]!["amountMinor"]!;
        int fewest = answer["fewestChanges"]!["changes"]!.AsArray().Count;
        foreach (JsonNode pick in Picks(answer).Where(pick => (bool)pick["withinTolerance"]!))
        {
            Assert.True(pick["price"] is null || (long)pick["price"]!["amountMinor"]! >= cheapest);
            Assert.True(pick["changes"]!.AsArray().Count >= fewest);
        }

        static bool Beats(JsonNode one, JsonNode other) =>
            (double)one["miss"]! < (double)other["miss"]! && Price(one) < Price(other)
            && one["changes"]!.AsArray().Count < other["changes"]!.AsArray().Count;

        static long Price(JsonNode pick) => (long?)pick["price"]?["amountMinor"] ?? long.MaxValue;
    }

    [Fact]
    public async Task Where_nothing_fits_it_is_shown_what_would_without_one_rule()
    {
        Answer answer = await service.PostAsync("/v1/picks", Repository.ReadSampleRequest("nothing-fits-pick.json"));

        Assert.Empty(Picks(answer.Json));
        Assert.Null(answer.Json["cheapest"]);
        Assert.Null(answer.Json["fewestChanges"]);
        JsonNode[] waivers = [.. answer.Json["waivers"]!.AsArray()!];
        Assert.NotEmpty(waivers);
        foreach (JsonNode waiver in waivers)
        {
            Assert.True((long)waiver["refused"]! > 0);
            foreach (JsonNode? set in waiver["sets"]!.AsArray())
            {
                Assert.NotEmpty((string)set!["parts"]!["flyweight"]!["id"]!);
                Assert.NotEmpty(set["broken"]!.AsArray());
                Assert.All(set["broken"]!.AsArray(), broken => Assert.Equal((string?)waiver["rule"], (string?)broken!["rule"]));
            }
        }

        // Not asked where something fits.
        Assert.Empty((await Ask(DriveSide))["waivers"]!.AsArray());
    }

    [Fact]
    public async Task What_stands_beside_a_list_that_is_not_proven_is_provisional()
    {
        const string request = """{ "machine": "valley-two-seater", "targets": { "engagementRpm": 2200, "shiftRpm": 7900 } """;
        JsonNode early = (await service.PostAsync("/v1/picks", request + """, "workLimit": 600 }""")).Json;
        JsonNode whole = (await service.PostAsync("/v1/picks", request + "}")).Json;

        Assert.Equal((false, true), ((bool)early["work"]!["proven"]!, (bool)whole["work"]!["proven"]!));
        Assert.True((bool)early["fewestChanges"]!["provisional"]!);
        Assert.All(early["undominated"]!.AsArray(), pick => Assert.True((bool)pick!["provisional"]!));
        Assert.False((bool)whole["fewestChanges"]!["provisional"]!);
        Assert.All(whole["undominated"]!.AsArray(), pick => Assert.False((bool)pick!["provisional"]!));
    }

    [Fact]
    public async Task A_replaced_number_is_followed_only_where_too_little_is_known_and_said_at_its_place()
    {
        JsonNode pick = (await service.PostAsync(
            "/v1/picks", Repository.ReadSampleRequest("superseded-number-pick.json"))).Json;
        JsonNode prediction = (await service.PostAsync(
            "/v1/predictions", Repository.ReadSampleRequest("superseded-number-prediction.json"))).Json;

        Assert.Equal(
            """[{"pointer":"/parts/driveSpring","sent":"ds-96-198","used":"ds-96-198","successor":"ds-96-201"}]""",
            prediction["superseded"]!.ToJsonString());
        Assert.Equal("ds-96-198", (string?)prediction["parts"]!["driveSpring"]!["id"]);
        Assert.Contains(
            pick["superseded"]!.AsArray(),
            s => s!.ToJsonString() == """{"pointer":"/fitted/driveSpring","sent":"ds-95-195","used":"ds-96-198","successor":"ds-96-201"}""");
        Assert.Equal("ds-96-198", (string?)pick["fitted"]!["parts"]!["driveSpring"]!["id"]);
        Assert.Empty((await Ask(DriveSide))["superseded"]!.AsArray());
    }

    [Fact]
    public async Task Where_another_device_starts_the_machine_no_engagement_is_said()
    {
        JsonNode answer = (await service.PostAsync(
            "/v1/picks", Repository.ReadSampleRequest("scooter-without-engagement-pick.json"))).Json;

        Assert.Null(answer["fitted"]!["engagementRpm"]);
        Assert.NotEmpty(Picks(answer));
        Assert.All(Picks(answer), pick => Assert.Null(pick["engagementRpm"]));
        Assert.Null(answer["fewestChanges"]!["engagementRpm"]);
        Assert.False(answer["request"]!["targets"]!.AsObject().ContainsKey("engagementRpm"));
    }

    [Fact]
    public async Task Rules_that_could_not_be_checked_are_counted_by_name_and_the_dangerous_ones_named()
    {
        JsonNode answer = await Ask("\"count\": 1");

        JsonNode[] unknown = [.. answer["unknownByRule"]!.AsArray()!];
        string[] rules = [.. unknown.Select(rule => (string)rule["rule"]!)];
        Assert.Equal(rules.Order(StringComparer.Ordinal), rules);
        Assert.All(unknown, rule => Assert.True((long)rule["count"]! > 0));
        JsonNode[] named = [.. answer["notChecked"]!.AsArray()!];
        Assert.NotEmpty(named);
        Assert.All(named, gap => Assert.Contains((string)gap["rule"]!, rules));
        Assert.Equal(
            answer["refusedByRule"]!.AsArray().Sum(rule => (long)rule!["count"]!),
            answer["refusals"]!.AsArray().Count + (long)answer["refusalsLeftOut"]!);
        Assert.Equal(0, (long?)answer["notCheckedLeftOut"]);
    }

    [Fact]
    public async Task Shims_steps_and_pins_stand_in_the_sets_of_an_answer()
    {
        JsonNode shims = (await service.PostAsync(
            "/v1/predictions", Repository.ReadSampleRequest("shims-prediction.json"))).Json;
        JsonNode ramp = (await service.PostAsync(
            "/v1/predictions", Repository.ReadSampleRequest("adjustable-ramp-prediction.json"))).Json;

        Assert.Equal(("sh-66-1.0", 2), ((string?)shims["parts"]!["shims"]!["id"], (int?)shims["parts"]!["shims"]!["count"]));
        Assert.Null(ramp["parts"]!["shims"]);
        Assert.Equal("3", (string?)ramp["parts"]!["flyweight"]!["adjusterStep"]);
        Assert.Equal("""{"pin":{"value":6,"unit":"g"}}""", ramp["parts"]!["flyweight"]!["stationMasses"]!.ToJsonString());
    }

    private async Task<JsonNode> Ask(string members)
    {
        Answer answer = await service.PostAsync("/v1/picks", $$"""{ {{Least}}, {{members}} }""");
        Assert.Equal(201, answer.Status);
        return answer.Json;
    }

    private static JsonNode[] Picks(JsonNode answer) => [.. answer["picks"]!.AsArray()!];
}
