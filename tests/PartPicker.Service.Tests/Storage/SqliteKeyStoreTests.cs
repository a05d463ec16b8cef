using PartPicker.Storage;

namespace PartPicker.Service.Tests.Storage;

public sealed class SqliteKeyStoreTests : KeyStoreTests, IDisposable
{
    private readonly TempFile file = new();

    public void Dispose() => file.Dispose();

    private protected override IKeyStore Open() => file.Open();
}
