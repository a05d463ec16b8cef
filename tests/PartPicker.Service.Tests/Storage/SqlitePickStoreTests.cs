using PartPicker.Storage;

namespace PartPicker.Service.Tests.Storage;

public sealed class SqlitePickStoreTests : PickStoreTests, IDisposable
{
    private readonly TempFile file = new();

    public void Dispose() => file.Dispose();

    private protected override IPickStore Open() => file.Open();
}
