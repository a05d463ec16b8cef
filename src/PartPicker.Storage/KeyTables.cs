using System.Data.Common;
using Dapper;

namespace PartPicker.Storage;

/// <summary>Keys as rows; times are whole milliseconds since 1970.</summary>
internal sealed class KeyTables(Func<DbConnection> open) : IKeyStore
{
    private const char BetweenOrigins = ' ';

    public IReadOnlyList<StoredKey> ReadKeys()
    {
        using DbConnection connection = open();
        return
        [
            .. connection.Query<KeyRow>(
                """
                SELECT id AS Id, hash AS Hash, scope AS Scope, origins AS Origins, name AS Name,
                    created_ms AS CreatedMs, expires_ms AS ExpiresMs, revoked_ms AS RevokedMs
                FROM access_key ORDER BY created_ms, id
                """).Select(Key),
        ];
    }

    public void AddKey(StoredKey key)
    {
        using DbConnection connection = open();
        using DbTransaction transaction = connection.BeginTransaction();
        connection.Execute(
            "DELETE FROM access_key WHERE expires_ms <= @before OR revoked_ms <= @before",
            new { before = (key.CreatedAt - StoreLimits.UselessKeyLifetime).ToUnixTimeMilliseconds() });
        if (connection.ExecuteScalar<long>("SELECT COUNT(*) FROM access_key") >= StoreLimits.MaxKeys)
        {
            throw new StoreException(
                $"{StoreLimits.MaxKeys} keys are kept, which is the most. One that is revoked or expired makes room after "
                + $"{StoreLimits.UselessKeyLifetime.TotalDays:0} days.");
        }

        connection.Execute(
            """
            INSERT INTO access_key (id, hash, scope, origins, name, created_ms, expires_ms, revoked_ms)
            VALUES (@Id, @Hash, @scope, @origins, @Name, @created, @expires, @revoked)
            """,
            new
            {
                key.Id,
                key.Hash,
                scope = ItemJson.Word(key.Scope),
                origins = string.Join(BetweenOrigins, key.Origins),
                key.Name,
                created = key.CreatedAt.ToUnixTimeMilliseconds(),
                expires = key.ExpiresAt?.ToUnixTimeMilliseconds(),
                revoked = key.RevokedAt?.ToUnixTimeMilliseconds(),
            });
        transaction.Commit();
    }

    public bool RevokeKey(string id, DateTimeOffset now)
    {
        using DbConnection connection = open();
        return connection.Execute(
            "UPDATE access_key SET revoked_ms = @now WHERE id = @id AND revoked_ms IS NULL",
            new { id, now = now.ToUnixTimeMilliseconds() }) == 1;
    }

    private static StoredKey Key(KeyRow row) => new(
        row.Id, row.Hash, ScopeOf(row.Scope),
        row.Origins.Split(BetweenOrigins, StringSplitOptions.RemoveEmptyEntries), row.Name,
        DateTimeOffset.FromUnixTimeMilliseconds(row.CreatedMs), Time(row.ExpiresMs), Time(row.RevokedMs));

    private static DateTimeOffset? Time(long? ms) =>
        ms is { } known ? DateTimeOffset.FromUnixTimeMilliseconds(known) : null;

    private static KeyScope ScopeOf(string word) => Enum.TryParse(word, ignoreCase: true, out KeyScope scope)
        ? scope
        : throw new StoreException(
            $"The store holds a key of the unknown scope '{word}'. Use the program that wrote it.");

    private sealed record KeyRow(
        string Id, byte[] Hash, string Scope, string Origins, string Name, long CreatedMs, long? ExpiresMs,
        long? RevokedMs);
}
