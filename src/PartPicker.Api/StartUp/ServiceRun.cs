using System.Data.Common;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using PartPicker.Api.CommandLine;
using PartPicker.Api.Keys;
using PartPicker.Parts;
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
        catch (StoreException fault)
        {
            return await FailAsync(fault.Message);
        }
        catch (IOException fault) when (fault.InnerException is AddressInUseException)
        {
            return await FailAsync("its port was taken a moment ago. Name another with --port.");
        }
    }

    private static async Task<int> FailAsync(string why)
    {
        await Console.Error.WriteLineAsync($"The service cannot start: {why}");
        return Failed;
    }

    private static async Task<int> ServeAsync(WebApplication app, ServiceOptions options)
    {
        ServiceFolders folders = app.Services.GetRequiredService<ServiceFolders>();
        if (options.KeysNeeded && !Opened(folders, () => app.Services.GetRequiredService<KeyRing>().HasUsable))
        {
            return await FailAsync(
                $"others than this machine could reach it{(options.BehindProxy ? "" : $" at {options.Listen}")}, and no key is set up, "
                + $"without which nobody may ask. Make one with: key create --scope read --data {folders.Data}; or leave out "
                + "--listen and --behind-proxy, to serve this machine alone.");
        }

        if (LoadCatalog(app.Services, folders, options) is not { } catalog)
            return Failed;
        app.Services.GetRequiredService<CurrentCatalog>().Snapshot = catalog;
        await app.StartAsync();

        // A host that brings its own server, as tests do, has no address to talk of.
        if (app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()?.Addresses
                .FirstOrDefault() is { } address)
        {
            Uri service = new(address);
            bool mute = (options.Quiet && !options.Once) || options.KeysNeeded;
            bool answered = mute || await FirstPick.AskAsync(
                service, catalog, folders.Catalog, isOfFolder: options.CatalogFolder is not null, Console.Out);
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

    private static CatalogSnapshot? LoadCatalog(IServiceProvider services, ServiceFolders folders, ServiceOptions options) =>
        Opened(folders, () => CatalogStartUp.Load(
            services.GetRequiredService<ICatalogStore>(), folders, options.CatalogFolder is not null,
            services.GetRequiredService<TimeProvider>().GetUtcNow(), Console.Error));

    private static T Opened<T>(ServiceFolders folders, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception fault) when (fault is DbException or IOException or UnauthorizedAccessException)
        {
            // The words of the system depend on it, and name no remedy.
            throw new StoreException(
                $"the store {folders.StoreFile} cannot be opened or written. Its folder must be one that this account may "
                + "write to, on a disk with room; name another with --data.",
                fault);
        }
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
