using PartPicker.Storage;

namespace PartPicker.Service.Tests.Storage;

public sealed class SqliteCatalogStoreTests : CatalogStoreTests, IDisposable
{
    private readonly TempFile file = new();

    public void Dispose() => file.Dispose();

    private protected override ICatalogStore Open() => file.Open();
}
