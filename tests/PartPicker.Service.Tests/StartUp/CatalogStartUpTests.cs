using PartPicker.Api.CommandLine;
using PartPicker.Api.StartUp;
using PartPicker.Parts;
using PartPicker.Storage;
using Xunit;

namespace PartPicker.Service.Tests.StartUp;

public sealed class CatalogStartUpTests : IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly SqliteStore store;

    public CatalogStartUpTests() => store = new SqliteStore(Path.Combine(folder.Path, "store.db"));

    private string Missing => Path.Combine(folder.Path, "nowhere");

    public void Dispose()
    {
        store.Dispose();
        folder.Dispose();
    }

    [Fact]
    public void An_empty_store_takes_the_usual_catalog_and_a_full_one_is_left_alone()
    {
        CatalogSnapshot first = Load(Repository.CatalogSamples, catalogNamed: false)!;

        // A second import would fail here: there is no such folder.
        CatalogSnapshot second = Load(Missing, catalogNamed: false)!;

        Assert.Equal(first.Revision, second.Revision);
        Assert.NotEmpty(second.Machines);
    }

    [Fact]
    public void A_catalog_that_is_named_becomes_the_newest()
    {
        CatalogSnapshot first = Load(Repository.CatalogSamples, catalogNamed: false)!;
        string changed = Path.Combine(folder.Path, "changed");
        Repository.CopySamples(
            changed, (_, text) => text.Replace("Drive spring 116/219", "Drive spring", StringComparison.Ordinal));

        CatalogSnapshot second = Load(changed, catalogNamed: true)!;

        Assert.NotEqual(first.Revision, second.Revision);
        Assert.Equal(second.Revision, Load(Missing, catalogNamed: false)!.Revision);
        Assert.Equal(first.Revision, Load(Repository.CatalogSamples, catalogNamed: true)!.Revision);
        Assert.Equal(first.Revision, Load(Missing, catalogNamed: false)!.Revision);
    }

    [Fact]
    public void A_catalog_with_findings_stores_nothing_and_says_why()
    {
        StringWriter errors = new();

        Assert.Null(CatalogStartUp.Load(store, Folders(Missing), catalogNamed: true, DateTimeOffset.UnixEpoch, errors));
        Assert.Contains("nothing was stored", errors.ToString());
        Assert.Contains($"  the folder, value \"{Missing}\": The catalog folder cannot be read: it is not there.", errors.ToString());
        Assert.Contains("more findings may follow", errors.ToString());
        Assert.Null(store.LoadNewest());
    }

    [Fact]
    public void The_usual_folders_are_found_from_anywhere_in_the_repository()
    {
        string deep = Path.Combine(Repository.Root, "src", "PartPicker.Api");

        ServiceFolders folders = ServiceFolders.Find(new ServiceOptions(), deep);

        Assert.Equal(Path.Combine(Repository.Root, ".data"), folders.Data);
        Assert.Equal(Repository.CatalogSamples, folders.Catalog);
        // Elsewhere the program's own folder leads there.
        Assert.Equal(folders, ServiceFolders.Find(new ServiceOptions(), folder.Path));
        Assert.Equal(
            new ServiceFolders("/d", "/c"),
            ServiceFolders.Find(new ServiceOptions { DataFolder = "/d", CatalogFolder = "/c" }, deep));
    }

    private CatalogSnapshot? Load(string catalog, bool catalogNamed) =>
        CatalogStartUp.Load(store, Folders(catalog), catalogNamed, DateTimeOffset.UnixEpoch, TextWriter.Null);

    private static ServiceFolders Folders(string catalog) => new("", catalog);
}
