using Dapper;
using Microsoft.Data.Sqlite;

namespace PartPicker.Storage;

/// <summary>The one place that opens connections, since most pragmas belong to a connection.</summary>
internal sealed class SqliteFile
{
    private const int BusySeconds = 5;

    // A write must be on disk before an answer names it, hence FULL.
    private static readonly string Pragmas =
        $"""
        PRAGMA busy_timeout = {BusySeconds * 1000};
        PRAGMA journal_mode = WAL;
        PRAGMA synchronous = FULL;
        PRAGMA foreign_keys = ON;
        """;

    private readonly string connectionString;

    public SqliteFile(string path)
    {
        FullPath = Path.GetFullPath(path);
        Directory.CreateDirectory(Path.GetDirectoryName(FullPath)!);
        connectionString = new SqliteConnectionStringBuilder
        {
            DataSource = FullPath,
            // The driver waits for a lock by itself as well; unset, that would be 30 s.
            DefaultTimeout = BusySeconds,
        }.ToString();
    }

    public string FullPath { get; }

    public SqliteConnection Open()
    {
        var connection = new SqliteConnection(connectionString);
        try
        {
            connection.Open();
            connection.Execute(Pragmas);
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    public void Close()
    {
        using var connection = new SqliteConnection(connectionString);
        SqliteConnection.ClearPool(connection);
    }
}
