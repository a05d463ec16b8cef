using System.Data.Common;
using Dapper;

namespace PartPicker.Storage;

/// <summary>Picks as rows; times are whole milliseconds since 1970.</summary>
internal sealed class PickTables(Func<DbConnection> open) : IPickStore
{
    public StoredPick? Find(string id, DateTimeOffset now)
    {
        using DbConnection connection = open();
        return Row(connection, id, now) is { } row ? Renewed(connection, row, now) : null;
    }

    public DateTimeOffset? ExpiryOf(string id)
    {
        using DbConnection connection = open();
        return connection.QuerySingleOrDefault<long?>("SELECT expires_ms FROM pick WHERE id = @id", new { id }) is { } expires
            ? DateTimeOffset.FromUnixTimeMilliseconds(expires)
            : null;
    }

    public StoredPick Keep(
        string id, string catalogRevision, string modelVersion, ReadOnlyMemory<byte> body, DateTimeOffset now)
    {
        if (body.Length > StoreLimits.MaxPickBytes)
        {
            throw new ArgumentException(
                $"A pick of {body.Length} bytes is too large to keep; {StoreLimits.MaxPickBytes} are allowed. "
                + "Ask for fewer picks.", nameof(body));
        }

        using DbConnection connection = open();
        using DbTransaction transaction = connection.BeginTransaction();
        connection.Execute(
            "DELETE FROM pick WHERE expires_ms <= @forgotten",
            new { forgotten = (now - StoreLimits.ExpiredPickMemory).ToUnixTimeMilliseconds() });
        connection.Execute(
            """
            INSERT INTO pick (id, catalog_revision, model_version, body, created_ms, expires_ms)
            VALUES (@id, @catalogRevision, @modelVersion, @body, @created, @expires)
            ON CONFLICT (id) DO UPDATE SET
                catalog_revision = excluded.catalog_revision, model_version = excluded.model_version,
                body = excluded.body, created_ms = excluded.created_ms, expires_ms = excluded.expires_ms
            WHERE pick.expires_ms <= excluded.created_ms
            """,
            new
            {
                id,
                catalogRevision,
                modelVersion,
                body = body.ToArray(),
                created = now.ToUnixTimeMilliseconds(),
                expires = (now + StoreLimits.PickLifetime).ToUnixTimeMilliseconds(),
            });
        StoredPick kept = Renewed(connection, Row(connection, id, now)!, now);
        transaction.Commit();
        return kept;
    }

    private static PickRow? Row(DbConnection connection, string id, DateTimeOffset now) =>
        connection.QuerySingleOrDefault<PickRow>(
            """
            SELECT id AS Id, catalog_revision AS CatalogRevision, model_version AS ModelVersion, body AS Body,
                expires_ms AS ExpiresMs
            FROM pick WHERE id = @id AND expires_ms > @now
            """,
            new { id, now = now.ToUnixTimeMilliseconds() });

    private static StoredPick Renewed(DbConnection connection, PickRow row, DateTimeOffset now)
    {
        DateTimeOffset expiry = DateTimeOffset.FromUnixTimeMilliseconds(row.ExpiresMs);
        long expires = StoreLimits.ExpiryAfterRead(expiry, now).ToUnixTimeMilliseconds();
        if (expires != row.ExpiresMs)
            connection.Execute("UPDATE pick SET expires_ms = @expires WHERE id = @Id", new { expires, row.Id });

        return new StoredPick(
            row.Id, row.CatalogRevision, row.ModelVersion, row.Body,
            DateTimeOffset.FromUnixTimeMilliseconds(expires));
    }

    private sealed record PickRow(
        string Id, string CatalogRevision, string ModelVersion, byte[] Body, long ExpiresMs);
}
