using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using PartPicker.Api.CommandLine;
using PartPicker.Api.Keys;
using PartPicker.Storage;

namespace PartPicker.Service.Tests.Keys;

/// <summary>Services that others than their own machine can reach, and keys for them.</summary>
internal static class KeyedServices
{
    /// <summary>An address that anybody may reach: what is asked through it needs a key.</summary>
    public static Service Public(string? limit = null) => new()
    {
        Options = limit is null
            ? new Dictionary<string, string> { ["listen"] = "0.0.0.0", ["port"] = "0" }
            : new Dictionary<string, string> { ["listen"] = "0.0.0.0", ["port"] = "0", ["limit"] = limit },
    };

    /// <summary>Makes a key as the command line does, in a store that a service may have open.</summary>
    public static string AddKey(this Service service, params string[] options)
    {
        using StringWriter output = new();
        using StringWriter errors = new();
        string[] args = ["create", .. options.Length > 0 ? options : ["--scope", "read"], "--data", service.DataFolder];
        return KeyCommand.Run(args, output, errors) == 0
            ? output.ToString().TrimEnd()
            : throw new InvalidOperationException(errors.ToString());
    }

    public static void Revoke(this Service service, string key)
    {
        using StringWriter errors = new();
        if (KeyCommand.Run(["revoke", KeyText.Id(KeyText.Hash(key)), "--data", service.DataFolder], TextWriter.Null, errors) != 0)
            throw new InvalidOperationException(errors.ToString());
    }

    /// <summary>Keeps a key that was made, or ended, at another time than now.</summary>
    public static string AddKey(this Service service, Func<StoredKey, StoredKey> changed, params IReadOnlyList<string> origins)
    {
        string key = KeyText.Make(origins.Count > 0);
        byte[] hash = KeyText.Hash(key);
        using SqliteStore store = new(Path.Combine(service.DataFolder, "part-picker.db"));
        store.AddKey(changed(new StoredKey(KeyText.Id(hash), hash, KeyScope.Read, origins, "", DateTimeOffset.UtcNow)));
        return key;
    }

    public static async Task<Answer> AskAsync(
        this HttpClient client, string methodAndPath, params (string Name, string Value)[] headers)
    {
        string[] parts = methodAndPath.Split(' ');
        using HttpRequestMessage request = new(new HttpMethod(parts[0]), parts[1]);
        foreach ((string name, string value) in headers)
            request.Headers.TryAddWithoutValidation(name, value);
        using HttpResponseMessage response = await client.SendAsync(request);
        return await Answer.ReadAsync(response);
    }

    public static Task<Answer> AskAsync(
        this Service service, string methodAndPath, params (string Name, string Value)[] headers) =>
        service.Client.AskAsync(methodAndPath, headers);

    public static (string, string) Bearer(string key) => ("Authorization", $"Bearer {key}");

    public static (string, string) OfPage(string key) => (SentKey.Header, key);

    public static (string, string) From(string origin) => ("Origin", origin);

    /// <summary>The service as a caller of that address meets it.</summary>
    public static HttpClient From(this Service service, IPAddress address) => service
        .WithWebHostBuilder(builder => builder.ConfigureTestServices(services =>
            services.AddSingleton<IStartupFilter>(new CallerFilter(address))))
        .CreateClient();

    private sealed class CallerFilter(IPAddress address) : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(
            Action<IApplicationBuilder> next) => app =>
        {
            app.Use(async (http, rest) =>
            {
                http.Connection.RemoteIpAddress = address;
                await rest(http);
            });
            next(app);
        };
    }
}
