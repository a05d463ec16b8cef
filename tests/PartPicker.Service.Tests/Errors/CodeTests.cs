using System.Net.Sockets;
using System.Text;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using PartPicker.Api.Bulk;
using PartPicker.Api.Capacity;
using PartPicker.Api.Errors;
using PartPicker.Api.Picks;
using PartPicker.Api.Wire;
using PartPicker.Parts;
using PartPicker.Service.Tests.CommandLine;
using PartPicker.Service.Tests.Keys;
using PartPicker.Service.Tests.Picks;
using UnitsNet;
using Xunit;

namespace PartPicker.Service.Tests.Errors;

/// <summary>
/// Every code of the list is really sent: the faults of a request by the cases of <see cref="BadRequestTests"/>, the others by
/// what is done here.
/// </summary>
public sealed class CodeTests(TroubledService service) : IClassFixture<TroubledService>
{
    private const string Question = """
        { "machine": "valley-two-seater", "targets": { "engagementRpm": 2200, "shiftRpm": 7900 }, "ratioPoints": 3, "workLimit": 50 }
        """;

    private const string Change = """
        { "machine": "valley-two-seater", "targets": { "engagementChangeRpm": 0, "shiftChangeRpm": 0 }, "anchor": false }
        """;

    private const string Line = """{ "request": { "machine": "valley-two-seater" } }""";

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    private static readonly Dictionary<string, Func<TroubledService, Task<Answer>>> Ways = new()
    {
        // The body as a whole.
        ["invalid-request"] = s => s.PostAsync("/v1/picks?unit=inch", "{}"),
        ["malformed-json"] = s => s.PostAsync("/v1/picks", "{"),
        ["too-deep"] = s => s.PostAsync("/v1/picks", new string('[', 20) + new string(']', 20)),
        ["json-needed"] = s => s.SendAsync(HttpMethod.Post, "/v1/picks", new StringContent("{}")),
        ["lines-needed"] = s => s.PostAsync("/v1/bulk-picks", Line),
        ["body-too-large"] = s => s.PostAsync("/v1/picks", new string(' ', RequestLimits.MaxBodyBytes + 1)),
        ["body-too-slow"] = s => Troubled(s, TroubledService.Slow),
        ["bad-http"] = s => Troubled(s, TroubledService.Cut),

        // The address.
        ["unknown-route"] = s => s.GetAsync("/v1/nowhere"),
        ["machine-not-found"] = s => s.GetAsync("/v1/machines/none-such"),
        ["part-not-found"] = s => s.GetAsync("/v1/parts/none-such"),
        ["pick-not-found"] = s => s.GetAsync("/v1/picks/none-such"),
        ["method-not-allowed"] = s => s.SendAsync(HttpMethod.Delete, "/v1/parts"),
        ["cursor-mismatch"] = async s =>
            await s.GetAsync($"/v1/parts?kind=belt&cursor={(string)(await s.GetAsync("/v1/parts?limit=1")).Json["nextCursor"]!}"),

        // The catalog.
        ["fitted-set-needed"] = s => Asked(
            s, Change, item => item is Machine { Id: SampleCatalog.Machine } m ? m with { Fitted = null, Baselines = [] } : item),
        ["machine-impossible"] = s => Asked(
            s, Question, item => item is Belt belt ? belt with { PitchLength = Length.FromMillimeters(700) } : item),
        ["profile-not-measured"] = s => Asked(
            s, Question, item => item is DriveClutch clutch ? clutch with { Origins = new Dictionary<string, Origin> { ["contactTravel"] = Origin.ClassDefault } } : item),
        ["too-many-combinations"] = s => Asked(
            s, Question, item => item is Flyweight body ? body with { HeelMasses = Many, MiddleMasses = Many, TipMasses = Many, MiddleCurve = body.HeelCurve } : item),
        ["catalog-not-loaded"] = s => s.WithCatalogAsync(null, () => s.PostAsync("/v1/picks", Question)),

        // Bulk runs.
        ["grid-too-large"] = s => s.PostLinesAsync(
            "/v1/bulk-predictions",
            """{ "request": { "machine": "valley-two-seater" }, "axes": [{ "member": "/altitude", "from": 0, "to": 20000, "step": 1, "unit": "ft" }] }"""),
        ["too-many-runs"] = s => Bulk(s, new BulkGate(maxRuns: 0, 1, maxAnswers: 1, Patience), Line),
        ["too-many-answers"] = s => Bulk(s, new BulkGate(maxRuns: 1, 1, maxAnswers: 1, Patience), Line, Line),
        ["service-stopping"] = _ => StoppedAsync(),

        // Who asks, and how much.
        ["key-needed"] = async _ =>
        {
            using Service service = KeyedServices.Public();
            service.AddKey();
            return await service.GetAsync("/v1/machines");
        },
        ["key-invalid"] = s => s.AskAsync("GET /v1/machines", KeyedServices.Bearer("pps_unknown")),
        ["origin-not-allowed"] = async _ =>
        {
            using Service service = KeyedServices.Public();
            string key = service.AddKey("--scope", "read", "--origin", "https://shop.example");
            return await service.AskAsync(
                "GET /v1/machines", KeyedServices.OfPage(key), KeyedServices.From("https://elsewhere.example"));
        },
        ["scope-too-small"] = _ => ScopeTests.WithSmallScopeAsync(),
        ["too-many-requests"] = async _ =>
        {
            using SpentService service = new();
            return await service.GetAsync("/v1/machines");
        },
        ["too-busy"] = BusyAsync,
        ["pick-expired"] = s => s.GetAsync($"/v1/picks/{s.KeepExpiredPick()}"),

        // The service.
        ["took-too-long"] = TooLongAsync,
        ["internal-error"] = s => Troubled(s, TroubledService.Break),
    };

