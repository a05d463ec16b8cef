namespace PartPicker.Service.Tests;

/// <summary>Files of the repository that tests read.</summary>
public static class Repository
{
    public static string Root { get; } = Find();

    public static string CatalogSamples { get; } = Path.Combine(Root, "catalog-samples");

    /// <summary>The ready-made questions of the sample catalog whose file names end so.</summary>
    public static IEnumerable<string> SampleRequests(string ending) =>
        Directory.GetFiles(Path.Combine(CatalogSamples, "requests"), "*" + ending)
            .Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal);

    public static string ReadSampleRequest(string name) =>
        File.ReadAllText(Path.Combine(CatalogSamples, "requests", name));

    /// <summary>Writes the sample catalog into a folder, the text of each file (by its place inside) changed.</summary>
    public static void CopySamples(string to, Func<string, string, string> changed)
    {
        foreach (string file in Directory.GetFiles(CatalogSamples, "*", SearchOption.AllDirectories))
        {
            string inside = Path.GetRelativePath(CatalogSamples, file);
            string copy = Path.Combine(to, inside);
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.WriteAllText(copy, changed(inside, File.ReadAllText(file)));
        }
    }

    private static string Find()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "PartPicker.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
