using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using PartPicker.Api.Wire;
using PartPicker.Service.Tests.CommandLine;
using Xunit;

namespace PartPicker.Service.Tests.Transport;

/// <summary>Callers who bend or break HTTP, on sockets: they are refused or left waiting, and others are answered all the while.</summary>
public sealed class HostileTransportTests(HostileTransportTests.Running running) : IClassFixture<HostileTransportTests.Running>
{
    private const string Json = "Content-Type: application/json";
    private const string Question = """{ "machine": "valley-two-seater", "ratioPoints": 3 }""";

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    /// <summary>What is sent, and the status with which it is answered.</summary>
    private static readonly Dictionary<string, (string Sent, int Status)> Bent = new()
    {
        // Heads.
        ["ten thousand headers"] = (Head("GET /health/ready", Repeated(10_000, i => $"X-{i}: 1")), 431),
        ["a header without end"] = (Head("GET /health/ready", $"X-Long: {new string('a', 1_000_000)}"), 431),
        ["two hosts"] = (Head("GET /health/ready", "Host: b"), 400),
        ["a header without a colon"] = (Head("GET /health/ready", "No colon"), 400),
        ["a folded header"] = (Head("GET /health/ready", "X-A: 1\r\n folded"), 400),
        ["a header of control characters"] = (Head("GET /health/ready", "X-A: \u0001"), 200),
        ["a NUL in the first line"] = (Head("GET /health/ready\u0000", ""), 400),
        ["an address without end"] = (Head($"GET /{new string('a', 1_000_000)}", ""), 414),
        ["no host"] = ("GET /health/ready HTTP/1.1\r\n\r\n", 400),
        ["the first bytes of TLS"] = ("\u0016\u0003\u0001\u0002\u0000\u0001\u0000\u0001\u00fc\u0003\u0003\r\n\r\n", 400),

        // Addresses.
        ["a path that is no UTF-8"] = (Head("GET /v1/parts/%C0%AF", ""), 404),
        ["a query that is no UTF-8"] = (Head("GET /v1/parts?text=%FF%FE", ""), 200),
        ["a query of a percent sign"] = (Head("GET /v1/parts?%", ""), 400),
        ["a path that climbs"] = (Head("GET /v1/parts/../../etc/passwd", ""), 404),
        ["an address elsewhere"] = (Head("GET http://else.where/health/ready", ""), 400),
        ["a tunnel"] = (Head("CONNECT else.where:443", ""), 400),
        ["no address"] = (Head("OPTIONS *", ""), 405),

        // Lengths.
        ["a length below nothing"] = (Post(Question, Json, "Content-Length: -1"), 400),
        ["a length beyond counting"] = (Post(Question, Json, "Content-Length: 99999999999999999999"), 400),
        ["two lengths"] = (Post(Question, Json, "Content-Length: 10\r\nContent-Length: 52"), 400),
        ["a length beyond the limit"] = (Post(Question, Json, "Content-Length: 99999999999"), 413),
        ["a length and chunks"] = (Post("0\r\n\r\n", Json, "Transfer-Encoding: chunked\r\nContent-Length: 3"), 400),
        ["a chunk beyond counting"] = (Post("FFFFFFFFFFFFFFFFF\r\n{", Json, "Transfer-Encoding: chunked"), 400),
        ["a chunk of no size"] = (Post("zz\r\n{}\r\n0\r\n\r\n", Json, "Transfer-Encoding: chunked"), 400),
        ["packed chunks"] = (Post("2\r\n{}\r\n0\r\n\r\n", Json, "Transfer-Encoding: gzip, chunked"), 400),

        // Bodies.
        ["a number of 4000 digits"] = (Sized($$"""{ "machine": "valley-two-seater", "ratioPoints": {{new string('9', 4_000)}} }"""), 400),
        ["a number beyond a double"] = (Sized("""{ "machine": "valley-two-seater", "altitude": { "value": 1e400, "unit": "m" } }"""), 400),
        ["a quantity beyond a double"] = (Sized($$"""{ "machine": "valley-two-seater", "altitude": "1e{{new string('9', 4_000)}} m" }"""), 400),
        ["a number next to nothing"] = (Sized($$"""{ "machine": "valley-two-seater", "baseline": { "engagementRpm": -1e-{{new string('9', 4_000)}} } }"""), 400),
        ["arrays in arrays"] = (Sized(new string('[', 200_000)), 400),
        ["objects in objects"] = (Sized(string.Concat(Enumerable.Repeat("{\"a\":", 40_000))), 400),
        ["bytes that are no UTF-8"] = (Sized("{ \"machine\": \"valley\u00c0\u00af\" }"), 400),
        ["UTF-16"] = (Sized("\u00ff\u00fe{\u0000}\u0000"), 400),
        ["twenty thousand members"] = (Sized("{" + Repeated(20_000, i => $"\"a{i}\":1").Replace("\r\n", ",") + "}"), 400),
    };

