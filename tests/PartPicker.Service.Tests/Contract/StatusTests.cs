using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using PartPicker.Api.Wire;
using PartPicker.Parts;
using PartPicker.Service.Tests.Keys;
using Xunit;

namespace PartPicker.Service.Tests.Contract;

/// <summary>Every operation sends every status that the API document lists for it, with the body and the headers that it tells of.</summary>
public sealed class StatusTests(TroubledService service, SpentService spent) : IClassFixture<TroubledService>, IClassFixture<SpentService>
{
    private const string Shop = "https://shop.example";

    private static readonly ApiFile Api = ApiFile.Committed;

    // These come only where there is a next page, or too many runs.
    private static readonly string[] Sometimes = ["Link", "Retry-After"];

    // On 403 it tells the scope that a key lacks; an origin that may not ask lacks none.
    private const string OfScope = "WWW-Authenticate";

    public static TheoryData<string, int> Statuses
    {
        get
        {
            TheoryData<string, int> all = [];
            foreach (ApiOperation operation in Api.Operations)
            {
                foreach (string status in operation.Statuses)
                    all.Add(operation.Id, int.Parse(status));
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Statuses))]
    public async Task A_status_of_the_document_is_sent(string id, int status)
    {
        ApiOperation operation = Api.Operation(id);
        Answer answer = await DriveAsync(operation, status);

        Assert.True(answer.Status == status, $"{id} answered {answer.Status}: {answer.Text}");
        JsonNode response = operation.Node["responses"]![$"{status}"]!;
        foreach (string header in (response["headers"]?.AsObject() ?? []).Select(h => h.Key).Except(status == 403 ? [.. Sometimes, OfScope] : Sometimes))
            Assert.True(answer.Header(header) is { Length: > 0 }, $"{id} sends {status} without {header}.");
        if (operation.Answer(status) is not var (mediaType, schema))
        {
            Assert.Empty(answer.Body);
            return;
        }

        Assert.Equal(mediaType, answer.MediaType);
        string[] texts = mediaType == WireJson.LinesMediaType ? answer.Text.TrimEnd('\n').Split('\n') : [answer.Text];
        foreach (string text in texts)
        {
            using JsonDocument json = JsonDocument.Parse(text);
            AssertValid(schema, json.RootElement);
        }
    }

    [Fact]
    public void Every_example_is_valid_against_its_schema()
    {
        int examples = 0;
        foreach (ApiOperation operation in Api.Operations)
        {
            IEnumerable<JsonNode?> holders = [operation.Node["requestBody"], .. operation.Node["responses"]!.AsObject().Select(r => r.Value)];
            foreach (JsonNode media in holders.SelectMany(holder => holder?["content"]?.AsObject().Select(c => c.Value!) ?? []))
            {
                IEnumerable<JsonNode?> shown = media["examples"]?.AsObject().Select(e => e.Value!["value"]) ?? [media["example"]];
                foreach (JsonNode example in shown.OfType<JsonNode>())
                {
                    examples++;
                    AssertValid(media["schema"]!, JsonSerializer.SerializeToElement(example));
                }
            }
        }

        Assert.True(examples > 20, $"Only {examples} examples were found.");
    }

