using PartPicker.Api.Errors;
using PartPicker.Api.StartUp;
using PartPicker.Api.Wire;
using PartPicker.Selection;
using PartPicker.Storage;

namespace PartPicker.Api.Picks;

/// <summary>
/// Sends a pick that is kept. Its bytes never change; what has changed since they were written stands in headers.
/// </summary>
internal static class KeptPick
{
    public const string Path = "/v1/picks";

    /// <summary>The header that tells whether the answer to the question would still be the same.</summary>
    public const string StatusHeader = "Pick-Status";

    /// <summary>The words of that header.</summary>
    public const string Current = "current";
    public const string CatalogChanged = "catalog-changed";
    public const string ModelChanged = "model-changed";

    /// <summary>How long a cache may not know that the catalog has changed.</summary>
    public static readonly TimeSpan FreshWhileCurrent = TimeSpan.FromMinutes(5);

    public static string AddressOf(string id) => $"{Path}/{id}";

    /// <summary>Where the same question is answered from the catalog and by the model of today.</summary>
    public static string LatestOf(string id) => $"{Path}/{id}/latest";

    public static bool IsCurrent(StoredPick pick, CurrentCatalog current) => ChangesSince(pick, current).Length == 0;

    public static TaggedAnswer Send(StoredPick pick, CurrentCatalog current, TimeProvider clock, IHeaderDictionary headers)
    {
        string[] changes = ChangesSince(pick, current);
        headers[StatusHeader] = changes.Length == 0 ? Current : string.Join(", ", changes);
        if (changes.Length > 0)
            headers.Append("Link", $"<{LatestOf(pick.Id)}>; rel=\"latest-version\"");
        return new TaggedAnswer(pick.Body)
        {
            Hash = pick.BodyHash,
            Sunset = pick.ExpiresAt,
            Fresh = changes.Length == 0 ? FreshWhileCurrent : pick.ExpiresAt - clock.GetUtcNow(),
        };
    }

    /// <summary>Why an id finds nothing.</summary>
    public static ProblemAnswer Missing(string id, IPickStore store) => store.ExpiryOf(id) is { } expiry
        ? Problems.Of(ErrorCodes.PickExpired, $"The answer was kept until {expiry:yyyy-MM-dd}; ask again with POST {Path}.")
        : Problems.Of(ErrorCodes.PickNotFound, $"No stored answer has this id; ask again with POST {Path}.");

    private static string[] ChangesSince(StoredPick pick, CurrentCatalog current) =>
    [
        .. pick.CatalogRevision == current.Snapshot?.Revision ? Array.Empty<string>() : [CatalogChanged],
        .. pick.ModelVersion == PartSelection.ModelVersion ? Array.Empty<string>() : [ModelChanged],
    ];
}