    public static TheoryData<string> Names => [.. Bent.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task What_bends_or_breaks_HTTP_is_answered_with_its_status(string name)
    {
        (string sent, int status) = Bent[name];
        string answer = await TellAsync(Encoding.Latin1.GetBytes(sent));

        Assert.StartsWith($"HTTP/1.1 {status} ", answer);
        await running.AssertAliveAsync();
    }

    [Theory]
    [InlineData("/v1/picks", "application/json")]
    [InlineData("/v1/predictions", "application/json")]
    [InlineData("/v1/bulk-picks", "application/x-ndjson")]
    [InlineData("/v1/bulk-predictions", "application/x-ndjson")]
    public async Task A_small_body_that_would_unpack_to_much_is_not_unpacked(string path, string mediaType)
    {
        foreach (string encoding in new[] { "gzip", "br", "deflate", "gzip, gzip", "identity, gzip", "GZIP", "none-such" })
        {
            using ByteArrayContent content = new(running.Bomb);
            content.Headers.ContentType = new MediaTypeHeaderValue(mediaType);
            content.Headers.TryAddWithoutValidation("Content-Encoding", encoding);
            using HttpResponseMessage answer = await running.Client.PostAsync(new Uri(path, UriKind.Relative), content);

            Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.StatusCode);
        }
    }

    [Fact]
    public async Task Others_are_answered_while_many_send_half_a_request_or_drip_a_body()
    {
        List<TcpClient> callers = [];
        try
        {
            for (int i = 0; i < 300; i++)
                callers.Add(await CallAsync(i % 2 == 0 ? "GET /health/ready HT" : "POST /v1/picks HTTP/1.1\r\nHost: a\r\nX-A: "));
            List<TcpClient> dripping = [];
            for (int i = 0; i < 50; i++)
                dripping.Add(await CallAsync(Post("{", Json, "Content-Length: 5000")));
            callers.AddRange(dripping);
            for (int drop = 0; drop < 3; drop++)
            {
                foreach (TcpClient caller in dripping)
                    await caller.GetStream().WriteAsync(" "u8.ToArray());
                await running.AssertAliveAsync();
                await Task.Delay(TimeSpan.FromMilliseconds(200));
            }

            // Those who drip are sent away; those who begin and say no more wait longer, at their own cost.
            foreach (TcpClient caller in dripping)
                Assert.StartsWith("HTTP/1.1 408 ", await ReadAsync(caller));
            await running.AssertAliveAsync();
        }
        finally
        {
            callers.ForEach(caller => caller.Dispose());
        }
    }

    [Fact]
    public async Task Who_speaks_HTTP_2_where_it_is_not_spoken_is_told_to_go_away()
    {
        using TcpClient caller = await CallAsync("PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n");

        // A frame of 8 bytes and of type 7, GOAWAY (RFC 9113, 6.8).
        Assert.StartsWith("\0\0\u0008\u0007", await ReadAsync(caller));
        await running.AssertAliveAsync();
    }

