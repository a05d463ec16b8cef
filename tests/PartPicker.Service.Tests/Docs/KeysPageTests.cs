using System.Globalization;
using System.Text.Json.Nodes;
using PartPicker.Api.Capacity;
using PartPicker.Api.CommandLine;
using PartPicker.Api.Errors;
using PartPicker.Api.Keys;
using PartPicker.Api.Wire;
using PartPicker.Storage;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

/// <summary>What docs/keys.md and the API document say of keys and limits is what the service does.</summary>
[Collection(ServiceTests.Name)]
public sealed class KeysPageTests(Service service)
{
    private static readonly string Page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "keys.md"));

    [Fact]
    public void Every_limit_that_can_be_changed_is_told_with_its_number()
    {
        int processors = Environment.ProcessorCount;
        Dictionary<string, int> words = new()
        {
            ["one a processor"] = processors, ["half of them, at least 1"] = Math.Max(1, processors / 2),
            ["eight a processor"] = 8 * processors,
        };
        string[][] rows =
        [
            .. Page.Split('\n').Where(line => line.StartsWith("| `", StringComparison.Ordinal))
                .Select(line => line.Trim('|').Split('|', StringSplitOptions.TrimEntries))
                .Where(cells => ServiceLimits.Find(cells[0].Trim('`')) is not null),
        ];

        Assert.Equal(
            ServiceLimits.All.Select(limit => (limit.Name, limit.Standard, limit.Sentence)),
            rows.Select(row => (
                row[0].Trim('`'), words.TryGetValue(row[1], out int number) ? number : int.Parse(row[1], CultureInfo.InvariantCulture),
                row[2])));
        Assert.All(ServiceLimits.All, limit => Assert.Contains(limit.Name, Usage.Text));
    }

    [Fact]
    public void The_limits_of_a_request_are_those_of_the_service()
    {
        foreach (string row in new[]
        {
            $"| body | {Number(RequestLimits.MaxBodyBytes)} bytes | 413, `{ErrorCodes.BodyTooLarge.Code}` |",
            $"| slowness of a body | {RequestLimits.MinBodyBytesPerSecond} bytes a second, after {RequestLimits.BodyRateGrace.TotalSeconds} s | 408, `{ErrorCodes.BodyTooSlow.Code}` |",
            $"| nesting of a body | {RequestLimits.MaxDepth} levels | 400, `{ErrorCodes.TooDeep.Code}` |",
            $"| `exclude` | {RequestLimits.MaxExcluded} ids | 400, `{ErrorCodes.OutOfRange.Code}` |",
            $"| a shift curve, over ratio or speed | {RequestLimits.MaxCurvePoints} points | 400, `{ErrorCodes.OutOfRange.Code}` |",
            $"| `explain` | {RequestLimits.MaxExplained} values | 400, `{ErrorCodes.OutOfRange.Code}` |",
            $"| address, headers | {Number(RequestLimits.MaxRequestLineBytes)} bytes; {RequestLimits.MaxHeaders} headers of {Number(RequestLimits.MaxHeaderBytes)} bytes together | 414, 431 |",
            $"| time of a search, its wait included | {RequestLimits.MaxSearchTime.TotalSeconds} s; after {RequestLimits.SearchDeadline.TotalSeconds} s of searching the best list so far | 503, `{ErrorCodes.TookTooLong.Code}` |",
            $"| faults that are listed | {FaultList.MaxListed} | `detail` counts them all |",
        })
        {
            Assert.Contains(row, Page);
        }
    }

    [Theory]
    [InlineData("/v1/picks", "exclude", 201, "\"ds-1\"", "0 to 200 entries")]
    [InlineData("/v1/predictions", "explain", 9, "\"shiftOut\"", "0 to 8 entries")]
    [InlineData("/v1/picks", "targets.shiftCurve", 51, "{ \"ratio\": 1, \"rpm\": 7000 }", "1 to 50 entries")]
    [InlineData("/v1/picks", "keep", 9, "\"helix\"", "0 to ")]
    public async Task A_list_that_is_too_long_is_told_with_its_limit(
        string path, string member, int count, string entry, string expected)
    {
        string list = $"[{string.Join(',', Enumerable.Repeat(entry, count))}]";
        string json = member.Split('.') is [var outer, var inner]
            ? $$"""{ "machine": "valley-two-seater", "{{outer}}": { "{{inner}}": {{list}} } }"""
            : $$"""{ "machine": "valley-two-seater", "{{member}}": {{list}} }""";

        Answer answer = await service.PostAsync(path, json);

        JsonNode error = answer.Json["errors"]!.AsArray().Single(e => (string?)e!["pointer"] == "/" + member.Replace('.', '/'))!;
        Assert.Equal(("out-of-range", $"{count} entries"), ((string?)error["code"], (string?)error["sent"]));
        Assert.StartsWith(expected, (string?)error["expected"]);
    }

    [Fact]
    public void What_the_page_says_of_keys_holds()
    {
        Assert.Contains($"`{KeyText.SecretPrefix}`", Page);
        Assert.Contains($"`{KeyText.PublishablePrefix}`", Page);
        Assert.Contains($"`{SentKey.Header}: KEY`", Page);
        Assert.Contains($"{StoreLimits.UselessKeyLifetime.TotalDays} days; {Number(StoreLimits.MaxKeys)} keys", Page);
        foreach (KeyScope scope in Enum.GetValues<KeyScope>())
            Assert.Contains($"| `{WireJson.Word(scope)}` |", Page);
        foreach (string header in KeySetup.ExposedHeaders.Concat(KeySetup.AllowedHeaders))
            Assert.Contains($"`{header}`", Page);
        foreach (ErrorCode code in new[]
        {
            ErrorCodes.KeyNeeded, ErrorCodes.KeyInvalid, ErrorCodes.ScopeTooSmall, ErrorCodes.OriginNotAllowed,
            ErrorCodes.TooManyRequests, ErrorCodes.TooBusy, ErrorCodes.TooManyRuns,
        })
        {
            Assert.Contains($"| {code.Status} | `{code.Code}` |", Page);
        }
    }

    [Fact]
    public async Task Every_operation_that_needs_a_key_says_so_and_what_may_come_back_and_health_does_not()
    {
        JsonNode document = (await service.GetAsync("/openapi/v1.json")).Json;
        Assert.Equal("bearer", (string?)document["components"]!["securitySchemes"]!["secretKey"]!["scheme"]);
        Assert.Equal(SentKey.Header, (string?)document["components"]!["securitySchemes"]!["publishableKey"]!["name"]);
        foreach ((string path, JsonNode? operations) in document["paths"]!.AsObject())
        {
            foreach ((string method, JsonNode? operation) in operations!.AsObject())
            {
                JsonObject responses = operation!["responses"]!.AsObject();
                bool open = path.StartsWith("/health/", StringComparison.Ordinal);
                Assert.Equal(
                    open ? "[]" : """[{"secretKey":[]},{"publishableKey":[]},{}]""", operation["security"]!.ToJsonString());
                foreach (string status in new[] { "401", "403", "429" })
                    Assert.True(responses.ContainsKey(status) != open, $"{method} {path}: {status}");
                Assert.True(open || responses["429"]!["headers"]!["Retry-After"] is not null, $"{method} {path}");
                if (method == "post")
                    Assert.NotNull(responses["503"]!["headers"]!["Retry-After"]);
                JsonNode success = responses.First(r => r.Key[0] == '2').Value!;
                Assert.True(open || success["headers"]!["RateLimit"] is not null, $"{method} {path}");
            }
        }
    }

    private static string Number(int value) => value.ToString("N0", CultureInfo.InvariantCulture);
}
