namespace PartPicker.Api.Wire;

/// <summary>The service can answer questions.</summary>
internal sealed record ReadyWire
{
    /// <summary>Always "ready".</summary>
    public required string Status { get; init; }

    /// <summary>The catalog that is loaded.</summary>
    public required string CatalogRevision { get; init; }

    /// <summary>Version of the model and of the order.</summary>
    public required string ModelVersion { get; init; }
}