    [Fact]
    public async Task A_run_whose_chunks_cannot_be_counted_ends_with_the_reason()
    {
        string line = $$"""{ "request": {{Question}} }""" + "\n";
        using TcpClient caller = await CallAsync(Head("POST /v1/bulk-predictions", "Content-Type: application/x-ndjson\r\nTransfer-Encoding: chunked")
            + $"{line.Length:x}\r\n{line}\r\nFFFFFFFFFFFFFFFFF\r\n{{");

        Assert.Contains("\"type\":\"/docs/errors#bad-http\"", await ReadAsync(caller));
        await running.AssertAliveAsync();
    }

    [Fact]
    public async Task A_caller_who_hangs_up_in_the_middle_harms_nobody()
    {
        for (int i = 0; i < 100; i++)
        {
            using TcpClient caller = await CallAsync(Post(Question[..(i % Question.Length)], Json, "Content-Length: 5000"));
            caller.Client.LingerState = new LingerOption(true, 0); // A reset, and no farewell.
        }

        await running.AssertAliveAsync();
    }

    [Fact]
    public async Task Requests_one_behind_the_other_are_answered_in_their_order()
    {
        const int Count = 200;
        using TcpClient caller = await CallAsync("");
        Task<string> reading = ReadAsync(caller);
        string requests = string.Concat(Enumerable.Range(0, Count).Select(i => Head($"GET /v1/parts/none-{i}", "")));
        await caller.GetStream().WriteAsync(Encoding.ASCII.GetBytes(requests + Head("GET /v1/parts/last", "Connection: close")));

        string answers = await reading;
        int at = -1;
        for (int i = 0; i < Count; i++)
        {
            int next = answers.IndexOf($"'none-{i}'", at + 1, StringComparison.Ordinal);
            Assert.True(next > at, $"Answer {i} is missing or out of order.");
            at = next;
        }
    }

