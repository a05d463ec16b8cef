using System.Globalization;
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

    /// <summary>Where the store lies; the usual place when null.</summary>
    public string? DataFolder { get; init; }

    /// <summary>
    /// Which catalog to import; null imports the sample catalog, and only into an empty store.
    /// </summary>
    public string? CatalogFolder { get; init; }

    public IReadOnlyList<string> HostSettings { get; init; } = [];

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

            if (name is "--port" or "--data" or "--catalog")
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

        return (options with { HostSettings = hostSettings }, null);
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
            "--once" when value is null => (this with { Once = true }, null),
            "--quiet" when value is null => (this with { Quiet = true }, null),
            "--help" or "-h" when value is null => (this with { Help = true }, null),
            _ => (null, $"'{sent}' is not an option."),
        };

    private static int? PortOf(string? text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int port) && port <= MaxPort
            ? port
            : null;

    private static (string Name, string? Value) Split(string arg)
    {
        int at = arg.StartsWith("--", StringComparison.Ordinal) ? arg.IndexOf('=', StringComparison.Ordinal) : -1;
        return at < 0 ? (arg, null) : (arg[..at], arg[(at + 1)..]);
    }
}
