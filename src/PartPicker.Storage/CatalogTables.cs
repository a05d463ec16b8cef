using System.Data.Common;
using Dapper;
using PartPicker.Parts;

namespace PartPicker.Storage;

/// <summary>Catalog revisions as rows. The SQL is plain: it does not matter whose connection it is.</summary>
internal sealed class CatalogTables(Func<DbConnection> open) : ICatalogStore
{
    public CatalogSnapshot? LoadNewest()
    {
        using DbConnection connection = open();
        string? revision = Newest(connection);
        return revision is null ? null : new CatalogSnapshot(revision, Read(connection, revision));
    }

    public CatalogSnapshot Save(CatalogContents contents, DateTimeOffset now)
    {
        // Built first: contents that cannot be served are never written.
        var snapshot = new CatalogSnapshot(RevisionHash.Of(contents), contents);
        using DbConnection connection = open();
        using DbTransaction transaction = connection.BeginTransaction();
        if (Newest(connection) != snapshot.Revision)
        {
            if (!Publish(connection, snapshot.Revision))
                Write(connection, snapshot.Revision, contents, now);
            transaction.Commit();
        }

        return snapshot;
    }

    private static string? Newest(DbConnection connection) =>
        connection.QueryFirstOrDefault<string>("SELECT id FROM revision ORDER BY published DESC LIMIT 1");

    /// <summary>Puts a revision that was kept before in force again; false when there is none.</summary>
    private static bool Publish(DbConnection connection, string revision) =>
        connection.Execute(
            """
            UPDATE revision SET published = (SELECT MAX(published) + 1 FROM revision) WHERE id = @revision
            """,
            new { revision }) == 1;

    private static void Write(
        DbConnection connection, string revision, CatalogContents contents, DateTimeOffset now)
    {
        connection.Execute(
            """
            INSERT INTO revision (id, published, created_ms)
            VALUES (@revision, (SELECT COALESCE(MAX(published), 0) + 1 FROM revision), @now)
            """,
            new { revision, now = now.ToUnixTimeMilliseconds() });
        connection.Execute(
            "INSERT INTO catalog_item (revision, kind, id, body) VALUES (@revision, @kind, @id, @body)",
            contents.Items.Select(
                i => new { revision, kind = ItemJson.Word(i.Kind), id = i.Id, body = ItemJson.Write(i) }));
        connection.Execute(
            "INSERT INTO outlet (revision, id, currency) VALUES (@revision, @id, @currency)",
            contents.Outlets.Select(o => new { revision, id = o.Id, currency = o.Currency }));
        connection.Execute(
            """
            INSERT INTO offer (revision, outlet_id, part_id, price_minor, stock)
            VALUES (@revision, @outlet, @part, @price, @stock)
            """,
            from outlet in contents.Outlets
            from offer in outlet.Offers
            select new
            {
                revision,
                outlet = outlet.Id,
                part = offer.Key,
                price = offer.Value.PriceMinor,
                stock = offer.Value.Stock,
            });
    }

    private static CatalogContents Read(DbConnection connection, string revision)
    {
        CatalogItem[] items = connection.Query<ItemRow>(
                "SELECT kind, body FROM catalog_item WHERE revision = @revision ORDER BY kind, id",
                new { revision })
            .Select(row => ItemJson.Read(row.Kind, row.Body))
            .ToArray();
        ILookup<string, OfferRow> offers = connection.Query<OfferRow>(
                """
                SELECT outlet_id AS OutletId, part_id AS PartId, price_minor AS PriceMinor, stock AS Stock
                FROM offer WHERE revision = @revision
                """,
                new { revision })
            .ToLookup(row => row.OutletId, StringComparer.Ordinal);
        Outlet[] outlets = connection.Query<OutletRow>(
                "SELECT id, currency FROM outlet WHERE revision = @revision ORDER BY id", new { revision })
            .Select(row => new Outlet(row.Id, row.Currency, offers[row.Id].ToDictionary(
                o => o.PartId, o => new Offer(o.PriceMinor, (int?)o.Stock), StringComparer.Ordinal)))
            .ToArray();
        return new CatalogContents(items, outlets);
    }

    // Columns meet parameters by name; whole numbers come as long from SQLite.
    private sealed record ItemRow(string Kind, string Body);

    private sealed record OutletRow(string Id, string Currency);

    private sealed record OfferRow(string OutletId, string PartId, long? PriceMinor, long? Stock);
}
