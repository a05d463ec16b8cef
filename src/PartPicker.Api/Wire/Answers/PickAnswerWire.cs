using PartPicker.Quantities;

namespace PartPicker.Api.Wire;

/// <summary>The ranked choices, and why the rest is not among them.</summary>
internal sealed record PickAnswerWire
{
    /// <summary>
    /// Hash of request, units, precision, catalog revision and model version: equal questions have equal ids.
    /// </summary>
    public required string Id { get; init; }

    /// <summary>The catalog that was searched.</summary>
    public required string CatalogRevision { get; init; }

    /// <summary>Version of the model and of the order.</summary>
    public required string ModelVersion { get; init; }

    /// <summary>The system that quantities are written in: metric or inch.</summary>
    [WordsOf(typeof(UnitSystem))]
    public required string Units { get; init; }

    /// <summary>Whether numbers are rounded or written in full.</summary>
    public required string Precision { get; init; }

    /// <summary>
    /// The request as understood, in SI, with everything filled in. Sent again it has the same id.
    /// </summary>
    public required PickRequestWire Request { get; init; }

    /// <summary>What is fitted now, against the same target.</summary>
    public required FittedWire Fitted { get; init; }

    /// <summary>The choices, best first.</summary>
    public required IReadOnlyList<PickWire> Picks { get; init; }

    /// <summary>Parts that do not fit, each with its rule.</summary>
    public required IReadOnlyList<RefusalWire> Refusals { get; init; }

    /// <summary>How many more refusals there are than are listed.</summary>
    public required int RefusalsLeftOut { get; init; }

    /// <summary>Rules that could not be checked because a value is missing.</summary>
    public required IReadOnlyList<NotCheckedWire> NotChecked { get; init; }

    /// <summary>How many more unchecked rules there are than are listed.</summary>
    public required int NotCheckedLeftOut { get; init; }

    /// <summary>
    /// What stands between the request and a set within tolerance; empty when there is such a set.
    /// </summary>
    public required IReadOnlyList<ObstacleWire> InTheWay { get; init; }

    /// <summary>What the search did.</summary>
    public required WorkWire Work { get; init; }
}
