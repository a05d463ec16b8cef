using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Answers which parts: the place to start reading.</summary>
public static class PartSelection
{
    /// <summary>Version of the model and of the order; it stands in every answer.</summary>
    public const string ModelVersion = "1.0";

    public static Outcome<PickAnswer> Pick(
        CatalogSnapshot catalog, PickRequest request, CancellationToken cancellation = default) =>
        throw new NotSupportedException($"{catalog.Revision} {request.Count} {cancellation.CanBeCanceled}");
}
