using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;
using System.Threading.Channels;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using PartPicker.Api.Wire;
using PartPicker.Service.Tests.CommandLine;
using Xunit;

namespace PartPicker.Service.Tests.Bulk;

/// <summary>What a run does on a real connection.</summary>
public sealed class BulkStreamTests : IDisposable
{
    private const string Line = """{"request":{"machine":"valley-two-seater","ratioPoints":3}}""";
    private const string LastChunk = "0\r\n\r\n";
    private const int GridPoints = 10_000;
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    // Refused at every point, and so the answers cost nothing; but together they are more than all buffers on the way hold.
    private static readonly string Grid =
        $$"""{"request":{"zz":1},"axes":[{"member":"/machine","from":1,"to":{{GridPoints}},"step":1}]}""" + "\n";

    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task An_answer_comes_while_the_next_line_is_still_to_be_sent()
    {
        using ServiceProcess service = Start();
        using TcpClient caller = await CallAsync(service, "Transfer-Encoding: chunked");
        for (int number = 1; number <= 3; number++)
        {
            await SendAsync(caller, Chunk(Line + "\n"));
            Assert.Contains($$"""{"line":{{number}},"id":null,"status":200,"result":{""", await ReadUntilAsync(caller, "}\n"));
        }

        await SendAsync(caller, LastChunk);

        Assert.Contains("""{"done":true,"count":3,"failed":0,"lastLine":3,""", await ReadUntilAsync(caller, LastChunk));
    }

