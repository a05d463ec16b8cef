using PartPicker.Catalog;
using PartPicker.Parts;

namespace PartPicker.Tests.Catalog;

/// <summary>The sample catalog of the repository, read once.</summary>
internal static class SampleFolder
{
    public static readonly string Path = System.IO.Path.Combine(Root(), "catalog-samples");

    public static readonly ImportResult Import = CatalogImport.ReadFolder(Path);

    public static readonly CatalogSnapshot Snapshot = new("samples", Import.Contents
        ?? throw new InvalidOperationException($"The sample catalog has findings, as {Import.Findings[0]}"));

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "PartPicker.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
