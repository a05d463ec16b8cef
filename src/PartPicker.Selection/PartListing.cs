using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Lists parts by what they are.</summary>
public static class PartListing
{
    /// <summary>The page that a query asks for.</summary>
    public static PartPage List(CatalogSnapshot catalog, PartQuery query) =>
        throw new NotSupportedException($"{catalog.Revision} {query.Limit}");
}
