using System.Net.Sockets;
using System.Threading.RateLimiting;
using PartPicker.Api.CommandLine;
using PartPicker.Api.Errors;
using PartPicker.Api.Keys;
using PartPicker.Api.Wire;

namespace PartPicker.Api.Capacity;

/// <summary>How many requests one key, and one address, may send; told in every answer.</summary>
/// <remarks>
/// The headers follow the draft "RateLimit header fields for HTTP" of the IETF, whose syntax may still change. Counts are
/// those of this process.
/// </remarks>
internal sealed class RateLimits : IDisposable
{
    private const int WindowSeconds = 60;
    private const string NoLimit = "";

    // Who holds an IPv6 address holds all of its /64.
    private const int Ipv6NetworkBytes = 8;

    private readonly ServiceOptions options;
    private readonly Access access;
    private readonly PartitionedRateLimiter<HttpContext> byAddress;
    private readonly PartitionedRateLimiter<HttpContext> byKey;

    public RateLimits(ServiceOptions options, Access access)
    {
        (this.options, this.access) = (options, access);
        byAddress = PartitionedRateLimiter.Create<HttpContext, string>(http => Partition(OfAddress(http), AddressOf(http)));
        byKey = PartitionedRateLimiter.Create<HttpContext, string>(http => Partition(OfKey(http), KeyHolder.Of(http)?.Key.Id));
        // The address first: what a single visitor sends in vain takes nothing from the key of the page.
        All = PartitionedRateLimiter.CreateChained(byAddress, byKey);
    }

    public PartitionedRateLimiter<HttpContext> All { get; }

    public void Dispose()
    {
        All.Dispose();
        byAddress.Dispose();
        byKey.Dispose();
    }

    /// <summary>Writes what is left of each limit that counts for a request into its answer.</summary>
    public void Tell(HttpContext http)
    {
        List<string> policies = [];
        List<string> left = [];
        foreach ((ServiceLimit limit, long count) in Left(http))
        {
            int quota = options.Of(limit);
            string more = count < quota ? $";t={Math.Ceiling(Period(quota).TotalSeconds)}" : "";
            policies.Add($"\"{limit.Name}\";q={quota};w={WindowSeconds}");
            left.Add($"\"{limit.Name}\";r={count}{more}");
        }

        http.Response.Headers["RateLimit-Policy"] = string.Join(", ", policies);
        http.Response.Headers["RateLimit"] = string.Join(", ", left);
    }

    /// <summary>What is answered to one request too many.</summary>
    public ProblemAnswer Refuse(HttpContext http, RateLimitLease lease)
    {
        // Only a limit on requests says when: one on bulk runs cannot know.
        bool runs = !lease.TryGetMetadata(MetadataName.RetryAfter, out TimeSpan wait);
        string detail = runs
            ? $"At most {options.Of(ServiceLimits.BulkRunsPerCaller)} runs are answered at once with one key "
                + $"(limit {ServiceLimits.BulkRunsPerCaller.Name})."
            : string.Join(' ', Left(http).OrderBy(l => l.Count).Take(1).Select(l =>
                $"At most {options.Of(l.Limit)} requests in {WindowSeconds} s are answered (limit {l.Limit.Name})."));
        return new ProblemAnswer(Problems.Of(ErrorCodes.TooManyRequests, detail).Problem)
        {
            RetryAfter = runs ? RequestLimits.BulkRetryAfter : TimeSpan.FromSeconds(Math.Ceiling(wait.TotalSeconds)),
        };
    }

    /// <summary>How many bulk runs a key may have under way; on the service's own machine there are only those of all together.</summary>
    public RateLimitPartition<string> BulkRuns(HttpContext http) => KeyHolder.Of(http) is { Key.Id: var id }
        ? RateLimitPartition.GetConcurrencyLimiter(id, _ => new ConcurrencyLimiterOptions
        {
            PermitLimit = options.Of(ServiceLimits.BulkRunsPerCaller),
        })
        : RateLimitPartition.GetNoLimiter(NoLimit);

    private IEnumerable<(ServiceLimit Limit, long Count)> Left(HttpContext http)
    {
        if (OfAddress(http) is { } ofAddress)
            yield return (ofAddress, byAddress.GetStatistics(http)!.CurrentAvailablePermits);
        if (OfKey(http) is { } ofKey)
            yield return (ofKey, byKey.GetStatistics(http)!.CurrentAvailablePermits);
    }

    private ServiceLimit? OfAddress(HttpContext http) => KeyHolder.Of(http) switch
    {
        { Key.IsPublishable: false } => null,
        null when access.IsOpen(http) => ServiceLimits.RequestsLocal,
        _ => ServiceLimits.RequestsPerAddress,
    };

    private static ServiceLimit? OfKey(HttpContext http) => KeyHolder.Of(http) switch
    {
        null => null,
        { Key.IsPublishable: true } => ServiceLimits.RequestsPerPageKey,
        _ => ServiceLimits.RequestsPerKey,
    };

    private RateLimitPartition<string> Partition(ServiceLimit? limit, string? whose) => limit is null
        ? RateLimitPartition.GetNoLimiter(NoLimit)
        : RateLimitPartition.GetTokenBucketLimiter($"{limit.Name} {whose}", _ => Bucket(options.Of(limit)));

    private static TokenBucketRateLimiterOptions Bucket(int quota) => new()
    {
        TokenLimit = quota,
        TokensPerPeriod = TokensAtOnce(quota),
        ReplenishmentPeriod = Period(quota),
    };

    // Once a second, or by one.
    private static int TokensAtOnce(int quota) => Math.Max(1, quota / WindowSeconds);

    private static TimeSpan Period(int quota) => TimeSpan.FromSeconds((double)WindowSeconds * TokensAtOnce(quota) / quota);

    private static string AddressOf(HttpContext http) => http.Connection.RemoteIpAddress switch
    {
        null => "local",
        { IsIPv4MappedToIPv6: true } mapped => $"{mapped.MapToIPv4()}",
        { AddressFamily: AddressFamily.InterNetworkV6 } six =>
            Convert.ToHexString(six.GetAddressBytes().AsSpan(0, Ipv6NetworkBytes)),
        var four => four.ToString(),
    };
}
