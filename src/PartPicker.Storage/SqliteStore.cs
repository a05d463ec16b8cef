using PartPicker.Parts;

namespace PartPicker.Storage;

/// <summary>Everything kept, in one SQLite file.</summary>
public sealed class SqliteStore : ICatalogStore, IPickStore, IDisposable
{
    private readonly SqliteFile file;
    private readonly CatalogTables catalog;
    private readonly PickTables picks;

    /// <summary>Opens the file, makes it when it is not there, and brings its schema up to date.</summary>
    /// <exception cref="StoreException">The file is no store of ours, or a newer program wrote it.</exception>
    public SqliteStore(string path)
    {
        file = new SqliteFile(path);
        SqliteMigrations.Run(file);
        catalog = new CatalogTables(file.Open);
        picks = new PickTables(file.Open);
    }

    public CatalogSnapshot? LoadNewest() => catalog.LoadNewest();

    public CatalogSnapshot Save(CatalogContents contents, DateTimeOffset now) => catalog.Save(contents, now);

    public StoredPick? Find(string id, DateTimeOffset now) => picks.Find(id, now);

    public DateTimeOffset? ExpiryOf(string id) => picks.ExpiryOf(id);

    public StoredPick Keep(
        string id, string catalogRevision, string modelVersion, ReadOnlyMemory<byte> body, DateTimeOffset now) =>
        picks.Keep(id, catalogRevision, modelVersion, body, now);

    /// <summary>Lets go of the pooled connections, so that the file may be moved or deleted.</summary>
    public void Dispose() => file.Close();
}
