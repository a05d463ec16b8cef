using System.Collections.Concurrent;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Xunit;
using static PartPicker.Service.Tests.Keys.KeyedServices;

namespace PartPicker.Service.Tests.Keys;

public sealed class KeyLogTests
{
    [Fact]
    public async Task No_key_is_ever_logged_even_where_everything_is()
    {
        using Service service = Public();
        string[] keys =
        [
            service.AddKey(), service.AddKey("--scope", "read", "--origin", "https://shop.example"),
            service.AddKey(kept => kept with { RevokedAt = DateTimeOffset.UtcNow }), "pps_unknown-to-the-service",
        ];
        LogKeeper log = new();
        using WebApplicationFactory<Program> loud = service.WithWebHostBuilder(builder => builder.ConfigureTestServices(
            services => services.AddLogging(logging => logging.AddProvider(log).SetMinimumLevel(LogLevel.Trace))));
        using HttpClient client = loud.CreateClient();

        foreach (string key in keys)
        {
            foreach (string request in new[] { "GET /v1/machines", "POST /v1/picks", "GET /nowhere", "GET /health/live", "GET /" })
            {
                await client.AskAsync(request, Bearer(key));
                await client.AskAsync(request, ("Authorization", $"Basic {key}"));
                await client.AskAsync(request, OfPage(key), From("https://shop.example"));
                await client.AskAsync(request, OfPage(key), From("https://stranger.example"));
            }
        }

        Assert.Contains(log.Lines, line => line.Contains("The service knows no such key."));
        Assert.Contains(log.Lines, line => line.Contains("[Debug]"));
        foreach (string key in keys)
            Assert.DoesNotContain(log.Lines, line => line.Contains(key[4..]));
    }

    private sealed class LogKeeper : ILoggerProvider, ILogger
    {
        public ConcurrentQueue<string> Lines { get; } = [];

        public ILogger CreateLogger(string categoryName) => this;

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull
        {
            Lines.Enqueue($"[Scope] {state}");
            return null;
        }

        public bool IsEnabled(LogLevel logLevel) => true;

        // What is structured is kept whole: a console shows the text alone, other logs every value.
        public void Log<TState>(
            LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            string values = state is IEnumerable<KeyValuePair<string, object?>> pairs ? string.Join(';', pairs) : "";
            Lines.Enqueue($"[{logLevel}] {formatter(state, exception)} {values} {exception}");
        }

        public void Dispose()
        {
        }
    }
}
