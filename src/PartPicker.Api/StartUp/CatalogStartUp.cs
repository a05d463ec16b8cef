using PartPicker.Api.CommandLine;
using PartPicker.Catalog;
using PartPicker.Parts;
using PartPicker.Storage;

namespace PartPicker.Api.StartUp;

/// <summary>Loads the catalog that the service starts with.</summary>
internal static class CatalogStartUp
{
    /// <summary>
    /// The newest revision of the store. A catalog that was named is imported first, and an empty store imports
    /// the usual one. Null, with the findings printed, when the catalog has faults: then nothing is stored.
    /// </summary>
    public static CatalogSnapshot? Load(
        ICatalogStore store, ServiceFolders folders, bool catalogNamed, DateTimeOffset now, TextWriter errors)
    {
        if (!catalogNamed && store.LoadNewest() is { } kept)
            return kept;
        ImportResult import = CatalogImport.ReadFolder(folders.Catalog);
        if (import.Contents is { } contents)
            return store.Save(contents, now);
        FindingsReport.Print(folders.Catalog, import, errors);
        return null;
    }
}
