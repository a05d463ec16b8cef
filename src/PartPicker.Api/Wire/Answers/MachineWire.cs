namespace PartPicker.Api.Wire;

/// <summary>A machine with its pieces, every value and where it came from.</summary>
internal sealed record MachineWire
{
    /// <summary>The catalog that was read.</summary>
    public required string CatalogRevision { get; init; }

    /// <summary>Unique in the catalog.</summary>
    public required string Id { get; init; }

    /// <summary>What a person calls it; may be empty.</summary>
    public required string Name { get; init; }

    /// <summary>The machine itself and what it is joined of.</summary>
    public required IReadOnlyList<MachinePieceWire> Pieces { get; init; }

    /// <summary>The spring holes of its driven clutch.</summary>
    public required IReadOnlyList<HoleWire> Holes { get; init; }

    /// <summary>What it was delivered with; null when the catalog does not know.</summary>
    public required PartsWire? Fitted { get; init; }

    /// <summary>Measured runs; the first ties predictions that bring none of their own.</summary>
    public required IReadOnlyList<MachineBaselineWire> Baselines { get; init; }
}
