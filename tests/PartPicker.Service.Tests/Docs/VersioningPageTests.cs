using PartPicker.Api.Deprecations;
using PartPicker.Api.Errors;
using PartPicker.Api.Picks;
using PartPicker.Api.Wire;
using PartPicker.Storage;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

/// <summary>What docs/versioning.md promises is what the service keeps.</summary>
public sealed class VersioningPageTests
{
    private static readonly string Page = string.Join(
        ' ', File.ReadAllText(Path.Combine(Repository.Root, "docs", "versioning.md")).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    [Fact]
    public void Its_times_are_those_of_the_service()
    {
        Assert.Contains($"A pick is kept for {StoreLimits.PickLifetime.TotalDays} days after it was last read", Page);
        Assert.Equal(7, StoreLimits.ExpiredPickMemory.TotalDays);
        Assert.Contains($"answered with {ErrorCodes.PickExpired.Status}, `{ErrorCodes.PickExpired.Code}`, for a week, "
            + $"and with {ErrorCodes.PickNotFound.Status}, `{ErrorCodes.PickNotFound.Code}`, from then on", Page);
        Assert.Contains($"| a pick by its id, current | `public, max-age={KeptPick.FreshWhileCurrent.TotalSeconds}` |", Page);
        Assert.Contains($"| pages, styles, the API document | `public, max-age={TaggedAnswer.FreshOfProgram.TotalSeconds}` |", Page);
        Assert.Equal(365, DeprecationTable.LeastNotice.TotalDays);
        Assert.Contains("stays for a year at least", Page);
    }

    [Fact]
    public void It_tells_every_word_of_the_status_and_whether_anything_is_deprecated()
    {
        foreach (string word in new[] { KeptPick.Current, KeptPick.CatalogChanged, KeptPick.ModelChanged })
            Assert.Contains($"| `{word}` |", Page);
        Assert.Contains($"| `{KeptPick.StatusHeader}` |", Page);
        Assert.Equal(DeprecationTable.Standard.IsEmpty, Page.EndsWith("Today nothing is deprecated.", StringComparison.Ordinal));
    }
}
