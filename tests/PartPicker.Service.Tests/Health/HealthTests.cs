using Microsoft.Extensions.DependencyInjection;
using PartPicker.Api.StartUp;
using PartPicker.Parts;
using Xunit;

namespace PartPicker.Service.Tests.Health;

public sealed class HealthTests
{
    [Fact]
    public async Task It_is_ready_while_a_catalog_is_loaded_and_live_in_any_case()
    {
        using Service service = new();
        Assert.Equal(200, (await service.GetAsync("/health/live")).Status);
        Answer ready = await service.GetAsync("/health/ready");
        Assert.Equal(200, ready.Status);

        CurrentCatalog current = service.Services.GetRequiredService<CurrentCatalog>();
        CatalogSnapshot catalog = current.Snapshot!;
        Assert.Equal(catalog.Revision, (string?)ready.Json["catalogRevision"]);
        current.Snapshot = null;

        Assert.Equal(200, (await service.GetAsync("/health/live")).Status);
        foreach (string path in new[] { "/health/ready", "/v1/machines", "/v1/machines/x", "/v1/parts/x" })
            AssertNotLoaded(await service.GetAsync(path));
        AssertNotLoaded(await service.PostAsync("/v1/picks", "{}"));
        AssertNotLoaded(await service.PostAsync("/v1/predictions", "{}"));
        Assert.Equal(200, (await service.GetAsync("/")).Status);
    }

    private static void AssertNotLoaded(Answer answer)
    {
        Assert.Equal((503, "catalog-not-loaded"), (answer.Status, answer.Code));
        Assert.Equal("application/problem+json", answer.MediaType);
    }
}