    [Fact]
    public async Task Over_HTTP_2_it_is_no_different()
    {
        // The service speaks HTTP/2 only where a certificate lets it: here it is told to.
        using Service service = new();
        service.UseKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0, port => port.Protocols = HttpProtocols.Http2));
        service.StartServer();
        Uri address = new(service.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Last());
        using HttpClient client = new()
        {
            BaseAddress = address, DefaultRequestVersion = HttpVersion.Version20, DefaultVersionPolicy = HttpVersionPolicy.RequestVersionExact,
        };

        using (HttpRequestMessage many = new(HttpMethod.Get, "/health/ready"))
        {
            for (int i = 0; i < 10_000; i++)
                many.Headers.Add($"X-{i}", "1");
            using HttpResponseMessage answer = await client.SendAsync(many);
            Assert.InRange((int)answer.StatusCode, 400, 431);
        }

        Assert.Equal("too-deep", await CodeAsync(client, new string('[', 100_000), 400));
        Assert.Equal("body-too-large", await CodeAsync(client, new string(' ', RequestLimits.MaxBodyBytes + 1), 413));
        Assert.Equal("out-of-range", await CodeAsync(client, """{ "machine": "valley-two-seater", "ratioPoints": 1e400 }""", 400));
        using (ByteArrayContent bomb = new(running.Bomb))
        {
            bomb.Headers.ContentType = new MediaTypeHeaderValue("application/json");
            bomb.Headers.ContentEncoding.Add("gzip");
            using HttpResponseMessage answer = await client.PostAsync(new Uri("/v1/picks", UriKind.Relative), bomb);
            Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.StatusCode);
        }

        // Streams that are opened and reset at once.
        for (int i = 0; i < 200; i++)
        {
            using CancellationTokenSource soon = new();
            using StringContent body = new(Question, Encoding.UTF8, "application/json");
            Task<HttpResponseMessage> sent = client.PostAsync(new Uri("/v1/predictions", UriKind.Relative), body, soon.Token);
            await soon.CancelAsync();
            try
            {
                (await sent).Dispose();
            }
            catch (OperationCanceledException)
            {
            }
        }

        using HttpResponseMessage alive = await client.GetAsync(new Uri("/health/ready", UriKind.Relative));
        Assert.Equal((HttpStatusCode.OK, HttpVersion.Version20), (alive.StatusCode, alive.Version));
    }

    private static async Task<string?> CodeAsync(HttpClient client, string body, int status)
    {
        using StringContent content = new(body, Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await client.PostAsync(new Uri("/v1/predictions", UriKind.Relative), content);
        Assert.Equal(status, (int)answer.StatusCode);
        return (string?)JsonNode.Parse(await answer.Content.ReadAsStringAsync())!["code"];
    }

    private static string Repeated(int times, Func<int, string> header) =>
        string.Join("\r\n", Enumerable.Range(0, times).Select(header));

    private static string Head(string line, string headers) =>
        $"{line} HTTP/1.1\r\nHost: a\r\n{headers}{(headers.Length > 0 ? "\r\n" : "")}\r\n";

    private static string Post(string body, params string[] headers) =>
        Head("POST /v1/predictions", string.Join("\r\n", headers)) + body;

    private static string Sized(string body) => Post(body, Json, $"Content-Length: {body.Length}");

    private async Task<TcpClient> CallAsync(string text)
    {
        Uri address = running.Client.BaseAddress!;
        TcpClient caller = new();
        await caller.ConnectAsync(address.Host, address.Port);
        await caller.GetStream().WriteAsync(Encoding.Latin1.GetBytes(text));
        return caller;
    }

    // Who is refused in the middle of sending may find the connection reset, with the answer already there.
    private async Task<string> TellAsync(byte[] bytes)
    {
        using TcpClient caller = await CallAsync("");
        NetworkStream stream = caller.GetStream();
        Task<string> reading = ReadAsync(caller, until: "\r\n\r\n");
        try
        {
            await stream.WriteAsync(bytes);
        }
        catch (IOException)
        {
        }

        return await reading;
    }

    private static async Task<string> ReadAsync(TcpClient caller, string? until = null)
    {
        NetworkStream stream = caller.GetStream();
        StringBuilder all = new();
        byte[] buffer = new byte[64 * 1024];
        try
        {
            while ((until is null || !all.ToString().Contains(until, StringComparison.Ordinal))
                && await stream.ReadAsync(buffer).AsTask().WaitAsync(Patience) is > 0 and var count)
            {
                all.Append(Encoding.Latin1.GetString(buffer, 0, count));
            }
        }
        catch (IOException)
        {
        }

        return all.ToString();
    }

    /// <summary>A service that is started once for all of these tests.</summary>
    public sealed class Running : IAsyncLifetime, IDisposable
    {
        private readonly TemporaryFolder folder = new();
        private ServiceProcess? service;

        public HttpClient Client { get; } = new();

        /// <summary>64 MiB of blanks, packed.</summary>
        public byte[] Bomb { get; private set; } = [];

        public async Task InitializeAsync()
        {
            service = ServiceProcess.Start(folder.Path, "--quiet", "--port=0", "--data", folder.Path);
            Client.BaseAddress = await service.AddressAsync();
            using MemoryStream packed = new();
            await using (GZipStream gzip = new(packed, CompressionLevel.Optimal))
                await gzip.WriteAsync(Encoding.ASCII.GetBytes(new string(' ', 64 * 1024 * 1024)));
            Bomb = packed.ToArray();
            Assert.True(Bomb.Length < RequestLimits.MaxBodyBytes);
        }

        /// <summary>The next who asks is answered.</summary>
        public async Task AssertAliveAsync()
        {
            using StringContent content = new(Question, Encoding.UTF8, "application/json");
            using HttpResponseMessage answer = await Client.PostAsync(new Uri("/v1/predictions", UriKind.Relative), content).WaitAsync(Patience);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }

        public Task DisposeAsync() => Task.CompletedTask;

        public void Dispose()
        {
            // What its log would hold is a fault of the service, and not of a caller.
            string errors = service?.Errors ?? "";
            service?.Dispose();
            Client.Dispose();
            folder.Dispose();
            Assert.True(errors.Length == 0, errors);
        }
    }
}
