using System.Net;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using PartPicker.Api.Bulk;
using PartPicker.Api.Capacity;
using PartPicker.Api.CommandLine;
using PartPicker.Api.Deprecations;
using PartPicker.Api.Docs;
using PartPicker.Api.Keys;
using PartPicker.Api.Picks;
using PartPicker.Api.Wire;
using PartPicker.Storage;

namespace PartPicker.Api.StartUp;

/// <summary>What the service is made of.</summary>
internal static class ServiceSetup
{
    public static void Listen(this WebApplicationBuilder builder, IPAddress address, int port) =>
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MinRequestBodyDataRate =
                new MinDataRate(RequestLimits.MinBodyBytesPerSecond, RequestLimits.BodyRateGrace);
            kestrel.Limits.MaxRequestLineSize = RequestLimits.MaxRequestLineBytes;
            kestrel.Limits.MaxRequestHeadersTotalSize = RequestLimits.MaxHeaderBytes;
            kestrel.Limits.MaxRequestHeaderCount = RequestLimits.MaxHeaders;
            kestrel.Listen(address, port);
        });

    /// <summary>The console belongs to the answer: only what went wrong is logged, and beside it.</summary>
    public static void LogFaultsOnly(this WebApplicationBuilder builder)
    {
        builder.Logging.ClearProviders();
        builder.Logging.AddConsole(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
    }

    public static void AddPartPicker(this IServiceCollection services, ServiceOptions options)
    {
        services.AddApiDocument();
        services.AddSingleton(options);
        services.AddSingleton(DeprecationTable.Standard);
        services.AddSingleton(host => ServiceFolders.Find(
            options, host.GetRequiredService<IHostEnvironment>().ContentRootPath));
        services.AddSingleton(host => new SqliteStore(host.GetRequiredService<ServiceFolders>().StoreFile));
        services.AddSingleton<ICatalogStore>(host => host.GetRequiredService<SqliteStore>());
        services.AddSingleton<IPickStore>(host => new RecentPicks(host.GetRequiredService<SqliteStore>()));
        services.AddSingleton<IKeyStore>(host => host.GetRequiredService<SqliteStore>());
        services.AddKeys();
        services.AddCapacity();
        services.AddSingleton<CurrentCatalog>();
        services.AddSingleton<PickDesk>();
        services.AddSingleton(_ => BulkGate.Standard());
        services.AddSingleton(TimeProvider.System);
    }
}