    private static void AssertValid(JsonNode schema, JsonElement value)
    {
        IReadOnlyList<string> faults = new SchemaCheck(Api).Faults(schema, value);
        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    private async Task<Answer> DriveAsync(ApiOperation operation, int status)
    {
        switch (status)
        {
            case 200 when operation.Id == "createPick":
                service.Hurry(true);
                JsonNode other = JsonNode.Parse(Example(operation))!; // One that is not stored yet.
                other["ratioPoints"] = 4;
                Answer unfinished = await SendAsync(operation, body: other.ToJsonString());
                service.Hurry(false);
                return unfinished;
            case 200 when operation.Id == "getLatestPick":
                return await CutAsync(operation);
            case 200 or 201 or 303:
                return await SendAsync(operation);
            case 304:
                return await SendAsync(operation, headers: [("If-None-Match", (await SendAsync(operation)).Header("ETag")!)]);
            case 400:
                return await SendAsync(operation, query: "?no-such=1");
            case 401:
                return await SendAsync(operation, headers: [KeyedServices.Bearer("pps_unknown")]);
            case 403:
                return await FromElsewhereAsync(operation);
            case 404:
                return await service.GetAsync(operation.Path.Replace("{id}", "none-such"));
            case 408:
                return await SendAsync(operation, headers: [(TroubledService.Trouble, TroubledService.Slow)]);
            case 410:
                return await SendAsync(operation, id: service.KeepExpiredPick());
            case 413:
                return await SendAsync(operation, body: new string(' ', RequestLimits.MaxBodyBytes + 1));
            case 415:
                return await SendAsync(operation, mediaType: "text/plain");
            case 429:
                return await spent.Client.AskAsync($"{operation.Method} {operation.Path}");
            case 500 when operation.Id == "getLatestPick":
                return await CutAsync(operation, (TroubledService.Trouble, TroubledService.Break)); // A way that writes a body.
            case 500:
                return await SendAsync(operation, headers: [(TroubledService.Trouble, TroubledService.Break)]);
            case 503:
                string id = await KnownIdAsync(operation);
                return await service.WithCatalogAsync(null, () => SendAsync(operation, id: id));
            default:
                throw new NotSupportedException($"How {operation.Id} comes to {status} is not known here.");
        }
    }

    // A pick that was kept with another catalog than the one in use is asked anew, and the clock ends that search.
    private async Task<Answer> CutAsync(ApiOperation operation, params (string Name, string Value)[] headers)
    {
        string kept = await KnownIdAsync(operation);
        service.Hurry(true);
        Answer cut = await service.WithCatalogAsync(
            new CatalogSnapshot("another", SampleCatalog.Contents), () => SendAsync(operation, id: kept, headers: headers));
        service.Hurry(false);
        return cut;
    }

    // A key counts soon after it was made, not at once.
    private async Task<Answer> FromElsewhereAsync(ApiOperation operation)
    {
        string key = service.AddKey("--scope", "read", "--origin", Shop);
        Answer answer = await Ask();
        for (int i = 0; i < 50 && answer.Status == 401; i++)
        {
            await Task.Delay(100);
            answer = await Ask();
        }

        return answer;

        Task<Answer> Ask() => SendAsync(
            operation, headers: [KeyedServices.OfPage(key), KeyedServices.From("https://elsewhere.example")]);
    }

    private async Task<Answer> SendAsync(
        ApiOperation operation, string? body = null, string query = "", string? mediaType = null, string? id = null,
        params (string Name, string Value)[] headers)
    {
        string address = operation.Path.Contains("{id}", StringComparison.Ordinal)
            ? operation.Path.Replace("{id}", id ?? await KnownIdAsync(operation))
            : operation.Path;
        using HttpRequestMessage request = new(new HttpMethod(operation.Method), new Uri(address + query, UriKind.Relative));
        if (operation.Body is { } taken)
        {
            request.Content = new StringContent(
                body ?? Example(operation), Encoding.UTF8, new MediaTypeHeaderValue(mediaType ?? taken.MediaType));
        }

        foreach ((string name, string value) in headers)
            request.Headers.TryAddWithoutValidation(name, value);
        using HttpResponseMessage response = await service.Client.SendAsync(request);
        return await Answer.ReadAsync(response);
    }

    private async Task<string> KnownIdAsync(ApiOperation operation) => operation.Id switch
    {
        "getPick" or "getLatestPick" => (string)(await service.PostAsync("/v1/picks", Example(Api.Operation("createPick")))).Json["id"]!,
        "getPart" => "ds-96-201",
        _ => SampleCatalog.Machine,
    };

    /// <summary>What the document shows as a body, as it is sent.</summary>
    private static string Example(ApiOperation operation)
    {
        JsonNode media = operation.Node["requestBody"]!["content"]!.AsObject().Single().Value!;
        return media["example"] is { } one
            ? one.ToJsonString()
            : string.Concat(media["examples"]!.AsObject().Select(e => e.Value!["value"]!.ToJsonString() + "\n"));
    }
}
