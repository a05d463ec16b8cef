using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;
using PartPicker.Api.Wire;
using Xunit;

namespace PartPicker.Service.Tests.CommandLine;

/// <summary>What a person sees who starts the service.</summary>
public sealed partial class RunTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    private string Data => Path.Combine(folder.Path, "data");

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Once_prints_what_is_fitted_the_ranked_choices_and_what_was_searched()
    {
        (int exitCode, string output, string errors) = await ServiceProcess.RunAsync(
            folder.Path, "--once", "--port", "0", "--data", Data);

        Assert.Equal(0, exitCode);
        Assert.Empty(errors);
        string[] lines = output.TrimEnd().Split('\n');
        int fitted = Array.FindIndex(lines, line => line.StartsWith("Fitted now:", StringComparison.Ordinal));
        int first = Array.FindIndex(lines, line => line.StartsWith("1 ", StringComparison.Ordinal));
        Assert.InRange(fitted, 0, first);
        Assert.Equal(
            Enumerable.Range(1, 10).Select(rank => $"{rank}"),
            lines.Skip(first).Take(10).Select(line => line.Split(' ')[0]));
        Assert.Matches(RankedLine(), lines[first]);
        Assert.Matches("^searched [0-9]+ combinations, [0-9]+ ms$", lines[^1]);
        Assert.DoesNotContain("listening on", output);
    }

    [Fact]
    public async Task It_serves_at_the_address_of_its_last_line_and_keeps_its_store()
    {
        string catalog = CopyOfSamples();
        using (ServiceProcess first = ServiceProcess.Start(
            folder.Path, "--quiet", "--port=0", "--data", Data, "--catalog", catalog))
        {
            IReadOnlyList<string> lines = await first.ReadUntilAsync("listening on ");
            Assert.Matches("^listening on http://127\\.0\\.0\\.1:[0-9]+$", lines[^1]);
            Uri machines = new(lines[^1]["listening on ".Length..] + "/v1/machines");
            using HttpClient client = new();
            Assert.Equal(HttpStatusCode.OK, (await client.GetAsync(machines)).StatusCode);
            Assert.DoesNotContain("searched", string.Join('\n', lines));
        }

        // What stands in the store needs no catalog folder any more.
        using ServiceProcess second = ServiceProcess.Start(folder.Path, "--quiet", "--port=0", "--data", Data);
        await second.ReadUntilAsync("listening on ");
    }

    [Fact]
    public async Task A_busy_port_moves_on()
    {
        using var busy = new TcpListener(IPAddress.Loopback, 0);
        busy.Start();
        int port = ((IPEndPoint)busy.LocalEndpoint).Port;

        using ServiceProcess service = ServiceProcess.Start(folder.Path, "--quiet", "--port", $"{port}", "--data", Data);
        IReadOnlyList<string> lines = await service.ReadUntilAsync("listening on ");

        Assert.StartsWith($"Port {port} is busy: using ", lines[0]);
        Assert.NotEqual($"listening on http://127.0.0.1:{port}", lines[^1]);
    }

    [Fact]
    public async Task A_catalog_with_faults_is_told_by_file_row_and_column_and_nothing_is_stored()
    {
        string catalog = CopyOfSamples();
        string springs = Path.Combine(catalog, "drive-springs.csv");
        await File.AppendAllTextAsync(springs, (await File.ReadAllLinesAsync(springs))[^1] + "\n");

        (int exitCode, string output, string errors) = await ServiceProcess.RunAsync(
            folder.Path, "--once", "--port", "0", "--data", Data, "--catalog", catalog);

        Assert.Equal(1, exitCode);
        Assert.Empty(output);
        Assert.Matches("drive-springs\\.csv, row [0-9]+, column id, value \"", errors);

        // The store is still empty: the next start, without the option, imports the sample catalog.
        (exitCode, output, _) = await ServiceProcess.RunAsync(folder.Path, "--once", "--port", "0", "--data", Data);
        Assert.Equal(0, exitCode);
        Assert.Contains("searched", output);
    }

    [Fact]
    public async Task A_catalog_without_a_sample_question_is_asked_for_the_rpm_of_a_measured_run()
    {
        string catalog = CopyOfSamples();
        Directory.Delete(Path.Combine(catalog, "requests"), recursive: true);

        (int exitCode, string output, _) = await ServiceProcess.RunAsync(
            folder.Path, "--once", "--port", "0", "--data", Data, "--catalog", catalog);

        Assert.Equal(0, exitCode);
        Assert.StartsWith("There is no sample question for this catalog in ", output);
        Assert.Contains("Machine canyon-racer: to engage at ", output);
        Assert.Contains("\n1  ", output);
        Assert.Contains("searched ", output);
    }

    [Fact]
    public async Task A_catalog_without_a_measured_run_says_that_it_is_missing()
    {
        string catalog = Path.Combine(folder.Path, "parts-alone");
        Directory.CreateDirectory(catalog);
        await File.WriteAllTextAsync(Path.Combine(catalog, "shims.csv"), "id,thickness\nsh-1,1 mm\n");

        (int exitCode, string output, _) = await ServiceProcess.RunAsync(
            folder.Path, "--once", "--port", "0", "--data", Data, "--catalog", catalog);

        Assert.Equal(0, exitCode);
        Assert.StartsWith("No sample question is asked: ", output);
        Assert.Contains("no machine of the catalog has a measured run (baselines)", output);
    }

    [Theory]
    [InlineData("GET / HTTP/1.1\r\nNo header", 400)]
    [InlineData("GET / HTTP/9.9", 505)]
    [InlineData("LONG", 414)]
    [InlineData("MANY", 431)]
    public async Task What_breaks_HTTP_gets_a_bare_status_that_the_page_of_errors_explains(string head, int status)
    {
        using ServiceProcess service = ServiceProcess.Start(folder.Path, "--quiet", "--port=0", "--data", Data);
        Uri address = new((await service.ReadUntilAsync("listening on "))[^1]["listening on ".Length..]);
        head = head switch
        {
            "LONG" => $"GET /{new string('a', RequestLimits.MaxRequestLineBytes)} HTTP/1.1\r\nHost: a",
            "MANY" => "GET / HTTP/1.1\r\nHost: a"
                + string.Concat(Enumerable.Range(0, RequestLimits.MaxHeaders).Select(i => $"\r\nX-{i}: 1")),
            _ => head,
        };

        using TcpClient client = new(address.Host, address.Port);
        NetworkStream stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(head + "\r\n\r\n"));
        string answer = await new StreamReader(stream).ReadToEndAsync();

        Assert.StartsWith($"HTTP/1.1 {status} ", answer);
        Assert.EndsWith("\r\n\r\n", answer);
        using HttpClient http = new();
        string page = await http.GetStringAsync(new Uri(address, "/docs/errors"));
        Assert.Contains($"<dt>{status}</dt>", page[page.IndexOf("id=\"without-a-body\"", StringComparison.Ordinal)..]);
    }

    [Fact]
    public async Task A_body_that_comes_too_slowly_is_told_in_our_own_words()
    {
        using ServiceProcess service = ServiceProcess.Start(folder.Path, "--quiet", "--port=0", "--data", Data);
        Uri address = new((await service.ReadUntilAsync("listening on "))[^1]["listening on ".Length..]);
        using TcpClient client = new(address.Host, address.Port);
        NetworkStream stream = client.GetStream();
        await stream.WriteAsync("POST /v1/picks HTTP/1.1\r\nHost: a\r\nContent-Type: application/json\r\nContent-Length: 900\r\n\r\n{"u8.ToArray());

        string answer = await new StreamReader(stream).ReadToEndAsync();

        Assert.StartsWith("HTTP/1.1 408 ", answer);
        Assert.Contains("\"code\":\"body-too-slow\"", answer);
        Assert.Contains("After 5 s fewer than 240 bytes a second had come; send the whole body at once.", answer);
    }

    [Fact]
    public async Task A_store_of_another_catalog_is_not_asked_the_question_of_the_samples()
    {
        string catalog = CopyOfSamples();
        Directory.Delete(Path.Combine(catalog, "requests"), recursive: true);
        string machines = Path.Combine(catalog, "machines");
        foreach (string file in Directory.GetFiles(machines))
        {
            await File.WriteAllTextAsync(file, (await File.ReadAllTextAsync(file))
                .Replace("\"valley-two-seater\"", "\"own-machine\"", StringComparison.Ordinal));
        }

        await ServiceProcess.RunAsync(folder.Path, "--once", "--port", "0", "--data", Data, "--catalog", catalog);
        (int exitCode, string output, _) = await ServiceProcess.RunAsync(folder.Path, "--once", "--port", "0", "--data", Data);

        Assert.Equal(0, exitCode);
        Assert.StartsWith("There is no sample question for this catalog in ", output);
    }

    [Fact]
    public async Task A_sample_question_that_cannot_be_read_is_told()
    {
        string catalog = CopyOfSamples();
        string question = Path.Combine(catalog, "requests", "first-pick.json");
        File.Delete(question);
        Directory.CreateSymbolicLink(question, question);

        (int exitCode, string output, string errors) = await ServiceProcess.RunAsync(
            folder.Path, "--once", "--port", "0", "--data", Data, "--catalog", catalog);

        Assert.Equal(1, exitCode);
        Assert.Empty(errors);
        Assert.StartsWith($"The sample question in {question} cannot be read", output);
    }

    [Fact]
    public async Task A_sample_question_that_is_refused_is_told()
    {
        string catalog = CopyOfSamples();
        await File.WriteAllTextAsync(
            Path.Combine(catalog, "requests", "first-pick.json"), """{ "machine": "moon-buggy" }""");

        (int exitCode, string output, _) = await ServiceProcess.RunAsync(
            folder.Path, "--once", "--port", "0", "--data", Data, "--catalog", catalog);

        Assert.Equal(1, exitCode);
        Assert.Contains("/machine: unknown-machine, sent \"moon-buggy\";", output);
        Assert.Contains("/targets: missing-member, sent nothing;", output);
    }

    [Fact]
    public async Task An_unknown_option_gets_the_usage_and_exit_code_2()
    {
        (int exitCode, string output, string errors) = await ServiceProcess.RunAsync(folder.Path, "--onec");

        Assert.Equal(2, exitCode);
        Assert.Empty(output);
        Assert.StartsWith("'--onec' is not an option.", errors);
        Assert.Contains("--catalog DIR", errors);
    }

    [Fact]
    public async Task Help_is_given_where_it_is_asked_for()
    {
        (int exitCode, string output, _) = await ServiceProcess.RunAsync(folder.Path, "--help");

        Assert.Equal(0, exitCode);
        Assert.Contains("--once", output);
    }

    [Theory]
    [InlineData("fit")]
    [InlineData("fields")]
    public async Task A_page_of_reference_is_printed_as_it_is_kept_and_nothing_is_served(string page)
    {
        (int exitCode, string output, string errors) = await ServiceProcess.RunAsync(folder.Path, "docs", page);

        Assert.Equal(0, exitCode);
        Assert.Empty(errors);
        Assert.Equal(await File.ReadAllTextAsync(Path.Combine(Repository.Root, "docs", page + ".md")), output);
        Assert.Empty(Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public async Task A_data_folder_that_cannot_be_used_is_told()
    {
        string file = Path.Combine(folder.Path, "file");
        await File.WriteAllTextAsync(file, "not a folder");

        (int exitCode, _, string errors) = await ServiceProcess.RunAsync(
            folder.Path, "--once", "--port", "0", "--data", Path.Combine(file, "data"));

        Assert.Equal(1, exitCode);
        Assert.StartsWith("The service cannot start: the store ", errors);
        Assert.Contains("name another with --data.", errors);
    }

    [Fact]
    public async Task A_store_that_cannot_be_opened_is_told()
    {
        // A folder stands where the file of the store should be.
        Directory.CreateDirectory(Path.Combine(Data, "part-picker.db"));

        (int exitCode, _, string errors) = await ServiceProcess.RunAsync(
            folder.Path, "--once", "--port", "0", "--data", Data);

        Assert.Equal(1, exitCode);
        Assert.StartsWith("The service cannot start: the store ", errors);
        Assert.Contains("name another with --data.", errors);
    }

    [GeneratedRegex(
        "^1  +[0-9.]+ rpm  +[0-9.]+ rpm  +[0-9.]+  +[A-Z]{3} [0-9.]+  +[0-9]+ min +yes +yes "
        + "+(drive spring|flyweight|driven spring|hole|helix) ")]
    private static partial Regex RankedLine();

    private string CopyOfSamples()
    {
        string copy = Path.Combine(folder.Path, "catalog");
        foreach (string file in Directory.GetFiles(Repository.CatalogSamples, "*", SearchOption.AllDirectories))
        {
            string to = Path.Combine(copy, Path.GetRelativePath(Repository.CatalogSamples, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }

        return copy;
    }
}
