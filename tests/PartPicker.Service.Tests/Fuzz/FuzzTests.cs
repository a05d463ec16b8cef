using System.Globalization;
using System.Text.Json;
using PartPicker.Api.Errors;
using PartPicker.Service.Tests.Contract;
using PartPicker.Tests;
using Xunit;

namespace PartPicker.Service.Tests.Fuzz;

/// <summary>
/// Whatever is sent, the service answers as the API document says: never with a fault of its own, every refusal a problem
/// document with a listed code, every answer valid against its schema, equal requests with equal bytes.
/// </summary>
public sealed class FuzzTests(Service service) : IClassFixture<Service>
{
    private const int StandardRequests = 3_000;
    private const int AskedTwice = 5; // Each so many.
    private const int MostFailuresShown = 5;

    private static readonly ApiFile Api = ApiFile.Committed;
    private static readonly SchemaCheck Check = new(Api);
    private static readonly HashSet<string> Codes = [.. ErrorCodes.All.Select(code => code.Code)];

    [Fact]
    public async Task Whatever_is_sent_is_answered_as_the_document_says()
    {
        int seed = Number("PART_PICKER_FUZZ_SEED") ?? Random.Shared.Next(1_000_000);
        int requests = Number("PART_PICKER_FUZZ_REQUESTS") ?? StandardRequests;
        int first = Number("PART_PICKER_FUZZ_FIRST") ?? 0;
        RequestMaker maker = new(Api, new Pools(SampleCatalog.Snapshot, await PicksAsync()), seed);
        SortedDictionary<string, int> counts = new(StringComparer.Ordinal);
        HashSet<string> told = [];
        List<string> failures = [];
        int serverErrors = 0;
        for (int number = first; number < first + requests && failures.Count < MostFailuresShown; number++)
        {
            SentRequest request = maker.Make(number);
            Answer answer = await SendAsync(request);
            List<string> faults = Faults(request, answer);
            if (number % AskedTwice == 0 && faults.Count == 0)
                faults.AddRange(await FaultsAgainAsync(request, answer));
            serverErrors += answer.Status >= 500 ? 1 : 0;
            string kind = $"{request.Operation?.Id ?? "elsewhere"} {answer.Status}";
            counts[kind] = counts.GetValueOrDefault(kind) + 1;
            if (answer.Status >= 400 && answer.Body.Length > 0)
                told.UnionWith(Told(answer));
            if (faults.Count > 0)
            {
                failures.Add($"Request {number} of seed {seed}: {string.Join("; ", faults)}\n{request}\n-> {answer.Status}\n"
                    + answer.Text[..Math.Min(answer.Text.Length, 1_000)]);
            }
        }

        Assert.True(failures.Count == 0, string.Join("\n\n", failures));
        Figures.Keep("fuzz", $"fuzz: {requests} requests, {serverErrors} server errors, seed {seed}");
        Figures.Keep("fuzz-counts", $"fuzz, {told.Count} codes told; answers by operation: {string.Join(", ", counts.Select(c => $"{c.Key} {c.Value}"))}");
        // A maker of requests whose every request is refused would find nothing.
        foreach (ApiOperation operation in requests >= StandardRequests ? Api.Operations : [])
            Assert.True(Answered(operation) >= 3, $"Too few of {operation.Id} were answered.");

        int Answered(ApiOperation operation) => counts
            .Where(c => c.Key == $"{operation.Id} 200" || c.Key == $"{operation.Id} 201" || c.Key == $"{operation.Id} 303")
            .Sum(c => c.Value);
    }

    private static IEnumerable<string> Told(Answer answer)
    {
        using JsonDocument problem = JsonDocument.Parse(answer.Body);
        return [.. problem.RootElement.GetProperty("errors").EnumerateArray().Select(error => error.GetProperty("code").GetString()!)
            .Prepend(problem.RootElement.GetProperty("code").GetString()!)];
    }

    // The same bytes, or none where their tag is sent along; and the page that comes next is a page too.
    private async Task<IEnumerable<string>> FaultsAgainAsync(SentRequest request, Answer answer)
    {
        Answer again = await SendAsync(request);
        if (!again.Body.AsSpan().SequenceEqual(answer.Body))
            return ["asked again, it had other bytes"];
        if (request.Method == "GET" && answer.Header("ETag") is { } tag)
        {
            Answer known = await SendAsync(request with { Headers = [("If-None-Match", tag)] });
            if ((known.Status, known.Body.Length) != (304, 0))
                return [$"asked with its tag, it was answered with {known.Status}"];
        }

        if (answer.Header("Link") is not { } link || !link.Contains("rel=\"next\"", StringComparison.Ordinal))
            return [];
        SentRequest next = request with { Address = link[1..link.IndexOf('>', StringComparison.Ordinal)] };
        return Faults(next, await SendAsync(next)).Select(fault => $"its next page: {fault}");
    }

    // Answers that can be fetched again.
    private async Task<IReadOnlyList<string>> PicksAsync()
    {
        List<string> ids = [];
        foreach (int rpm in new[] { 7_600, 7_800, 8_000 })
        {
            Answer pick = await service.PostAsync(
                "/v1/picks",
                $$"""
                {
                  "machine": "{{SampleCatalog.Machine}}", "targets": { "engagementRpm": 2200, "shiftRpm": {{rpm}} },
                  "count": 1, "workLimit": 50, "ratioPoints": 3, "refusals": 0
                }
                """);
            ids.Add((string)pick.Json["id"]!);
        }

        return ids;
    }

