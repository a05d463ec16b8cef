using System.Reflection;
using Dapper;
using Microsoft.Data.Sqlite;

namespace PartPicker.Storage;

/// <summary>Brings a file to the newest schema: its user_version is the number of the last script run.</summary>
internal static class SqliteMigrations
{
    // SQLITE_NOTADB: the file is there but was never an SQLite file.
    private const int NotADatabase = 26;

    /// <summary>Scripts by the number that their names begin with.</summary>
    private static readonly SortedDictionary<int, string> Scripts =
        ReadScripts(typeof(SqliteMigrations).Assembly);

    public static int Newest => Scripts.Keys.Last();

    public static void Run(SqliteFile file)
    {
        try
        {
            using SqliteConnection connection = file.Open();
            if (VersionOf(connection, file) < Newest)
                Upgrade(connection, file);
        }
        catch (SqliteException e) when (e.SqliteErrorCode == NotADatabase)
        {
            throw new StoreException(
                $"'{file.FullPath}' is not an SQLite file. Name another file, or move this one away.", e);
        }
    }

    private static void Upgrade(SqliteConnection connection, SqliteFile file)
    {
        // Immediate: of two programs that start at once, one upgrades and the other finds it done.
        using SqliteTransaction transaction = connection.BeginTransaction();
        int version = VersionOf(connection, file, transaction);
        foreach ((int number, string script) in Scripts.Where(s => s.Key > version))
            connection.Execute($"{script}\nPRAGMA user_version = {number};", transaction: transaction);
        transaction.Commit();
    }

    private static int VersionOf(
        SqliteConnection connection, SqliteFile file, SqliteTransaction? transaction = null)
    {
        int version = connection.ExecuteScalar<int>("PRAGMA user_version", transaction: transaction);
        if (version > Newest)
        {
            throw new StoreException(
                $"'{file.FullPath}' has schema {version}, and this program knows schemas up to {Newest}. "
                + "Use the newer program that wrote it, or name another file.");
        }

        if (version == 0 && connection.ExecuteScalar<int>(
            "SELECT COUNT(*) FROM sqlite_master", transaction: transaction) > 0)
        {
            throw new StoreException(
                $"'{file.FullPath}' holds tables of another program. Name another file.");
        }

        return version;
    }

    private static SortedDictionary<int, string> ReadScripts(Assembly assembly)
    {
        var scripts = new SortedDictionary<int, string>();
        foreach (string name in assembly.GetManifestResourceNames())
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
            scripts.Add(int.Parse(name.Split('-')[0]), reader.ReadToEnd());
        }

        return scripts;
    }
}
