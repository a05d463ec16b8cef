using System.Diagnostics;
using System.Text;
using PartPicker.Api.Wire;

namespace PartPicker.Service.Tests.CommandLine;

/// <summary>The service as its own process, as a person starts it.</summary>
public sealed class ServiceProcess : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly Process process;
    private readonly StringBuilder errors = new();
    private Uri? address;

    private ServiceProcess(Process process)
    {
        this.process = process;
        process.ErrorDataReceived += (_, line) =>
        {
            if (line.Data is not null) // Null tells the end.
                errors.AppendLine(line.Data);
        };
        process.BeginErrorReadLine();
    }

    public string Errors => errors.ToString();

    public static ServiceProcess Start(string workingFolder, params string[] args) => Start(workingFolder, [], args);

    /// <param name="environment">Variables set for it besides those of the tests.</param>
    public static ServiceProcess Start(
        string workingFolder, IReadOnlyList<(string Name, string Value)> environment, params string[] args)
    {
        ProcessStartInfo start = new("dotnet")
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = workingFolder,
        };
        start.ArgumentList.Add(typeof(WireJson).Assembly.Location);
        foreach (string arg in args)
            start.ArgumentList.Add(arg);
        foreach ((string name, string value) in environment)
            start.Environment[name] = value;
        return new ServiceProcess(Process.Start(start)!);
    }

    /// <summary>Everything that it printed until it ended, and its exit code.</summary>
    public static async Task<(int ExitCode, string Output, string Errors)> RunAsync(
        string workingFolder, params string[] args)
    {
        using ServiceProcess service = Start(workingFolder, args);
        string output = await service.process.StandardOutput.ReadToEndAsync().WaitAsync(Patience);
        await service.process.WaitForExitAsync().WaitAsync(Patience);
        return (service.process.ExitCode, output, service.Errors);
    }

    /// <summary>The lines that it prints until one begins so, that one included.</summary>
    public async Task<IReadOnlyList<string>> ReadUntilAsync(string beginning)
    {
        List<string> lines = [];
        while (await process.StandardOutput.ReadLineAsync().WaitAsync(Patience) is { } line)
        {
            lines.Add(line);
            if (line.StartsWith(beginning, StringComparison.Ordinal))
                return lines;
        }

        throw new InvalidOperationException(
            $"It ended without a line '{beginning}': {string.Join('\n', lines)}\n{Errors}");
    }

    /// <summary>Where it listens, once it does.</summary>
    public async Task<Uri> AddressAsync()
    {
        const string Beginning = "listening on ";
        return address ??= new Uri((await ReadUntilAsync(Beginning))[^1][Beginning.Length..]);
    }

    /// <summary>Tells it to end, as an operator does.</summary>
    public void Terminate()
    {
        using Process kill = Process.Start("kill", ["-TERM", $"{process.Id}"]);
        kill.WaitForExit();
    }

    /// <summary>Waits for its end.</summary>
    /// <returns>The exit code.</returns>
    public async Task<int> EndAsync()
    {
        await process.WaitForExitAsync().WaitAsync(Patience);
        return process.ExitCode;
    }

    public void Dispose()
    {
        if (!process.HasExited)
            process.Kill();
        process.Dispose();
    }
}
