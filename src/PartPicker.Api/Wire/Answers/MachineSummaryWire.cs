using PartPicker.Parts;

namespace PartPicker.Api.Wire;

/// <summary>A machine in a list.</summary>
internal sealed record MachineSummaryWire
{
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

    /// <summary>
    /// True when the catalog knows what it was delivered with; otherwise a request brings the fitted set.
    /// </summary>
    public required bool FittedKnown { get; init; }

    /// <summary>How many measured runs the catalog holds; with none a request brings its own.</summary>
    public required int BaselineCount { get; init; }

    /// <summary>
    /// Names of the spring holes, of the pairs of holes or of the adjuster settings; "none" where nothing twists.
    /// </summary>
    public required IReadOnlyList<string> Holes { get; init; }
}
