using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using PartPicker.Api.StartUp;
using PartPicker.Parts;
using PartPicker.Storage;
using Xunit;

namespace PartPicker.Service.Tests.Picks;

/// <summary>A pick can be fetched for as long as it is kept, whatever has changed since, and says what has.</summary>
public sealed class KeptPickTests : IDisposable
{
    private const string Question = """
        {
          "machine": "valley-two-seater", "targets": { "engagementRpm": 2200, "shiftRpm": 7650 }, "exclude": ["hx-41"],
          "keep": ["drivenSpring", "hole", "driveSpring"], "outlet": "valley-counter", "ratioPoints": 3, "count": 2
        }
        """;

    private readonly Service service = new();

    private CurrentCatalog Current => service.Services.GetRequiredService<CurrentCatalog>();

    public void Dispose() => service.Dispose();

    [Fact]
    public async Task When_the_catalog_moves_on_the_pick_stays_and_leads_to_the_answer_of_today()
    {
        Answer first = await service.PostAsync("/v1/picks?units=inch", Question);
        string location = first.Header("Location")!;
        CatalogSnapshot before = Current.Snapshot!;
        Assert.Equal(("current", null), (first.Header("Pick-Status"), first.Header("Link")));

        Current.Snapshot = Without("ds-86-179");
        Answer kept = await service.GetAsync(location);
        Answer latest = await service.GetAsync(location + "/latest");
        Answer today = await service.GetAsync(latest.Header("Location")!);
        Answer asked = await service.PostAsync("/v1/picks?units=inch", Question);

        Assert.Equal(first.Body, kept.Body);
        Assert.Equal(before.Revision, (string?)kept.Json["catalogRevision"]);
        Assert.Equal("catalog-changed", kept.Header("Pick-Status"));
        Assert.Equal($"<{location}/latest>; rel=\"latest-version\"", kept.Header("Link"));
        // Nothing about it changes any more: it may be kept for as long as it is stored.
        Assert.Matches("^public, max-age=2[0-9]{6}$", kept.Header("Cache-Control"));
        Answer known = await service.GetAsync(location, first.Header("ETag"));
        Assert.Equal((304, "catalog-changed"), (known.Status, known.Header("Pick-Status")));

        Assert.Equal((303, "no-store", 0), (latest.Status, latest.Header("Cache-Control"), latest.Body.Length));
        Assert.NotEqual(location, latest.Header("Location"));
        Assert.Equal(("changed", "current", "inch"), ((string?)today.Json["catalogRevision"], today.Header("Pick-Status"), (string?)today.Json["units"]));
        Assert.Equal(today.Body, asked.Body);
        Assert.Equal(today.Header("ETag"), asked.Header("ETag"));

        Current.Snapshot = before;
        Assert.Equal("current", (await service.GetAsync(location)).Header("Pick-Status"));
        Assert.Equal(location, (await service.GetAsync(location + "/latest")).Header("Location"));
    }

    [Fact]
    public async Task What_can_no_longer_be_asked_is_told_with_every_fault()
    {
        string location = (await service.PostAsync("/v1/picks", Question)).Header("Location")!;
        Current.Snapshot = Without("hx-41");

        Answer latest = await service.GetAsync(location + "/latest");

        Assert.Equal((400, "unknown-part"), (latest.Status, latest.Code));
        Assert.Equal("/exclude/0", (string?)latest.Json["errors"]![0]!["pointer"]);
        Assert.Equal(200, (await service.GetAsync(location)).Status);
    }

    [Fact]
    public async Task A_pick_of_another_model_says_so()
    {
        Answer answer = await service.PostAsync("/v1/picks", Question);
        const string id = "made-by-another-model";
        byte[] old = [.. answer.Body, (byte)' '];
        service.Services.GetRequiredService<IPickStore>().Keep(
            id, Current.Snapshot!.Revision, "0.9", old, DateTimeOffset.UtcNow);

        Answer kept = await service.GetAsync($"/v1/picks/{id}");

        Assert.Equal(old, kept.Body);
        Assert.Equal("model-changed", kept.Header("Pick-Status"));
        Assert.Equal($"</v1/picks/{id}/latest>; rel=\"latest-version\"", kept.Header("Link"));
        Assert.Equal(answer.Header("Location"), (await service.GetAsync($"/v1/picks/{id}/latest")).Header("Location"));

        Current.Snapshot = Without("ds-86-179");
        Assert.Equal("catalog-changed, model-changed", (await service.GetAsync($"/v1/picks/{id}")).Header("Pick-Status"));
    }

