using System.Net;
using System.Net.Http.Headers;
using PartPicker.Api.CommandLine;
using PartPicker.Storage;
using Xunit;

namespace PartPicker.Service.Tests.CommandLine;

/// <summary>What an operator does with keys.</summary>
public sealed class KeyCommandTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2031, 5, 6, 7, 8, 9, TimeSpan.Zero);
    private readonly TemporaryFolder folder = new();

    private string Data => Path.Combine(folder.Path, "data");

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_key_is_shown_once_alone_and_listed_without_itself()
    {
        (int exitCode, string key, string told) = Run(
            "create", "--scope=catalog", "--name", "import script", "--expires", "2131-12-31");

        Assert.Equal(0, exitCode);
        Assert.Matches("^pps_[A-Za-z0-9_-]{43}\n$", key);
        Assert.DoesNotContain(key.Trim(), told);
        Assert.Contains("with the scope catalog counts until 2131-12-31 00:00 UTC. It is shown this once", told);

        (_, string list, _) = Run("list");
        Assert.DoesNotContain(key.Trim()[4..], list);
        Assert.Matches("\n[0-9a-f]{12}  catalog  usable  [0-9-]{10}  2131-12-31  import script\n$", list);
    }

    [Fact]
    public void A_key_for_pages_tells_its_origins_and_how_it_is_sent()
    {
        (_, string key, string told) = Run(
            "create", "--scope", "read", "--origin", "https://Shop.example/", "--origin=http://localhost:3000");

        Assert.StartsWith("ppp_", key);
        Assert.Contains("For pages of https://shop.example, http://localhost:3000, which send it as Part-Picker-Key: KEY.", told);
        Assert.EndsWith("https://shop.example http://localhost:3000\n", Run("list").Output);
    }

    [Fact]
    public void A_key_is_revoked_by_its_id_and_only_once()
    {
        Run("create", "--scope", "read");
        string id = Run("list").Output.Split('\n')[1].Split(' ')[0];

        (int exitCode, string output, _) = Run("revoke", id);
        Assert.Equal((0, ""), (exitCode, output));
        Assert.Contains("  revoked  ", Run("list").Output);
        Assert.Equal(1, Run("revoke", id).ExitCode);
        Assert.Contains("No key nobody is in use", Run("revoke", "nobody").Told);
    }

    [Fact]
    public void A_store_that_cannot_be_used_is_told()
    {
        Directory.CreateDirectory(Path.Combine(Data, "part-picker.db"));

        (int exitCode, string output, string told) = Run("create", "--scope", "read");

        Assert.Equal((1, ""), (exitCode, output));
        Assert.Contains("name another with --data.", told);
    }

    [Theory]
    [InlineData("'key' takes one of: create, list, revoke.")]
    [InlineData("'key' takes one of: create, list, revoke.", "delete")]
    [InlineData("--scope is needed, one of: read, catalog, admin.", "create")]
    [InlineData("--scope takes one of: read, catalog, admin; not 'write'.", "create", "--scope", "write")]
    [InlineData("--scope needs a value.", "create", "--scope")]
    [InlineData("'--port' is not an option of 'key create'.", "create", "--port", "1")]
    [InlineData("'--scope' is not an option of 'key list'.", "list", "--scope", "read")]
    [InlineData("'x' is not an option of 'key list'.", "list", "x")]
    [InlineData("'key revoke' takes the id of a key, as 'key list' shows it.", "revoke")]
    [InlineData("A key with --origin stands in web pages for everybody to read: its scope can only be read.", "create", "--scope", "admin", "--origin", "https://a.example")]
    [InlineData("--origin takes scheme, host and port of web pages, as https://shop.example, and no path; not 'https://a.example/b'.", "create", "--origin", "https://a.example/b")]
    [InlineData("--name takes at most 80 characters, on one line.", "create", "--name", "a\nb")]
    public void What_cannot_be_read_is_told(string complaint, params string[] args) =>
        Assert.Equal((null, complaint), KeyOptions.Read(args, Now));

    [Theory]
    [InlineData("2031-05-07", 7)]
    [InlineData("1d", 7)]
    [InlineData("30d", 36)]
    public void An_expiry_is_a_day_or_a_number_of_days(string text, int day) =>
        Assert.Equal(
            new DateTime(2031, 5, 1).AddDays(day - 1),
            KeyOptions.Read(["create", "--scope", "read", "--expires", text], Now).Options!.ExpiresAt!.Value.Date);

    [Theory]
    [InlineData("2031-05-06")]
    [InlineData("1999-01-01")]
    [InlineData("0d")]
    [InlineData("3651d")]
    [InlineData("31.12.2031")]
    [InlineData("soon")]
    public void An_expiry_that_is_past_or_unclear_is_refused(string text) =>
        Assert.StartsWith("--expires takes a day to come", KeyOptions.Read(["create", "--expires", text], Now).Complaint);

    [Fact]
    public async Task A_service_that_others_could_reach_does_not_start_without_a_key()
    {
        foreach (string[] reach in new[] { ["--listen", "0.0.0.0"], new[] { "--behind-proxy" } })
        {
            (int exitCode, string output, string errors) = await ServiceProcess.RunAsync(
                folder.Path, [.. reach, "--quiet", "--port", "0", "--data", Data]);

            Assert.Equal((1, ""), (exitCode, output));
            Assert.StartsWith("The service cannot start: others than this machine could reach it", errors);
            Assert.Contains($"key create --scope read --data {Data}", errors);
        }

        // One that no longer counts is none.
        (_, string key, _) = Run("create", "--scope", "read");
        Run("revoke", Run("list").Output.Split('\n')[1].Split(' ')[0]);
        Assert.NotEmpty(key);
        Assert.Equal(1, (await ServiceProcess.RunAsync(folder.Path, "--listen=::", "--quiet", "--port=0", "--data", Data)).ExitCode);
    }

    [Fact]
    public async Task A_service_with_a_key_serves_others_until_another_process_revokes_it()
    {
        (int exitCode, string key, _) = await ServiceProcess.RunAsync(
            folder.Path, "key", "create", "--scope", "read", "--data", Data);
        Assert.Equal(0, exitCode);
        using ServiceProcess service = ServiceProcess.Start(
            folder.Path, "--listen", "0.0.0.0", "--port=0", "--data", Data);
        Uri address = await service.AddressAsync();
        Assert.Equal("0.0.0.0", address.Host);
        using HttpClient client = new() { BaseAddress = new UriBuilder(address) { Host = "127.0.0.1" }.Uri };

        Assert.Equal(HttpStatusCode.OK, await Status("/health/ready"));
        Assert.Equal(HttpStatusCode.Unauthorized, await Status("/v1/machines"));
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key.Trim());
        Assert.Equal(HttpStatusCode.OK, await Status("/v1/machines"));

        string id;
        using (SqliteStore store = new(Path.Combine(Data, "part-picker.db")))
            id = Assert.Single(store.ReadKeys()).Id;
        Assert.Equal(0, (await ServiceProcess.RunAsync(folder.Path, "key", "revoke", id, "--data", Data)).ExitCode);
        await Task.Delay(TimeSpan.FromSeconds(1));
        Assert.Equal(HttpStatusCode.Unauthorized, await Status("/v1/machines"));
        Assert.Empty(service.Errors);

        async Task<HttpStatusCode> Status(string path) => (await client.GetAsync(new Uri(path, UriKind.Relative))).StatusCode;
    }

    [Fact]
    public async Task Behind_a_proxy_the_address_that_it_tells_is_the_callers()
    {
        Run("create", "--scope", "read");
        using ServiceProcess service = ServiceProcess.Start(
            folder.Path, "--behind-proxy", "--port=0", "--data", Data, "--limit", "requests-per-address=1");
        using HttpClient client = new() { BaseAddress = await service.AddressAsync() };

        Assert.Equal(HttpStatusCode.Unauthorized, await Status("198.51.100.7"));
        Assert.Equal(HttpStatusCode.TooManyRequests, await Status("198.51.100.7"));
        Assert.Equal(HttpStatusCode.Unauthorized, await Status("198.51.100.8"));
        // Only the nearest proxy is believed: what a caller wrote before it does not count.
        Assert.Equal(HttpStatusCode.TooManyRequests, await Status("203.0.113.9, 198.51.100.8"));

        async Task<HttpStatusCode> Status(string from)
        {
            using HttpRequestMessage request = new(HttpMethod.Get, "/v1/machines");
            request.Headers.Add("X-Forwarded-For", from);
            return (await client.SendAsync(request)).StatusCode;
        }
    }

    private (int ExitCode, string Output, string Told) Run(params string[] args)
    {
        using StringWriter output = new();
        using StringWriter errors = new();
        int exitCode = KeyCommand.Run([.. args, "--data", Data], output, errors);
        return (exitCode, output.ToString(), errors.ToString());
    }
}
