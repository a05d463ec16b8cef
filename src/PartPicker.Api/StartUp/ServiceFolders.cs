using PartPicker.Api.CommandLine;

namespace PartPicker.Api.StartUp;

/// <summary>Where the store and the catalog lie.</summary>
/// <param name="Data">Folder of the store.</param>
/// <param name="Catalog">Folder of the catalog that an empty store imports.</param>
internal sealed record ServiceFolders(string Data, string Catalog)
{
    private const string SolutionFile = "PartPicker.sln";
    private const string DataName = ".data";
    private const string CatalogName = "catalog-samples";
    private const string StoreName = "part-picker.db";

    public string StoreFile => Path.Combine(Data, StoreName);

    /// <summary>
    /// As asked for, or the usual places in the repository, whichever folder the program was started from.
    /// </summary>
    public static ServiceFolders Find(ServiceOptions options, string contentRoot)
    {
        string home = Repository(contentRoot) ?? Repository(AppContext.BaseDirectory) ?? contentRoot;
        return new ServiceFolders(
            options.DataFolder ?? Path.Combine(home, DataName),
            options.CatalogFolder ?? Path.Combine(home, CatalogName));
    }

    private static string? Repository(string start)
    {
        DirectoryInfo? folder = new(start);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, SolutionFile)))
            folder = folder.Parent;
        return folder?.FullName;
    }
}
