using System.Text;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using PartPicker.Api.Capacity;
using PartPicker.Api.Picks;
using PartPicker.Service.Tests.Picks;
using Xunit;

namespace PartPicker.Service.Tests.Capacity;

/// <summary>Every place is taken: who comes then is told so at once, and the rest of the service goes on.</summary>
[Collection(ServiceTests.Name)]
public sealed class FullHouseTests(Service service)
{
    private const string Prediction = """{ "machine": "valley-two-seater" }""";

    [Fact]
    public async Task A_pick_that_finds_no_place_is_sent_away_at_once()
    {
        using SearchGate gate = new(TimeSpan.FromMinutes(5), new Places(1, 0, "searches"));
        using WebApplicationFactory<Program> busy = With(services => services.Replace(ServiceDescriptor.Singleton(gate)));
        using HttpClient client = busy.CreateClient();
        Assert.Equal(201, (await PostAsync(client, "/v1/picks", Pick(2101))).Status);
        using HeldSearch held = new(gate);

        // The search that is held ends only afterwards, so that none of these answers can have waited for it.
        Answer refused = await PostAsync(client, "/v1/picks", Pick(2102));

        Assert.Equal((503, "too-busy"), (refused.Status, refused.Code));
        Assert.Equal("application/problem+json", refused.MediaType);
        Assert.Equal("2", refused.Header("Retry-After"));
        Assert.Equal("At most 1 searches are computed at once, and 0 wait (limits searches and searches-waiting).", (string?)refused.Json["detail"]);
        // What needs no search is answered.
        Assert.Equal(201, (await PostAsync(client, "/v1/picks", Pick(2101))).Status);
        Assert.Equal(200, (await PostAsync(client, "/v1/predictions", Prediction)).Status);
        Assert.Contains("\"status\":200", (await LinesAsync(client, Pick(2103))).Text);

        Assert.Equal("held", await held.Finish());
        Assert.Equal(201, (await PostAsync(client, "/v1/picks", Pick(2102))).Status);
    }

    [Fact]
    public async Task A_pick_waits_where_there_is_room_and_one_whose_caller_leaves_makes_room()
    {
        Places places = new(1, 1, "searches");
        using SearchGate gate = new(TimeSpan.FromMinutes(5), places);
        using WebApplicationFactory<Program> busy = With(services => services.Replace(ServiceDescriptor.Singleton(gate)));
        using HttpClient client = busy.CreateClient();
        using HeldSearch held = new(gate);
        using CancellationTokenSource leaves = new();
        Task<Answer> first = PostAsync(client, "/v1/picks", Pick(2111), leaves.Token);
        await UntilAsync(() => places.Waiting == 1);
        Assert.Equal(503, (await PostAsync(client, "/v1/picks", Pick(2113))).Status);

        await leaves.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => first);
        await UntilAsync(() => places.Waiting == 0);
        Task<Answer> second = PostAsync(client, "/v1/picks", Pick(2112));
        Assert.NotSame(second, await Task.WhenAny(second, Task.Delay(100)));
        Assert.Equal("held", await held.Finish());
        Assert.Equal(201, (await second).Status);
    }

    [Fact]
    public async Task A_prediction_that_finds_no_place_is_sent_away_at_once()
    {
        using Places places = new(1, 0, "predictions");
        using WebApplicationFactory<Program> busy = With(services => services.AddKeyedSingleton(CapacitySetup.PredictionPlaces, places));
        using HttpClient client = busy.CreateClient();
        using ManualResetEventSlim mayEnd = new();
        using ManualResetEventSlim begun = new();
        Task<string?> held = places.RunAsync(
            () =>
            {
                begun.Set();
                mayEnd.Wait();
                return "held";
            },
            default);
        begun.Wait();

        Answer refused = await PostAsync(client, "/v1/predictions", Prediction);

        Assert.Equal((503, "too-busy", "2"), (refused.Status, refused.Code, refused.Header("Retry-After")));
        Assert.Equal(200, (await PostAsync(client, "/v1/picks", Pick(2121))).Status / 100 * 100);
        mayEnd.Set();
        Assert.Equal("held", await held);
        Assert.Equal(200, (await PostAsync(client, "/v1/predictions", Prediction)).Status);
    }

    private static string Pick(int engagementRpm) =>
        $$"""{"machine":"valley-two-seater","targets":{"engagementRpm":{{engagementRpm}},"shiftRpm":7900},"ratioPoints":3}""";

    // A request needs a moment to come to its place, or to leave it.
    private static async Task UntilAsync(Func<bool> come)
    {
        for (int i = 0; i < 600 && !come(); i++)
            await Task.Delay(50);
        Assert.True(come());
    }

    private static Task<Answer> PostAsync(HttpClient client, string path, string json, CancellationToken stop = default) =>
        SendAsync(client, path, new StringContent(json, Encoding.UTF8, "application/json"), stop);

    private static Task<Answer> LinesAsync(HttpClient client, string json) => SendAsync(
        client, "/v1/bulk-picks", new StringContent($"{{\"request\":{json}}}\n", Encoding.UTF8, "application/x-ndjson"), default);

    private static async Task<Answer> SendAsync(HttpClient client, string path, HttpContent body, CancellationToken stop)
    {
        using HttpResponseMessage response = await client.PostAsync(new Uri(path, UriKind.Relative), body, stop);
        return await Answer.ReadAsync(response);
    }

    private WebApplicationFactory<Program> With(Action<IServiceCollection> change) =>
        service.WithWebHostBuilder(builder => builder.ConfigureTestServices(change));
}
