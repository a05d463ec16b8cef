using System.Buffers.Text;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.Extensions.DependencyInjection;
using PartPicker.Api.StartUp;
using PartPicker.Api.Wire;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.Storage;
using PartPicker.TestKit;
using Xunit;

namespace PartPicker.Service.Tests.Parts;

/// <summary>Pages join to the whole list, and never to anything else.</summary>
[Collection(ServiceTests.Name)]
public sealed class PartPageTests(Service service)
{
    private const int Lists = 60;
    private const int Catalogs = 30;
    private const int ListsOfACatalog = 10;

    [Fact]
    public async Task The_pages_of_any_list_join_to_what_a_plain_scan_finds()
    {
        int seed = Random.Shared.Next();
        int matched = await Matched(service, SampleCatalog.Snapshot, Lists, new Random(seed), $"seed {seed}");

        Assert.True(matched > Lists, $"seed {seed}: the lists are as good as empty.");
    }

    [Fact]
    public async Task So_they_do_on_any_catalog()
    {
        using Service own = new();
        await own.GetAsync("/v1/machines");
        int matched = 0;
        for (int seed = 0; seed < Catalogs; seed++)
        {
            CatalogSnapshot catalog = new RandomCatalog(seed, maxPerPool: 12).Snapshot;
            own.Services.GetRequiredService<CurrentCatalog>().Snapshot = catalog;
            matched += await Matched(own, catalog, ListsOfACatalog, new Random(seed), $"catalog {seed}");
        }

        Assert.True(matched > Catalogs * ListsOfACatalog, "The lists are as good as empty.");
    }

    [Theory]
    [InlineData("kind=driveSpring", "kind=drivenSpring")]
    [InlineData("kind=driveSpring", "")]
    [InlineData("kind=driveSpring&rate.min=10%20N/mm", "kind=driveSpring&rate.min=11%20N/mm")]
    [InlineData("kind=driveSpring&material=music-wire-a228", "kind=driveSpring&material=oil-tempered-a229")]
    [InlineData("kind=driveSpring", "kind=driveSpring&sort=freeLength")]
    [InlineData("kind=driveSpring&sort=freeLength", "kind=driveSpring&sort=-freeLength")]
    [InlineData("sort=price&outlet=quay-stores", "sort=price&outlet=valley-counter")]
    [InlineData("sort=price&outlet=quay-stores", "sort=stock&outlet=quay-stores")]
    [InlineData("sort=price&outlet=quay-stores", "sort=-price&outlet=quay-stores")]
    [InlineData("kind=driveSpring", "kind=driveSpring&text=spring")]
    [InlineData("kind=driveSpring", "kind=driveSpring&fitsMachine=valley-two-seater")]
    [InlineData("kind=driveSpring", "kind=driveSpring&outlet=valley-counter")]
    [InlineData("kind=driveSpring&outlet=valley-counter", "kind=driveSpring&outlet=quay-stores")]
    [InlineData("kind=driveSpring&outlet=valley-counter", "kind=driveSpring&outlet=valley-counter&inStock=true")]
    public async Task A_cursor_of_another_list_is_refused(string first, string second)
    {
        string cursor = Cursor((await service.GetAsync($"/v1/parts?limit=2&{first}")).Json);

        Answer answer = await service.GetAsync($"/v1/parts?limit=2&{second}&cursor={cursor}");

        AssertRefused(answer, "cursor-mismatch");
    }

    [Theory]
    [InlineData(
        "kind=driveSpring&rate.min=60%20lbf/in&ends=open&ends=closed",
        "ends=closed&ends=open&rate.min=60%20lb/in&kind=driveSpring&ends=open")]
    [InlineData(
        "kind=driveSpring&solidLength.min=1%20in",
        "kind=driveSpring&solidLength.min=25.4%20mm&units=inch&precision=full")]
    public async Task A_cursor_serves_the_same_list_however_it_is_written(string first, string second)
    {
        string cursor = Cursor((await service.GetAsync($"/v1/parts?limit=2&{first}")).Json);

        Assert.Equal(200, (await service.GetAsync($"/v1/parts?limit=3&{second}&cursor={cursor}")).Status);
    }

    [Theory]
    [InlineData("abc")]
    [InlineData("!!!")]
    [InlineData("eyJsaXN0IjoieCJ9")]
    [InlineData("AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")]
    public async Task A_text_that_is_no_cursor_is_refused(string text) =>
        AssertRefused(await service.GetAsync($"/v1/parts?cursor={text}"), "cursor-invalid");

