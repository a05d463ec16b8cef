using PartPicker.Parts;

namespace PartPicker.Storage;

/// <summary>Everything kept, in one SQLite file.</summary>
public sealed class SqliteStore : ICatalogStore, IPickStore, IKeyStore, IDisposable
{
    private readonly SqliteFile file;
    private readonly CatalogTables catalog;
    private readonly PickTables picks;
    private readonly KeyTables keys;

    /// <summary>Opens the file, makes it when it is not there, and brings its schema up to date.</summary>
    /// <exception cref="StoreException">The file is no store of ours, or a newer program wrote it.</exception>
    public SqliteStore(string path)
    {
        file = new SqliteFile(path);
        SqliteMigrations.Run(file);
        catalog = new CatalogTables(file.Open);
        picks = new PickTables(file.Open);
        keys = new KeyTables(file.Open);
    }

    public CatalogSnapshot? LoadNewest() => catalog.LoadNewest();

    public CatalogSnapshot Save(CatalogContents contents, DateTimeOffset now) => catalog.Save(contents, now);

    public StoredPick? Find(string id, DateTimeOffset now) => picks.Find(id, now);

    public DateTimeOffset? ExpiryOf(string id) => picks.ExpiryOf(id);

    public StoredPick Keep(
        string id, string catalogRevision, string modelVersion, ReadOnlyMemory<byte> body, DateTimeOffset now) =>
        picks.Keep(id, catalogRevision, modelVersion, body, now);

    public IReadOnlyList<StoredKey> ReadKeys() => keys.ReadKeys();

    public void AddKey(StoredKey key) => keys.AddKey(key);

    public bool RevokeKey(string id, DateTimeOffset now) => keys.RevokeKey(id, now);

    /// <summary>Lets go of the pooled connections, so that the file may be moved or deleted.</summary>
    public void Dispose() => file.Close();
}
