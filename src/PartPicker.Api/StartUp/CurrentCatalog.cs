using PartPicker.Api.Errors;
using PartPicker.Parts;

namespace PartPicker.Api.StartUp;

/// <summary>The catalog that answers are made from; immutable, swapped whole.</summary>
internal sealed class CurrentCatalog
{
    private volatile CatalogSnapshot? snapshot;

    /// <summary>Null until a catalog is loaded.</summary>
    public CatalogSnapshot? Snapshot
    {
        get => snapshot;
        set => snapshot = value;
    }

    /// <summary>What every feature answers while there is none.</summary>
    public static ProblemAnswer NotLoaded() =>
        Problems.Of(ErrorCodes.CatalogNotLoaded, "The service runs, but holds no catalog yet.");
}