    [Fact]
    public async Task A_pick_past_its_expiry_is_gone_and_later_forgotten()
    {
        SetClock clock = new();
        using WebApplicationFactory<Program> timed = With(clock);
        string location = (await Post(timed, Question)).Header("Location")!;

        clock.Now += StoreLimits.PickLifetime;
        foreach (string path in new[] { location, location + "/latest" })
        {
            Answer gone = await Get(timed, path);
            Assert.Equal((410, "pick-expired"), (gone.Status, gone.Code));
            Assert.Contains($"until {clock.Now:yyyy-MM-dd};", (string)gone.Json["detail"]!);
        }

        // The next pick that is kept takes the place of those that nobody asks for.
        clock.Now += StoreLimits.ExpiredPickMemory;
        await Post(timed, Question.Replace("2200", "2201", StringComparison.Ordinal));
        Answer forgotten = await Get(timed, location);
        Assert.Equal((404, "pick-not-found"), (forgotten.Status, forgotten.Code));

        Answer again = await Post(timed, Question);
        Assert.Equal(location, again.Header("Location"));
        Assert.Equal(200, (await Get(timed, location)).Status);
    }

    [Fact]
    public async Task What_the_clock_cut_off_has_no_tag_and_is_kept_nowhere()
    {
        using WebApplicationFactory<Program> hurried = With(new HurriedClock());

        Answer cut = await Post(hurried, Question);

        Assert.Equal((200, "no-store"), (cut.Status, cut.Header("Cache-Control")));
        Assert.False((bool)cut.Json["work"]!["proven"]!);
        foreach (string header in new[] { "ETag", "Location", "Sunset", "Pick-Status" })
            Assert.Null(cut.Header(header));
        Assert.Equal(404, (await service.GetAsync($"/v1/picks/{cut.Json["id"]}")).Status);

        // With more time the same question has the whole answer, under the id that was told.
        Answer whole = await service.PostAsync("/v1/picks", Question);
        Assert.Equal((201, $"/v1/picks/{cut.Json["id"]}"), (whole.Status, whole.Header("Location")));
    }

    [Fact]
    public async Task A_restart_changes_no_byte_and_no_tag()
    {
        Answer pick = await service.PostAsync("/v1/picks", Question);
        string[] paths = [pick.Header("Location")!, "/v1/parts/ds-96-201", "/v1/machines", "/docs/limits", "/openapi/v1.json"];
        Answer[] before = await Task.WhenAll(paths.Select(path => service.GetAsync(path)));

        using WebApplicationFactory<Program> restarted = With(TimeProvider.System);
        foreach ((string path, Answer answer) in paths.Zip(before))
        {
            Answer after = await Get(restarted, path);
            Assert.Equal(answer.Body, after.Body);
            Assert.Equal(answer.Header("ETag"), after.Header("ETag"));
        }

        Assert.Equal(pick.Body, (await Post(restarted, Question)).Body);
    }

    private static CatalogSnapshot Without(string id)
    {
        CatalogContents contents = SampleCatalog.Contents;
        return new CatalogSnapshot("changed", new CatalogContents(
            [.. contents.Items.Where(item => item.Id != id)],
            [.. contents.Outlets.Select(outlet => outlet with
            {
                Offers = outlet.Offers.Where(offer => offer.Key != id).ToDictionary(),
            })]));
    }

    /// <summary>The service once more, on the same store, by another clock.</summary>
    private WebApplicationFactory<Program> With(TimeProvider clock) => service.WithWebHostBuilder(
        builder => builder.ConfigureTestServices(services => services.Replace(ServiceDescriptor.Singleton(clock))));

    private static async Task<Answer> Post(WebApplicationFactory<Program> host, string json)
    {
        using HttpClient client = host.CreateClient(new() { AllowAutoRedirect = false });
        using StringContent content = new(json, null, "application/json");
        using HttpResponseMessage response = await client.PostAsync(new Uri("/v1/picks", UriKind.Relative), content);
        return await Answer.ReadAsync(response);
    }

    private static async Task<Answer> Get(WebApplicationFactory<Program> host, string path)
    {
        using HttpClient client = host.CreateClient(new() { AllowAutoRedirect = false });
        using HttpResponseMessage response = await client.GetAsync(new Uri(path, UriKind.Relative));
        return await Answer.ReadAsync(response);
    }

    private sealed class SetClock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = System.GetUtcNow();

        public override DateTimeOffset GetUtcNow() => Now;
    }

    /// <summary>A clock by which the time of whatever waits is up at once.</summary>
    private sealed class HurriedClock : TimeProvider
    {
        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
            base.CreateTimer(callback, state, TimeSpan.Zero, period);
    }
}
