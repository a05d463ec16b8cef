using System.Diagnostics;
using PartPicker.Service.Tests.CommandLine;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

/// <summary>Runs what a page of docs/ shows, as it stands there, in a folder of its own.</summary>
public sealed class Recipe(string page) : IDisposable
{
    /// <summary>Where the pages say that the service is.</summary>
    public const string Address = "127.0.0.1:5180";

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private readonly TemporaryFolder folder = new();

    public string Page { get; } = File.ReadAllText(Path.Combine(Repository.Root, "docs", page));

    public string PathOf(string file) => Path.Combine(folder.Path, file);

    public string Read(string file) => File.ReadAllText(PathOf(file));

    /// <summary>The only block of that language.</summary>
    public string Block(string language) => Assert.Single(Page.Split($"```{language}\n").Skip(1)).Split("```\n")[0];

    /// <summary>A service that was just started, on a store of its own.</summary>
    public ServiceProcess StartService(params string[] options) =>
        ServiceProcess.Start(folder.Path, ["--quiet", "--port=0", "--data", PathOf("data"), .. options]);

    /// <summary>Runs the block of that language from a file, against a service that was just started.</summary>
    /// <returns>What it printed.</returns>
    public async Task<string> RunAsync(string language, string file, string program, params string[] args)
    {
        using ServiceProcess service = StartService();
        string block = Block(language);
        string recipe = block.Replace(Address, (await service.AddressAsync()).Authority, StringComparison.Ordinal);
        Assert.NotEqual(block, recipe);
        await File.WriteAllTextAsync(PathOf(file), recipe);

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

    public void Dispose() => folder.Dispose();
}
