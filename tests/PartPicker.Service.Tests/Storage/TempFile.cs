using PartPicker.Storage;

namespace PartPicker.Service.Tests.Storage;

/// <summary>A folder of its own for a store file, and the stores opened over it; all gone at the end.</summary>
internal sealed class TempFile : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("part-picker-store-");
    private readonly List<SqliteStore> stores = [];

    public string Path => System.IO.Path.Combine(folder.FullName, "new", "store.db");

    public SqliteStore Open()
    {
        var store = new SqliteStore(Path);
        stores.Add(store);
        return store;
    }

    public void Dispose()
    {
        stores.ForEach(s => s.Dispose());
        folder.Delete(recursive: true);
    }
}
