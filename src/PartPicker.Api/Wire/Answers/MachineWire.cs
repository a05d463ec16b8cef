using PartPicker.Parts;

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

    /// <summary>What it is used for, in a word; null when the catalog does not say.</summary>
    public required string? Use { get; init; }

    /// <summary>First model-year; null: open.</summary>
    public required int? FromYear { get; init; }

    /// <summary>Last model-year; null: open.</summary>
    public required int? ToYear { get; init; }

    /// <summary>How the flyweights of its drive clutch push.</summary>
    [WordsOf(typeof(DriveFamily))]
    public required string DriveFamily { get; init; }

    /// <summary>What closes its driven clutch.</summary>
    [WordsOf(typeof(DrivenFamily))]
    public required string DrivenFamily { get; init; }

    /// <summary>What starts it moving; only where it is the belt is an engagement rpm asked for.</summary>
    [WordsOf(typeof(StartDevice))]
    public required string StartDevice { get; init; }

    /// <summary>The machine itself and what it is joined of.</summary>
    public required IReadOnlyList<MachinePieceWire> Pieces { get; init; }

    /// <summary>Every choice of preload twist: spring holes, pairs of holes or adjuster settings.</summary>
    public required IReadOnlyList<HoleWire> Holes { get; init; }

    /// <summary>What it was delivered with; null when the catalog does not know.</summary>
    public required PartsWire? Fitted { get; init; }

    /// <summary>Measured runs; the first ties predictions that bring none of their own.</summary>
    public required IReadOnlyList<MachineBaselineWire> Baselines { get; init; }
}
