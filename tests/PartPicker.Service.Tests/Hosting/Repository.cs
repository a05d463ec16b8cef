namespace PartPicker.Service.Tests;

/// <summary>Files of the repository that tests read.</summary>
public static class Repository
{
    public static string Root { get; } = Find();

    public static string CatalogSamples { get; } = Path.Combine(Root, "catalog-samples");

    private static string Find()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "PartPicker.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
