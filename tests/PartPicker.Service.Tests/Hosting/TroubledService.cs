using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using PartPicker.Api.StartUp;
using PartPicker.Parts;
using PartPicker.Storage;

namespace PartPicker.Service.Tests;

/// <summary>A service of its own, to which a test can make happen what seldom happens.</summary>
public sealed class TroubledService : Service
{
    /// <summary>A header that names the trouble that a request shall meet.</summary>
    public const string Trouble = "Trouble";

    /// <summary>The first byte of the answer cannot be written.</summary>
    public const string Break = "break";

    /// <summary>The body does not come in time.</summary>
    public const string Slow = "slow";

    /// <summary>The body ends before it is whole.</summary>
    public const string Cut = "cut";

    private readonly HastyClock clock = new();

    /// <summary>Every time limit of a search is over as soon as it begins.</summary>
    public void Hurry(bool on) => clock.Hasty = on;

    /// <summary>What the action does, while the service holds another catalog, or none.</summary>
    public async Task<Answer> WithCatalogAsync(CatalogSnapshot? other, Func<Task<Answer>> action)
    {
        CurrentCatalog current = Services.GetRequiredService<CurrentCatalog>();
        CatalogSnapshot? own = current.Snapshot;
        current.Snapshot = other;
        try
        {
            return await action();
        }
        finally
        {
            current.Snapshot = own;
        }
    }

    /// <summary>The id of a pick that was kept for as long as picks are.</summary>
    public string KeepExpiredPick()
    {
        const string id = "long-ago";
        Services.GetRequiredService<IPickStore>().Keep(
            id, "revision", "0.9", "{}"u8.ToArray(), DateTimeOffset.UtcNow - StoreLimits.PickLifetime - TimeSpan.FromDays(1));
        return id;
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        base.ConfigureWebHost(builder);
        builder.ConfigureTestServices(services =>
        {
            services.AddSingleton<IStartupFilter>(new TroubleMaker());
            services.Replace(ServiceDescriptor.Singleton<TimeProvider>(clock));
        });
    }

    private sealed class TroubleMaker : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            app.Use((http, rest) =>
            {
                switch (http.Request.Headers[Trouble].ToString())
                {
                    case Break:
                        http.Response.Body = new BrokenStream(http.Response.Body, new InvalidOperationException("The first write fails."));
                        break;
                    case Slow:
                        http.Request.Body = new BrokenStream(
                            http.Request.Body, new BadHttpRequestException("Too slow.", StatusCodes.Status408RequestTimeout));
                        break;
                    case Cut:
                        http.Request.Body = new BrokenStream(http.Request.Body, new BadHttpRequestException("Cut."));
                        break;
                }

                return rest(http);
            });
            next(app);
        };
    }

    /// <summary>Fails once, and works then.</summary>
    private sealed class BrokenStream(Stream inner, Exception fault) : Stream
    {
        private bool failed;

        public override bool CanRead => inner.CanRead;

        public override bool CanSeek => false;

        public override bool CanWrite => inner.CanWrite;

        public override long Length => inner.Length;

        public override long Position { get => inner.Position; set => inner.Position = value; }

        public override void Flush() => inner.Flush();

        public override Task FlushAsync(CancellationToken cancellationToken) => inner.FlushAsync(cancellationToken);

        public override int Read(byte[] buffer, int offset, int count) => Working().Read(buffer, offset, count);

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
            Working().ReadAsync(buffer, cancellationToken);

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => Working().Write(buffer, offset, count);

        public override Task WriteAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
            WriteAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

        public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default) =>
            Working().WriteAsync(buffer, cancellationToken);

        private Stream Working()
        {
            if (failed)
                return inner;
            failed = true;
            throw fault;
        }
    }

    private sealed class HastyClock : TimeProvider
    {
        public bool Hasty { get; set; }

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            if (Hasty)
                callback(state);
            return base.CreateTimer(callback, state, dueTime, period);
        }
    }
}
