using System.Data.Common;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using PartPicker.Api.CommandLine;
using PartPicker.Storage;

namespace PartPicker.Api.StartUp;

/// <summary>Runs the service from the store to Ctrl-C.</summary>
internal static class ServiceRun
{
    private const int Failed = 1;

    /// <summary>The exit code.</summary>
    public static async Task<int> RunAsync(WebApplication app)
    {
        try
        {
            return await ServeAsync(app, app.Services.GetRequiredService<ServiceOptions>());
        }
        catch (Exception fault) when (
            fault is StoreException or DbException or IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync($"The service cannot start: {fault.Message}");
            return Failed;
        }
    }

    private static async Task<int> ServeAsync(WebApplication app, ServiceOptions options)
    {
        ServiceFolders folders = app.Services.GetRequiredService<ServiceFolders>();
        var catalog = CatalogStartUp.Load(
            app.Services.GetRequiredService<ICatalogStore>(), folders, options.CatalogFolder is not null,
            app.Services.GetRequiredService<TimeProvider>().GetUtcNow(), Console.Error);
        if (catalog is null)
            return Failed;
        app.Services.GetRequiredService<CurrentCatalog>().Snapshot = catalog;
        await app.StartAsync();

        // A host that brings its own server, as tests do, has no address to talk of.
        if (app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()?.Addresses
                .FirstOrDefault() is { } address)
        {
            Uri service = new(address);
            bool mute = options.Quiet && !options.Once;
            bool answered = mute || await FirstPick.AskAsync(service, folders.Catalog, Console.Out);
            if (options.Once)
            {
                await app.StopAsync();
                return answered ? 0 : Failed;
            }

            PrintAddresses(service, Console.Out);
        }

        await app.WaitForShutdownAsync();
        return 0;
    }

    private static void PrintAddresses(Uri service, TextWriter to)
    {
        to.WriteLine($"start page   {new Uri(service, "/")}");
        to.WriteLine($"API          {new Uri(service, "/docs/api/")}");
        to.WriteLine($"error codes  {new Uri(service, "/docs/errors")}");
        to.WriteLine($"machines     {new Uri(service, "/v1/machines")}");
        to.WriteLine($"listening on {service.GetLeftPart(UriPartial.Authority)}");
    }
}
