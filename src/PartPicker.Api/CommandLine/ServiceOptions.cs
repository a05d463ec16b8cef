using System.Globalization;
using System.Net;
using PartPicker.Api.Capacity;
using PartPicker.Api.Docs;

namespace PartPicker.Api.CommandLine;

/// <summary>What was asked for on the command line.</summary>
internal sealed record ServiceOptions
{
    public const int StandardPort = 5180;
    private const int MaxPort = 65_535;
    private const string DocsCommand = "docs";

    // Settings of the web host itself are passed on as they are, in the form --environment=Development.
    private static readonly string[] HostSettingNames = ["environment", "contentRoot", "applicationName"];

    /// <summary>Answer the sample question and end.</summary>
    public bool Once { get; init; }

    /// <summary>Serve without asking the sample question.</summary>
    public bool Quiet { get; init; }

    public bool Help { get; init; }

    /// <summary>Print this page of reference and end; serve when null.</summary>
    public string? Page { get; init; }

    /// <summary>Where to listen; 0 takes any free port.</summary>
    public int Port { get; init; } = StandardPort;

    /// <summary>The address to listen at.</summary>
    public IPAddress Listen { get; init; } = IPAddress.Loopback;

    /// <summary>True where a proxy on this machine passes on the requests of others.</summary>
    public bool BehindProxy { get; init; }

    /// <summary>True where others than this machine may ask, so that every request needs a key.</summary>
    public bool KeysNeeded => BehindProxy || !IPAddress.IsLoopback(Listen);

    /// <summary>Limits that were changed, by name.</summary>
    public IReadOnlyDictionary<string, int> Limits { get; init; } = new Dictionary<string, int>();

    /// <summary>Where the store lies; the usual place when null.</summary>
    public string? DataFolder { get; init; }

    /// <summary>
    /// Which catalog to import; null imports the sample catalog, and only into an empty store.
    /// </summary>
    public string? CatalogFolder { get; init; }

    public IReadOnlyList<string> HostSettings { get; init; } = [];

    /// <summary>The number that holds for a limit.</summary>
    public int Of(ServiceLimit limit) => Limits.GetValueOrDefault(limit.Name, limit.Standard);

    /// <summary>The options, or a sentence that says what is wrong with them.</summary>
    public static (ServiceOptions? Options, string? Complaint) Read(IReadOnlyList<string> args)
    {
        if (args is [DocsCommand, ..])
            return ReadPage([.. args.Skip(1)]);
        ServiceOptions options = new();
        List<string> hostSettings = [];
        for (int i = 0; i < args.Count; i++)
        {
            (string name, string? value) = Split(args[i]);
            if (value is not null && HostSettingNames.Contains(name[2..]))
            {
                hostSettings.Add(args[i]);
                continue;
            }

            if (name is "--port" or "--data" or "--catalog" or "--listen" or "--limit")
            {
                // Both "--port 5180" and "--port=5180" are usual.
                if (value is null && i + 1 < args.Count)
                    value = args[++i];
                if (string.IsNullOrEmpty(value))
                    return (null, $"{name} needs a value.");
            }

            (ServiceOptions? next, string? complaint) = options.With(name, value, args[i]);
            if (next is null)
                return (null, complaint);
            options = next;
        }

        return options is { Once: true, KeysNeeded: true }
            ? (null, "--once asks without a key: it goes with no --listen beyond this machine, and with no --behind-proxy.")
            : (options with { HostSettings = hostSettings }, null);
    }

    private static (ServiceOptions? Options, string? Complaint) ReadPage(IReadOnlyList<string> names) =>
        names is [var name] && ReferencePages.Names.Contains(name)
            ? (new ServiceOptions { Page = name }, null)
            : (null, $"'{DocsCommand}' takes one of: {string.Join(", ", ReferencePages.Names)}.");

    private (ServiceOptions? Options, string? Complaint) With(string name, string? value, string sent) =>
        name switch
        {
            "--data" => (this with { DataFolder = Path.GetFullPath(value!) }, null),
            "--catalog" => (this with { CatalogFolder = Path.GetFullPath(value!) }, null),
            "--port" => PortOf(value) is { } port
                ? (this with { Port = port }, null)
                : (null, $"--port takes a whole number from 0 to {MaxPort}, not '{value}'."),
            "--listen" => IPAddress.TryParse(value, out IPAddress? address)
                ? (this with { Listen = address }, null)
                : (null, $"--listen takes an IP address, as 0.0.0.0 for all of this machine, not '{value}'."),
            "--limit" => WithLimit(value!),
            "--behind-proxy" when value is null => (this with { BehindProxy = true }, null),
            "--once" when value is null => (this with { Once = true }, null),
            "--quiet" when value is null => (this with { Quiet = true }, null),
            "--help" or "-h" when value is null => (this with { Help = true }, null),
            _ => (null, $"'{sent}' is not an option."),
        };

    private (ServiceOptions? Options, string? Complaint) WithLimit(string text)
    {
        (string name, string? number) = text.Split('=', 2) is [var left, var right] ? (left, right) : (text, null);
        if (ServiceLimits.Find(name) is not { } limit)
        {
            return (null, $"--limit takes NAME=N, where NAME is one of: {string.Join(", ", ServiceLimits.All.Select(l => l.Name))}; "
                + $"not '{text}'.");
        }

        return int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int count)
            && count >= limit.Least && count <= ServiceLimit.Greatest
            ? (this with { Limits = new Dictionary<string, int>(Limits) { [name] = count } }, null)
            : (null, $"The limit {name} takes a whole number from {limit.Least} to {ServiceLimit.Greatest}, not '{number}'.");
    }

    private static int? PortOf(string? text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int port) && port <= MaxPort
            ? port
            : null;

    /// <summary>Name and value of "--name=value".</summary>
    public static (string Name, string? Value) Split(string arg)
    {
        int at = arg.StartsWith("--", StringComparison.Ordinal) ? arg.IndexOf('=', StringComparison.Ordinal) : -1;
        return at < 0 ? (arg, null) : (arg[..at], arg[(at + 1)..]);
    }
}