    [Fact]
    public async Task Over_HTTP_2_it_is_the_same()
    {
        // The service speaks HTTP/2 only where a certificate lets it: here it is told to.
        using Service service = new();
        service.UseKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0, port => port.Protocols = HttpProtocols.Http2));
        service.StartServer();
        string address = service.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Last();
        using HttpClient client = new() { BaseAddress = new Uri(address) };
        using Talk talk = new();
        using HttpRequestMessage request = new(HttpMethod.Post, "/v1/bulk-predictions")
        {
            Content = talk, Version = HttpVersion.Version20, VersionPolicy = HttpVersionPolicy.RequestVersionExact,
        };
        talk.Say(Line);
        using HttpResponseMessage response = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead)
            .WaitAsync(Patience);
        using StreamReader answers = new(await response.Content.ReadAsStreamAsync());
        for (int number = 1; number <= 3; number++)
        {
            JsonNode answer = JsonNode.Parse((await answers.ReadLineAsync().WaitAsync(Patience))!)!;
            Assert.Equal((number, 200), ((int)answer["line"]!, (int)answer["status"]!));
            if (number < 3)
                talk.Say(Line);
        }

        talk.End();
        Assert.StartsWith("""{"done":true,"count":3,""", await answers.ReadLineAsync().WaitAsync(Patience));
        Assert.Null(await answers.ReadLineAsync().WaitAsync(Patience));
        Assert.Equal(HttpVersion.Version20, response.Version);
    }

    [Fact]
    public async Task Who_sends_everything_before_he_reads_is_answered_too()
    {
        const int Lines = 40;
        string line = "{}".PadRight(RequestLimits.MaxBodyBytes) + "\n";
        Assert.InRange(Lines * line.Length, RequestLimits.MaxBulkBytesAhead / 2, RequestLimits.MaxBulkBytesAhead);
        using ServiceProcess service = Start();
        using TcpClient caller = await CallAsync(
            service, $"Connection: close\r\nContent-Length: {Grid.Length + Lines * line.Length}");

        await SendAsync(caller, Grid);
        for (int i = 0; i < Lines; i++)
            await SendAsync(caller, line).WaitAsync(Patience);

        Assert.Contains(
            $$"""{"done":true,"count":{{GridPoints + Lines}},"failed":{{GridPoints + Lines}},"lastLine":{{Lines + 1}},"problem":null}""",
            await ReadAllAsync(caller));
    }

    [Fact]
    public async Task A_caller_who_goes_away_leaves_room_for_others()
    {
        using ServiceProcess service = Start();
        List<TcpClient> callers = [];
        for (int i = 0; i < RequestLimits.MaxBulkRuns; i++)
        {
            // One piece of the body, and the rest is never sent.
            TcpClient caller = await CallAsync(service, "Transfer-Encoding: chunked");
            callers.Add(caller);
            await SendAsync(caller, Chunk(Line + "\n"));
            await ReadUntilAsync(caller, "}\n");
        }

        using HttpClient client = new();
        Uri address = new(await service.AddressAsync(), "/v1/bulk-predictions");
        Assert.Equal((HttpStatusCode.ServiceUnavailable, 10), await AskAsync());

        callers[3].Dispose();
        DateTime end = DateTime.UtcNow + Patience;
        while (await AskAsync() != (HttpStatusCode.OK, null))
            Assert.True(DateTime.UtcNow < end, "The place did not become free.");
        callers.ForEach(caller => caller.Dispose());

        async Task<(HttpStatusCode, double?)> AskAsync()
        {
            using StringContent content = new(Line, Encoding.UTF8, WireJson.LinesMediaType);
            using HttpResponseMessage response = await client.PostAsync(address, content);
            return (response.StatusCode, response.Headers.RetryAfter?.Delta?.TotalSeconds);
        }
    }

    [Fact]
    public async Task Who_does_not_read_cannot_send_for_ever_and_who_reads_again_gets_everything()
    {
        const int Lines = 400;
        string line = "{}".PadRight(RequestLimits.MaxBodyBytes) + "\n";
        using ServiceProcess service = Start();
        using TcpClient caller = await CallAsync(
            service, $"Connection: close\r\nContent-Length: {Grid.Length + Lines * line.Length}");
        await SendAsync(caller, Grid);
        int sent = 0;
        Task sending = Task.Run(async () =>
        {
            for (; sent < Lines; sent++)
                await SendAsync(caller, line);
        });
        int before = -1;
        while (before != sent)
        {
            before = sent;
            await Task.Delay(TimeSpan.FromSeconds(2));
        }

        Assert.False(sending.IsCompleted);
        Assert.InRange(sent, 1, Lines / 2);

        string answer = await ReadAllAsync(caller);
        await sending;
        Assert.Contains(
            $$"""{"done":true,"count":{{GridPoints + Lines}},"failed":{{GridPoints + Lines}},"lastLine":{{Lines + 1}},"problem":null}""", answer);
    }

    [Fact]
    public async Task A_body_that_breaks_HTTP_in_its_middle_is_told_in_the_last_line()
    {
        using ServiceProcess service = Start();
        using TcpClient caller = await CallAsync(service, "Transfer-Encoding: chunked");
        await SendAsync(caller, Chunk(Line + "\n"));
        await ReadUntilAsync(caller, "}\n");

        await SendAsync(caller, "no chunk\r\n");

        Assert.Contains(
            """{"done":true,"count":1,"failed":0,"lastLine":1,"problem":{"type":"/docs/errors#bad-http",""",
            await ReadUntilAsync(caller, LastChunk));
    }

    [Fact]
    public async Task A_caller_who_hangs_up_in_the_middle_gets_no_last_line()
    {
        using ServiceProcess service = Start();
        using TcpClient caller = await CallAsync(service, "Content-Length: 9000");
        await SendAsync(caller, Line + "\n");
        await ReadUntilAsync(caller, "}\n");

        using StreamReader left = new(caller.GetStream());
        caller.Client.Shutdown(SocketShutdown.Send);

        string rest = "";
        try
        {
            rest = await left.ReadToEndAsync().WaitAsync(Patience);
        }
        catch (IOException)
        {
            // The service may reset the connection: it ends there all the same.
        }

        Assert.DoesNotContain("\"done\"", rest);
        Assert.Empty(service.Errors);
    }

    [Fact]
    public async Task A_service_that_is_told_to_end_says_so_in_the_last_line()
    {
        using ServiceProcess service = Start();
        using TcpClient caller = await CallAsync(service, "Transfer-Encoding: chunked");
        await SendAsync(caller, Chunk(Line + "\n"));
        await ReadUntilAsync(caller, "}\n");

        service.Terminate();

        string end = await ReadUntilAsync(caller, LastChunk);
        Assert.Contains(
            """{"done":true,"count":1,"failed":0,"lastLine":1,"problem":{"type":"/docs/errors#service-stopping",""", end);
        Assert.Contains("\"status\":503", end);
        Assert.Equal(0, await service.EndAsync());
    }

    private ServiceProcess Start() => ServiceProcess.Start(
        folder.Path, "--quiet", "--port=0", "--data", Path.Combine(folder.Path, "data"));

    private static async Task<TcpClient> CallAsync(ServiceProcess service, string headers)
    {
        Uri address = await service.AddressAsync();
        TcpClient caller = new(address.Host, address.Port);
        await SendAsync(
            caller,
            $"POST /v1/bulk-predictions HTTP/1.1\r\nHost: a\r\nContent-Type: application/x-ndjson\r\n{headers}\r\n\r\n");
        return caller;
    }

    private static async Task SendAsync(TcpClient caller, string text) =>
        await caller.GetStream().WriteAsync(Encoding.ASCII.GetBytes(text));

    private static string Chunk(string text) => $"{text.Length:x}\r\n{text}\r\n";

    private static async Task<string> ReadUntilAsync(TcpClient caller, string end)
    {
        StringBuilder text = new();
        byte[] buffer = new byte[64 * 1024];
        while (!text.ToString().TrimEnd('\r', '\n').EndsWith(end.TrimEnd('\r', '\n'), StringComparison.Ordinal))
        {
            int read = await caller.GetStream().ReadAsync(buffer).AsTask().WaitAsync(Patience);
            Assert.True(read > 0, $"The connection ended: {text}");
            text.Append(Encoding.UTF8.GetString(buffer, 0, read));
        }

        return text.ToString();
    }

    private static Task<string> ReadAllAsync(TcpClient caller) =>
        new StreamReader(caller.GetStream()).ReadToEndAsync().WaitAsync(Patience);

    /// <summary>A body that is said line by line.</summary>
    private sealed class Talk : HttpContent
    {
        private readonly Channel<string> lines = Channel.CreateUnbounded<string>();

        public Talk() => Headers.ContentType = new(WireJson.LinesMediaType);

        public void Say(string line) => lines.Writer.TryWrite(line);

        public void End() => lines.Writer.Complete();

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            await foreach (string line in lines.Reader.ReadAllAsync())
            {
                await stream.WriteAsync(Encoding.UTF8.GetBytes(line + "\n"));
                await stream.FlushAsync();
            }
        }

        protected override bool TryComputeLength(out long length)
        {
            length = 0;
            return false;
        }
    }
}
