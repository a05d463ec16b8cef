namespace PartPicker.Api.Wire;

/// <summary>Every machine of the catalog.</summary>
internal sealed record MachineListWire
{
    /// <summary>The catalog that was read.</summary>
    public required string CatalogRevision { get; init; }

    /// <summary>The machines, by id.</summary>
    public required IReadOnlyList<MachineSummaryWire> Items { get; init; }
}
