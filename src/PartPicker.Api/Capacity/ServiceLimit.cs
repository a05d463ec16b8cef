namespace PartPicker.Api.Capacity;

/// <summary>A limit that whoever runs the service may change.</summary>
/// <param name="Name">As it stands in options, headers and answers.</param>
/// <param name="Standard">What holds unless another number is given.</param>
/// <param name="Least">Least number that it takes.</param>
/// <param name="Sentence">What it limits.</param>
internal sealed record ServiceLimit(string Name, int Standard, int Least, string Sentence)
{
    /// <summary>Greatest number that a limit takes.</summary>
    public const int Greatest = 1_000_000;
}

/// <summary>Every such limit.</summary>
internal static class ServiceLimits
{
    public static readonly ServiceLimit RequestsPerKey = new(
        "requests-per-key", 1_200, 1, "Requests a minute with one secret key.");
    public static readonly ServiceLimit RequestsPerPageKey = new(
        "requests-per-page-key", 6_000, 1, "Requests a minute with one publishable key, of all visitors together.");
    public static readonly ServiceLimit RequestsPerAddress = new(
        "requests-per-address", 120, 1,
        "Requests a minute from one address, with publishable keys or without a key that counts.");
    public static readonly ServiceLimit RequestsLocal = new(
        "requests-local", 600_000, 1, "Requests a minute without a key on the service's own machine, where none is needed.");
    public static readonly ServiceLimit BulkRunsPerCaller = new(
        "bulk-runs-per-caller", 4, 1, "Bulk runs at once with one key.");
    public static readonly ServiceLimit Searches = new(
        "searches", Environment.ProcessorCount, 1, "Searches for a pick at once.");
    public static readonly ServiceLimit SearchesWaiting = new(
        "searches-waiting", Math.Max(1, Environment.ProcessorCount / 2), 0, "Searches that wait for their turn.");
    public static readonly ServiceLimit Predictions = new(
        "predictions", Environment.ProcessorCount, 1, "Predictions at once.");
    public static readonly ServiceLimit PredictionsWaiting = new(
        "predictions-waiting", 8 * Environment.ProcessorCount, 0, "Predictions that wait for their turn.");

    public static readonly IReadOnlyList<ServiceLimit> All =
    [
        RequestsPerKey, RequestsPerPageKey, RequestsPerAddress, RequestsLocal, BulkRunsPerCaller, Searches,
        SearchesWaiting, Predictions, PredictionsWaiting,
    ];

    /// <summary>The limit of that name; null when there is none.</summary>
    public static ServiceLimit? Find(string name) => All.FirstOrDefault(limit => limit.Name == name);
}
