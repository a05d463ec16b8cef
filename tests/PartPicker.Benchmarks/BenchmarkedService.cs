using System.Diagnostics;

namespace PartPicker.Benchmarks;

/// <summary>The service as a process of its own, with a store that goes with it.</summary>
internal sealed class BenchmarkedService : IDisposable
{
    private readonly Process process;
    private readonly string data;

    private BenchmarkedService(Process process, string data, Uri address)
    {
        this.process = process;
        this.data = data;
        Address = address;
    }

    public Uri Address { get; }

    /// <summary>Greatest working set so far.</summary>
    public long PeakBytes
    {
        get
        {
            process.Refresh();
            return process.PeakWorkingSet64;
        }
    }

    /// <param name="options">Options of the command line besides those of its place.</param>
    public static async Task<BenchmarkedService> StartAsync(params string[] options)
    {
        const string Beginning = "listening on ";
        string data = Directory.CreateTempSubdirectory("part-picker-").FullName;
        ProcessStartInfo start = new("dotnet") { RedirectStandardOutput = true };
        string program = Path.Combine(AppContext.BaseDirectory, "PartPicker.Api.dll");
        foreach (string arg in new[] { program, "--quiet", "--port=0", "--data", data }.Concat(options))
            start.ArgumentList.Add(arg);
        Process process = Process.Start(start)!;
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.StartsWith(Beginning, StringComparison.Ordinal))
                return new BenchmarkedService(process, data, new Uri(line[Beginning.Length..]));
        }

        throw new InvalidOperationException("The service ended before it listened.");
    }

    public void Dispose()
    {
        process.Kill();
        process.WaitForExit();
        process.Dispose();
        Directory.Delete(data, recursive: true);
    }
}
