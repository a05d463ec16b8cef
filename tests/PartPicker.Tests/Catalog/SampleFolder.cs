using PartPicker.Catalog;
using PartPicker.Parts;

namespace PartPicker.Tests.Catalog;

/// <summary>The sample catalog of the repository, read once.</summary>
internal static class SampleFolder
{
    public static readonly string Path = System.IO.Path.Combine(Root(), "catalog-samples");

    public static readonly ImportResult Import = CatalogImport.ReadFolder(Path);

    public static CatalogSnapshot Snapshot { get; } = new("samples", Import.Contents
        ?? throw new InvalidOperationException($"The sample catalog has findings: {string.Join("; ", Import.Findings)}"));

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "PartPicker.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