    [Theory]
    [InlineData("{")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("""{ "list": 3 }""")]
    [InlineData("""{ "list": "x", "number": 1e999 }""")]
    public async Task A_cursor_that_someone_made_up_with_care_is_refused(string json)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(json);
        string text = Base64Url.EncodeToString([.. bytes, .. SHA256.HashData(bytes).AsSpan(0, 12)]);

        Answer answer = await service.GetAsync($"/v1/parts?cursor={text}");

        Assert.Equal(400, answer.Status);
        Assert.StartsWith("cursor-", answer.Code);
    }

    [Fact]
    public async Task A_cursor_with_any_letter_changed_or_lost_is_refused()
    {
        const string list = "/v1/parts?kind=helix&limit=2&sort=helixDeg";
        string cursor = Cursor((await service.GetAsync(list)).Json);

        foreach (int at in Enumerable.Range(0, cursor.Length - 1))
        {
            string changed = cursor[..at] + (cursor[at] == 'A' ? 'B' : 'A') + cursor[(at + 1)..];
            AssertRefused(await service.GetAsync($"{list}&cursor={changed}"), "cursor-invalid");
        }

        AssertRefused(await service.GetAsync($"{list}&cursor={cursor[..^4]}"), "cursor-invalid");
    }

    [Fact]
    public async Task A_catalog_that_changes_between_two_pages_is_told_and_the_list_starts_again()
    {
        using Service own = new();
        JsonNode first = (await own.GetAsync("/v1/parts?kind=shim&limit=2")).Json;
        string next = $"/v1/parts?kind=shim&limit=2&cursor={Cursor(first)}";
        Assert.Equal(200, (await own.GetAsync(next)).Status);

        // A new part before the place of the cursor: without care the next page would skip or repeat one.
        CurrentCatalog current = own.Services.GetRequiredService<CurrentCatalog>();
        CatalogContents before = current.Snapshot!.Contents;
        Shim shim = before.Items.OfType<Shim>().First() with { Id = "sh-0-0.1" };
        current.Snapshot = own.Services.GetRequiredService<ICatalogStore>().Save(
            before with { Items = [.. before.Items, shim] }, DateTimeOffset.UtcNow);

        Answer answer = await own.GetAsync(next);
        AssertRefused(answer, "cursor-mismatch");
        Assert.Contains("start again", (string?)answer.Json["errors"]![0]!["expected"]);
        JsonNode again = (await own.GetAsync("/v1/parts?kind=shim&limit=2")).Json;
        Assert.NotEqual((string?)first["catalogRevision"], (string?)again["catalogRevision"]);
        Assert.Equal("sh-0-0.1", (string?)again["items"]![0]!["id"]);
    }

    [Fact]
    public void The_longest_cursor_that_is_given_out_is_read()
    {
        PartPlace place = new(null, Word: new('\uFFFF', 120), Id: new('i', CatalogItem.MaxIdLength));

        string cursor = PartCursor.Write(new() { SortField = "name" }, null, revision: new('r', 64), place);

        Assert.InRange(cursor.Length, 1, PartCursor.MaxLength);
    }

    private static async Task<int> Matched(
        Service service, CatalogSnapshot catalog, int lists, Random random, string where)
    {
        int matched = 0;
        for (int i = 0; i < lists; i++)
        {
            RandomList list = RandomList.Make(random, catalog);
            string because = $"{where}, list {i}: {list.Query}";
            string[] expected = [.. list.Scan(catalog).Select(part => part.Id)];
            matched += expected.Length;

            Assert.True(
                expected.SequenceEqual(await Pages(service, list, expected.Length, random, because)), because);
        }

        return matched;
    }

    private static async Task<IReadOnlyList<string>> Pages(
        Service service, RandomList list, int total, Random random, string because)
    {
        List<string> ids = [];
        string? cursor = null;
        do
        {
            string page = string.Create(CultureInfo.InvariantCulture, $"&limit={random.Next(1, 80)}");
            Answer answer = await service.GetAsync(
                $"/v1/parts?{list.Query}{page}{(cursor is null ? "" : $"&cursor={cursor}")}");
            Assert.True(answer.Status == 200, $"{because}: {answer.Text}");
            Assert.True((int?)answer.Json["total"] == total, because);
            ids.AddRange(answer.Json["items"]!.AsArray().Select(item => (string)item!["id"]!));
            cursor = (string?)answer.Json["nextCursor"];
            Assert.Equal(cursor is not null, answer.Header("Link") is not null);
        }
        while (cursor is not null);
        return ids;
    }

    private static string Cursor(JsonNode list) => (string)list["nextCursor"]!;

    private static void AssertRefused(Answer answer, string code)
    {
        Assert.Equal((400, code), (answer.Status, answer.Code));
        Assert.Equal("cursor", (string?)answer.Json["errors"]![0]!["pointer"]);
    }
}
