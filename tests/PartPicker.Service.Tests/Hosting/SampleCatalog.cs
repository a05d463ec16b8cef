using PartPicker.Catalog;
using PartPicker.Parts;

namespace PartPicker.Service.Tests;

/// <summary>The sample catalog, read once.</summary>
public static class SampleCatalog
{
    public const string Machine = "valley-two-seater";

    public static CatalogContents Contents { get; } = CatalogImport.ReadFolder(Repository.CatalogSamples).Contents
        ?? throw new InvalidOperationException("The sample catalog has findings.");

    public static CatalogSnapshot Snapshot { get; } = new("sample", Contents);
}
