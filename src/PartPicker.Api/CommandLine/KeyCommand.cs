using System.Data.Common;
using PartPicker.Api.Keys;
using PartPicker.Api.StartUp;
using PartPicker.Api.Wire;
using PartPicker.Storage;

namespace PartPicker.Api.CommandLine;

/// <summary>Makes, lists and revokes keys in the store, beside a service that may be running.</summary>
internal static class KeyCommand
{
    /// <summary>What the command line begins with.</summary>
    public const string Name = "key";

    private const int Failed = 1;

    /// <summary>The exit code.</summary>
    public static int Run(IReadOnlyList<string> args, TextWriter output, TextWriter errors)
    {
        DateTimeOffset now = TimeProvider.System.GetUtcNow();
        (KeyOptions? options, string? complaint) = KeyOptions.Read(args, now);
        if (options is null)
        {
            errors.WriteLine($"{complaint}{Environment.NewLine}{Environment.NewLine}{Usage.Text}");
            return Usage.ExitCode;
        }

        string file = ServiceFolders.Find(
            new ServiceOptions { DataFolder = options.DataFolder }, Directory.GetCurrentDirectory()).StoreFile;
        try
        {
            using SqliteStore store = new(file);
            return options.Action switch
            {
                KeyAction.Create => Create(store, options, now, output, errors),
                KeyAction.Revoke => Revoke(store, options.Id!, now, errors),
                _ => List(store, now, output),
            };
        }
        catch (StoreException fault)
        {
            errors.WriteLine(fault.Message);
        }
        catch (Exception fault) when (fault is DbException or IOException or UnauthorizedAccessException)
        {
            errors.WriteLine(
                $"The store {file} cannot be opened or written. Its folder must be one that this account may write to, on a disk "
                + "with room; name another with --data.");
        }

        return Failed;
    }

    // Nothing but the key goes to the output, so that a script can take it from there.
    private static int Create(
        SqliteStore store, KeyOptions options, DateTimeOffset now, TextWriter output, TextWriter errors)
    {
        string key = KeyText.Make(options.Origins.Count > 0);
        byte[] hash = KeyText.Hash(key);
        StoredKey kept = new(
            KeyText.Id(hash), hash, options.Scope, options.Origins, options.KeyName, now, options.ExpiresAt);
        store.AddKey(kept);
        errors.WriteLine(
            $"Key {kept.Id} with the scope {WireJson.Word(kept.Scope)} counts {Until(kept)}. It is shown this once; the store keeps only its hash.");
        errors.WriteLine(kept.IsPublishable
            ? $"For pages of {string.Join(", ", kept.Origins)}, which send it as {SentKey.Header}: KEY."
            : "For programs, which send it as Authorization: Bearer KEY. Never put it into a web page.");
        output.WriteLine(key);
        return 0;
    }

    private static int Revoke(SqliteStore store, string id, DateTimeOffset now, TextWriter errors)
    {
        bool revoked = store.RevokeKey(id, now);
        errors.WriteLine(revoked
            ? $"Key {id} is revoked; a running service refuses it within a second."
            : $"No key {id} is in use: '{Name} list' shows those that are.");
        return revoked ? 0 : Failed;
    }

    private static int List(SqliteStore store, DateTimeOffset now, TextWriter output)
    {
        string[][] rows =
        [
            ["id", "scope", "state", "created", "expires", "name", "origins"],
            .. store.ReadKeys().Select(key => new[]
            {
                key.Id, WireJson.Word(key.Scope), State(key, now), Day(key.CreatedAt), Day(key.ExpiresAt), key.Name,
                string.Join(' ', key.Origins),
            }),
        ];
        int[] widths = [.. rows[0].Select((_, column) => rows.Max(row => row[column].Length))];
        foreach (string[] row in rows)
            output.WriteLine(string.Join("  ", row.Select((cell, column) => cell.PadRight(widths[column]))).TrimEnd());
        return 0;
    }

    private static string State(StoredKey key, DateTimeOffset now) =>
        key.RevokedAt is not null ? "revoked" : key.IsExpired(now) ? "expired" : "usable";

    private static string Until(StoredKey key) => key.ExpiresAt is { } end
        ? $"until {end.UtcDateTime:yyyy-MM-dd HH:mm} UTC"
        : "until it is revoked";

    private static string Day(DateTimeOffset? time) => time is { } day ? $"{day.UtcDateTime:yyyy-MM-dd}" : "never";
}