    public static TheoryData<string> Codes => [.. Ways.Keys];

    private static double[] Many => [.. Enumerable.Range(0, 200).Select(i => i * 1e-4)];

    [Theory]
    [MemberData(nameof(Codes))]
    public async Task A_code_is_sent(string code)
    {
        Answer answer = await Ways[code](service);

        Assert.Contains(code, Sent(answer));
    }

    [Fact]
    public void Every_code_of_the_list_is_sent_by_a_test_and_no_other() => Assert.Equal(
        ErrorCodes.All.Select(code => code.Code).Order(StringComparer.Ordinal),
        Ways.Keys.Union(BadRequestTests.Codes).Order(StringComparer.Ordinal));

    [Fact]
    public async Task The_type_of_every_problem_leads_to_its_place_on_this_service()
    {
        foreach (ErrorCode code in ErrorCodes.All)
        {
            string[] address = code.Type.Split('#');
            Answer page = await service.GetAsync(address[0]);
            Assert.Equal((200, "text/html"), (page.Status, page.MediaType));
            Assert.Contains($"id=\"{address[1]}\"", page.Text);
        }
    }

    // A refusal has one code; a run has one in each line that was refused.
    private static IEnumerable<string?> Sent(Answer answer) => answer.Status == 200
        ? answer.Lines.Select(line => (string?)line!["problem"]?["code"])
        : [answer.Code];

    private static async Task<Answer> Troubled(TroubledService service, string trouble)
    {
        using HttpRequestMessage request = new(HttpMethod.Post, "/v1/predictions")
        {
            Content = new StringContent("""{ "machine": "valley-two-seater" }""", Encoding.UTF8, "application/json"),
            Headers = { { TroubledService.Trouble, trouble } },
        };
        using HttpResponseMessage response = await service.Client.SendAsync(request);
        return await Answer.ReadAsync(response);
    }

    private static Task<Answer> Asked(TroubledService service, string question, Func<CatalogItem, CatalogItem> spoil)
    {
        CatalogContents own = SampleCatalog.Contents;
        CatalogSnapshot spoilt = new("spoilt", own with { Items = [.. own.Items.Select(spoil)] });
        return service.WithCatalogAsync(spoilt, () => service.PostAsync("/v1/picks", question));
    }

    private static async Task<Answer> Bulk(TroubledService service, BulkGate own, params string[] lines)
    {
        using BulkGate gate = own;
        using WebApplicationFactory<Program> host = service.WithWebHostBuilder(builder =>
            builder.ConfigureTestServices(services => services.Replace(ServiceDescriptor.Singleton(gate))));
        using StringContent content = new(string.Join('\n', lines), Encoding.UTF8, WireJson.LinesMediaType);
        using HttpResponseMessage response = await host.CreateClient().PostAsync(new Uri("/v1/bulk-predictions", UriKind.Relative), content);
        return await Answer.ReadAsync(response);
    }

    private static Task<Answer> TooLongAsync(TroubledService service) =>
        AllTakenAsync(service, new SearchGate(TimeSpan.FromMilliseconds(50), new Places(1, 1, "searches")));

    private static Task<Answer> BusyAsync(TroubledService service) =>
        AllTakenAsync(service, new SearchGate(Patience, new Places(1, 0, "searches")));

    private static async Task<Answer> AllTakenAsync(TroubledService service, SearchGate own)
    {
        using SearchGate gate = own;
        using HeldSearch other = new(gate);
        using WebApplicationFactory<Program> host = service.WithWebHostBuilder(builder =>
            builder.ConfigureTestServices(services => services.Replace(ServiceDescriptor.Singleton(gate))));
        using StringContent content = new(Question, Encoding.UTF8, WireJson.MediaType);
        using HttpResponseMessage response = await host.CreateClient().PostAsync(new Uri("/v1/picks", UriKind.Relative), content);
        return await Answer.ReadAsync(response);
    }

    // A run that is under way when the service is told to end.
    private static async Task<Answer> StoppedAsync()
    {
        using TemporaryFolder folder = new();
        using ServiceProcess process = ServiceProcess.Start(folder.Path, "--quiet", "--port=0", "--data", folder.Path);
        Uri address = await process.AddressAsync();
        using TcpClient caller = new(address.Host, address.Port);
        NetworkStream stream = caller.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(
            $"POST /v1/bulk-predictions HTTP/1.1\r\nHost: a\r\nContent-Type: {WireJson.LinesMediaType}\r\nContent-Length: 9999\r\n\r\n{Line}\n"));
        using StreamReader answers = new(stream);
        await FindAsync("""{"line":1,""");
        process.Terminate();
        string end = await FindAsync("""{"done":true""");
        return new Answer(200, WireJson.LinesMediaType, Encoding.UTF8.GetBytes(end), new Dictionary<string, string>());

        async Task<string> FindAsync(string beginning)
        {
            while (await answers.ReadLineAsync().WaitAsync(Patience) is { } line)
            {
                if (line.StartsWith(beginning, StringComparison.Ordinal))
                    return line;
            }

            throw new EndOfStreamException($"No line begins {beginning}.");
        }
    }
}
