using System.Globalization;
using PartPicker.Api.Keys;
using PartPicker.Api.Wire;
using PartPicker.Storage;

namespace PartPicker.Api.CommandLine;

internal enum KeyAction
{
    Create,
    List,
    Revoke,
}

/// <summary>What is asked of the keys on the command line.</summary>
internal sealed record KeyOptions(KeyAction Action)
{
    private const int MaxNameLength = 80;
    private const int MaxDays = 3_650;

    /// <summary>The key to revoke.</summary>
    public string? Id { get; init; }

    public KeyScope Scope { get; init; }

    public IReadOnlyList<string> Origins { get; init; } = [];

    public string KeyName { get; init; } = "";

    public DateTimeOffset? ExpiresAt { get; init; }

    /// <summary>Where the store lies; the usual place when null.</summary>
    public string? DataFolder { get; init; }

    private bool ScopeIsNamed { get; init; }

    /// <summary>The options, or a sentence that says what is wrong with them.</summary>
    public static (KeyOptions? Options, string? Complaint) Read(IReadOnlyList<string> args, DateTimeOffset now)
    {
        string[] words = [.. Enum.GetValues<KeyAction>().Select(WireJson.Word)];
        if (args.Count == 0 || Array.IndexOf(words, args[0]) is not (>= 0 and var action))
            return (null, $"'{KeyCommand.Name}' takes one of: {string.Join(", ", words)}.");
        KeyOptions options = new((KeyAction)action);
        for (int i = 1; i < args.Count; i++)
        {
            (string name, string? value) = ServiceOptions.Split(args[i]);
            if (options.Action == KeyAction.Revoke && options.Id is null && !name.StartsWith('-'))
            {
                options = options with { Id = name };
                continue;
            }

            if (!options.Takes(name))
                return (null, $"'{name}' is not an option of '{KeyCommand.Name} {words[action]}'.");
            if (value is null && i + 1 < args.Count)
                value = args[++i];
            if (string.IsNullOrEmpty(value))
                return (null, $"{name} needs a value.");
            (KeyOptions? next, string? complaint) = options.With(name, value, now);
            if (next is null)
                return (null, complaint);
            options = next;
        }

        return options.WhyIncomplete() is { } why ? (null, why) : (options, null);
    }

    private bool Takes(string name) =>
        name == "--data" || (Action == KeyAction.Create && name is "--scope" or "--origin" or "--expires" or "--name");

    private string? WhyIncomplete() => Action switch
    {
        KeyAction.Revoke when Id is null => $"'{KeyCommand.Name} revoke' takes the id of a key, as '{KeyCommand.Name} list' shows it.",
        KeyAction.Create when !ScopeIsNamed => $"--scope is needed, one of: {Scopes}.",
        KeyAction.Create when Origins.Count > 0 && Scope != KeyScope.Read =>
            "A key with --origin stands in web pages for everybody to read: its scope can only be read.",
        _ => null,
    };

    private static string Scopes => string.Join(", ", Enum.GetValues<KeyScope>().Select(WireJson.Word));

    private (KeyOptions? Options, string? Complaint) With(string name, string value, DateTimeOffset now) => name switch
    {
        "--data" => (this with { DataFolder = Path.GetFullPath(value) }, null),
        "--scope" => WithScope(value),
        "--origin" => WithOrigin(value),
        "--name" => value.Length <= MaxNameLength && !value.Any(char.IsControl)
            ? (this with { KeyName = value }, null)
            : (null, $"--name takes at most {MaxNameLength} characters, on one line."),
        _ => Expiry(value, now) is { } expiry && expiry > now
            ? (this with { ExpiresAt = expiry }, null)
            : (null, $"--expires takes a day to come, from which on the key is refused, as 2031-12-31; or days from now, from 1d to {MaxDays}d; not '{value}'."),
    };

    private (KeyOptions? Options, string? Complaint) WithScope(string value)
    {
        foreach (KeyScope scope in Enum.GetValues<KeyScope>())
        {
            if (WireJson.Word(scope) == value)
                return (this with { Scope = scope, ScopeIsNamed = true }, null);
        }

        return (null, $"--scope takes one of: {Scopes}; not '{value}'.");
    }

    private (KeyOptions? Options, string? Complaint) WithOrigin(string value)
    {
        if (WebOrigin.Read(value) is not { } origin)
            return (null, $"--origin takes scheme, host and port of web pages, as https://shop.example, and no path; not '{value}'.");
        return Origins.Count < WebOrigin.MaxOrigins
            ? (this with { Origins = [.. Origins.Append(origin).Distinct()] }, null)
            : (null, $"A key takes at most {WebOrigin.MaxOrigins} origins.");
    }

    private static DateTimeOffset? Expiry(string text, DateTimeOffset now)
    {
        if (text.EndsWith('d') && int.TryParse(text[..^1], NumberStyles.None, CultureInfo.InvariantCulture, out int days))
            return days is >= 1 and <= MaxDays ? now.AddDays(days) : null;
        return DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
            ? new DateTimeOffset(day, default, TimeSpan.Zero)
            : null;
    }
}