    private static List<string> Faults(SentRequest request, Answer answer)
    {
        if (answer.Status >= 500)
            return [$"status {answer.Status}"];
        if (request.Operation is { } operation && !operation.Statuses.Contains($"{answer.Status}"))
            return [$"status {answer.Status} is not one of {operation.Id}"];
        if (request.Method == "HEAD" || answer.Status is 303 or 304)
            return answer.Body.Length > 0 ? ["a body where none belongs"] : [];
        if (request.Operation is not { } known)
            return answer.Status >= 400 ? ProblemFaults(answer) : [];
        return [.. answer.Status >= 400 ? ProblemFaults(answer) : AnswerFaults(known, answer), .. Disagreement(known, request, answer)];
    }

    // What the document refuses is not answered, and what it allows has no fault of form.
    private static IEnumerable<string> Disagreement(ApiOperation operation, SentRequest request, Answer answer)
    {
        if (operation.Body is not ("application/json", var schema) || answer.Status is not (200 or 201 or 400) || Parsed(request.Body!) is not { } json)
            return [];
        using JsonDocument body = json;
        IReadOnlyList<string> faults;
        try
        {
            faults = Check.Faults(schema, body.RootElement);
        }
        catch (InvalidOperationException)
        {
            return []; // Half of a pair of surrogates is no text.
        }

        if (answer.Status != 400)
            return faults.Select(fault => $"it was answered, and the document says {fault}");
        using JsonDocument problem = JsonDocument.Parse(answer.Body);
        return faults.Count > 0
            ? []
            : [.. problem.RootElement.GetProperty("errors").EnumerateArray().Where(IsOfForm).Select(error => $"the document allows what was refused by {error}")];
    }

    private static bool IsOfForm(JsonElement error) =>
        error.GetProperty("pointer").GetString() is "" or ['/', ..]
        && error.GetProperty("code").GetString() switch
        {
            "unknown-member" or "wrong-type" or "duplicate-member" => true,
            // How many points there are to explain, another member says.
            "unknown-word" => !error.GetProperty("pointer").GetString()!.StartsWith("/explain/", StringComparison.Ordinal),
            _ => false,
        };

    private static JsonDocument? Parsed(byte[] body)
    {
        try
        {
            return JsonDocument.Parse(body, new JsonDocumentOptions { AllowDuplicateProperties = false });
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static List<string> ProblemFaults(Answer answer)
    {
        if (answer.MediaType != "application/problem+json")
            return [$"a refusal of media type {answer.MediaType}"];
        using JsonDocument problem = JsonDocument.Parse(answer.Body);
        return ProblemFaults(problem.RootElement, answer.Status);
    }

    private static List<string> ProblemFaults(JsonElement problem, int status)
    {
        List<string> faults = [.. Check.Faults(Api.Schema("Problem"), problem)];
        string code = problem.GetProperty("code").GetString()!;
        if (!Codes.Contains(code))
            faults.Add($"code {code} is not listed");
        if (problem.GetProperty("type").GetString() != $"/docs/errors#{code}")
            faults.Add("type and code differ");
        if (problem.GetProperty("status").GetInt32() != status)
            faults.Add("the status of the document is another one");
        foreach (JsonElement error in problem.GetProperty("errors").EnumerateArray())
        {
            if (!Codes.Contains(error.GetProperty("code").GetString()!))
                faults.Add($"{error} has a code that is not listed");
            if (error.GetProperty("expected").GetString()!.Length == 0)
                faults.Add($"{error} does not say what was expected");
        }

        return faults;
    }

    private static List<string> AnswerFaults(ApiOperation operation, Answer answer)
    {
        if (operation.Answer(answer.Status) is not var (mediaType, schema))
            return [$"a body for {answer.Status}, of which the document says none"];
        if (answer.MediaType != mediaType)
            return [$"media type {answer.MediaType} and not {mediaType}"];
        List<string> faults = [];
        if (mediaType == "application/json")
        {
            using JsonDocument whole = JsonDocument.Parse(answer.Body);
            faults.AddRange(Check.Faults(schema, whole.RootElement));
            if (operation.Id == "createPick" && answer.Header("Server-Timing") is { } timing)
                faults.AddRange(WorkFaults(whole.RootElement, timing));
            return faults;
        }

        string[] lines = answer.Text.Split('\n');
        if (lines[^1].Length > 0 || lines.Length < 2 || !lines[^2].StartsWith("""{"done":true""", StringComparison.Ordinal))
            faults.Add("no last line");
        foreach (string line in lines[..^1])
        {
            using JsonDocument json = JsonDocument.Parse(line);
            faults.AddRange(Check.Faults(schema, json.RootElement));
            if (json.RootElement.TryGetProperty("status", out JsonElement status) && status.GetInt32() is var code and not 200)
            {
                faults.AddRange(ProblemFaults(json.RootElement.GetProperty("problem"), code));
                if (code >= 500)
                    faults.Add($"a line of status {code}");
            }
        }

        return faults;
    }

    // The header tells how many sets were judged, each of which counts as work.
    private static IEnumerable<string> WorkFaults(JsonElement answer, string timing)
    {
        long judged = long.Parse(timing.Split("predictions;desc=\"")[1].TrimEnd('"'), CultureInfo.InvariantCulture);
        int limit = answer.GetProperty("request").GetProperty("workLimit").GetInt32();
        return judged > limit ? [$"{judged} sets were judged, with a work limit of {limit}"] : [];
    }

    private async Task<Answer> SendAsync(SentRequest request)
    {
        using HttpRequestMessage message = request.Message();
        using HttpResponseMessage response = await service.Client.SendAsync(message);
        return await Answer.ReadAsync(response);
    }

    private static int? Number(string variable) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out int number) ? number : null;
}
