using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using PartPicker.Api.CommandLine;
using PartPicker.Api.Keys;
using PartPicker.Storage;
using Xunit;
using static PartPicker.Service.Tests.Keys.KeyedServices;

namespace PartPicker.Service.Tests.Keys;

/// <summary>Addresses that change something, which need a key of their scope wherever the service listens.</summary>
public sealed class ScopeTests : IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly WebApplication app;
    private readonly SqliteStore store;

    public ScopeTests()
    {
        store = new SqliteStore(Path.Combine(folder.Path, "part-picker.db"));
        WebApplicationBuilder builder = WebApplication.CreateBuilder();
        builder.WebHost.UseTestServer();
        builder.Services.AddSingleton(new ServiceOptions { Listen = IPAddress.Loopback });
        builder.Services.AddSingleton<IKeyStore>(store);
        builder.Services.AddSingleton(TimeProvider.System);
        builder.Services.AddKeys();
        app = builder.Build();
        app.UseRouting();
        app.UseKeys();
        app.UseAuthorization();
        app.MapGet("/read", () => "read");
        app.MapPost("/catalog", () => "changed").NeedsScope(KeyScope.Catalog);
        app.MapPost("/admin", () => "changed").NeedsScope(KeyScope.Admin);
        app.Start();
    }

    public void Dispose()
    {
        ((IDisposable)app).Dispose();
        store.Dispose();
        folder.Dispose();
    }

    /// <summary>What a key that only reads is told where more is needed.</summary>
    public static async Task<Answer> WithSmallScopeAsync()
    {
        using ScopeTests service = new();
        return await service.Ask("POST /catalog", Bearer(service.Add(KeyScope.Read)));
    }

    [Theory]
    [InlineData(null, 200, 401, 401)]
    [InlineData(KeyScope.Read, 200, 403, 403)]
    [InlineData(KeyScope.Catalog, 200, 200, 403)]
    [InlineData(KeyScope.Admin, 200, 200, 200)]
    public async Task A_scope_allows_what_the_smaller_ones_do(KeyScope? scope, int read, int catalog, int admin)
    {
        (string, string)[] headers = scope is { } wanted ? [Bearer(Add(wanted))] : [];

        Assert.Equal(read, (await Ask("GET /read", headers)).Status);
        Assert.Equal(catalog, (await Ask("POST /catalog", headers)).Status);
        Assert.Equal(admin, (await Ask("POST /admin", headers)).Status);
    }

    [Fact]
    public async Task Whoever_may_not_is_told_what_is_needed()
    {
        Answer none = await Ask("POST /catalog");
        Answer small = await Ask("POST /catalog", Bearer(Add(KeyScope.Read)));

        Assert.Equal("key-needed", none.Code);
        Assert.Equal("scope-too-small", small.Code);
        Assert.Equal("The key has the scope read; this needs catalog.", (string?)small.Json["detail"]);
        Assert.Equal(
            "Bearer realm=\"part-picker\", error=\"insufficient_scope\", scope=\"catalog\"", small.Header("WWW-Authenticate"));
    }

    [Fact]
    public async Task A_publishable_key_changes_nothing_even_from_its_page()
    {
        string key = KeyText.Make(publishable: true);
        byte[] hash = KeyText.Hash(key);
        store.AddKey(new StoredKey("page", hash, KeyScope.Read, ["https://shop.example"], "", DateTimeOffset.UtcNow));

        Assert.Equal(403, (await Ask("POST /catalog", OfPage(key), From("https://shop.example"))).Status);
    }

    private Task<Answer> Ask(string request, params (string, string)[] headers) => app.GetTestClient().AskAsync(request, headers);

    private string Add(KeyScope scope)
    {
        string key = KeyText.Make(publishable: false);
        store.AddKey(new StoredKey($"{scope}", KeyText.Hash(key), scope, [], "", DateTimeOffset.UtcNow));
        return key;
    }
}
