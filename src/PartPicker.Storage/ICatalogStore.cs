using PartPicker.Parts;

namespace PartPicker.Storage;

/// <summary>Keeps catalog revisions.</summary>
public interface ICatalogStore
{
    /// <summary>The newest revision; null when nothing was imported yet.</summary>
    CatalogSnapshot? LoadNewest();

    /// <summary>Writes one revision whole, in one transaction, and returns it. Equal contents keep their revision.</summary>
    CatalogSnapshot Save(CatalogContents contents, DateTimeOffset now);
}
