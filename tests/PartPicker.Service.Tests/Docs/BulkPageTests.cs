using System.Diagnostics;
using System.Globalization;
using PartPicker.Api.Wire;
using PartPicker.Service.Tests.CommandLine;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

/// <summary>The recipes of docs/bulk.md do what they say, and its limits are those of the service.</summary>
public sealed class BulkPageTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);
    private static readonly string Page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "bulk.md"));

    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_recipe_for_curl_answers_every_point()
    {
        string output = await RunAsync("sh", "recipe.sh", "bash", "recipe.sh");

        Assert.Equal("""{"done":true,"count":8,"failed":0,"lastLine":2,"problem":null}""", output.Trim());
        Assert.Equal(9, (await File.ReadAllLinesAsync(Path.Combine(folder.Path, "answers.ndjson"))).Length);
    }

    [Fact]
    public async Task The_recipe_for_Python_writes_a_table()
    {
        await RunAsync("python", "recipe.py", "python3", "recipe.py");

        string[] rows = await File.ReadAllLinesAsync(Path.Combine(folder.Path, "masses.csv"));
        Assert.Equal("heel,tip,altitude m,engagement rpm,rpm at full shift,problem", rows[0]);
        Assert.Equal(2 * 4 * 3, rows.Length - 1);
        Assert.StartsWith("0 g,8 g,0,", rows[1]);
        Assert.StartsWith("4 g,12 g,3000,", rows[^1]);
        string[][] cells = [.. rows.Skip(1).Select(row => row.Split(','))];
        Assert.All(cells, row => Assert.InRange(double.Parse(row[3], CultureInfo.InvariantCulture), 1000, 5000));
        Assert.All(cells, row => Assert.Empty(row[5]));

        // More mass at the tip takes hold at a lower rpm.
        Assert.True(
            double.Parse(cells[0][3], CultureInfo.InvariantCulture) > double.Parse(cells[2][3], CultureInfo.InvariantCulture));
    }

    [Fact]
    public async Task The_recipe_for_CSharp_prints_the_best_set_for_each_engagement()
    {
        string output = await RunAsync("csharp", "bulk.cs", "dotnet", "run", "bulk.cs");

        string[] lines = output.Trim().Split('\n');
        Assert.Equal(
            ["2000", "2100", "2200", "2300", "2400"], lines.Select(line => line.Split(' ')[0]));
        Assert.All(lines, line => Assert.Matches("^2[0-9]00 rpm: [0-9.]+ with ds-[^ ]+ and fw-", line));
    }

    [Fact]
    public void The_limits_of_the_page_are_those_of_the_service()
    {
        AssertRow("one line", $"{Said(RequestLimits.MaxBodyBytes)} bytes, {RequestLimits.MaxDepth} levels deep");
        AssertRow("`id`", $"{RequestLimits.MaxBulkIdLength} characters");
        AssertRow("axes of a line", $"{RequestLimits.MaxAxes}");
        AssertRow("points of a grid", Said(RequestLimits.MaxGridPoints));
        AssertRow("answers of a run", Said(RequestLimits.MaxBulkAnswers));
        AssertRow("runs at once", $"{RequestLimits.MaxBulkRuns}");
        AssertRow("waiting for a line", $"{RequestLimits.MaxBulkStall.TotalMinutes} minutes");
        AssertRow("waiting for you to read", $"{RequestLimits.MaxBulkStall.TotalMinutes} minutes");
        AssertRow("taken in ahead of its turn", $"{RequestLimits.MaxBulkBytesAhead >> 20} MiB of the body");

        static string Said(int number) => number.ToString("N0", CultureInfo.InvariantCulture);

        static void AssertRow(string what, string limit) => Assert.Contains($"| {what} | {limit} |", Page);
    }

    /// <summary>Runs the only block of that language, against a service that was just started.</summary>
    private async Task<string> RunAsync(string language, string file, string program, params string[] args)
    {
        using ServiceProcess service = ServiceProcess.Start(
            folder.Path, "--quiet", "--port=0", "--data", Path.Combine(folder.Path, "data"));
        Uri address = await service.AddressAsync();
        string block = Assert.Single(Page.Split($"```{language}\n").Skip(1)).Split("```\n")[0];
        string recipe = block.Replace("127.0.0.1:5180", address.Authority, StringComparison.Ordinal);
        Assert.NotEqual(block, recipe);
        await File.WriteAllTextAsync(Path.Combine(folder.Path, file), recipe);

        ProcessStartInfo start = new(program, args)
        {
            WorkingDirectory = folder.Path, RedirectStandardOutput = true, RedirectStandardError = true,
        };
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = await process.StandardOutput.ReadToEndAsync().WaitAsync(Patience);
        await process.WaitForExitAsync().WaitAsync(Patience);
        Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}: {await errors}\n{output}");
        return output;
    }
}
