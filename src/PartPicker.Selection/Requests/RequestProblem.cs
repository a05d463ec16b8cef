namespace PartPicker.Selection;

/// <summary>Why a request cannot be answered, with the place and the remedy.</summary>
/// <param name="Place">Path of the request member, as in "fitted/driveSpring".</param>
/// <param name="Code">Stable machine word, as in "unknown-part".</param>
/// <param name="Sent">What was sent, where it is short enough to repeat.</param>
/// <param name="Expected">What was expected, and what to do.</param>
public sealed record RequestProblem(string Place, string Code, string? Sent, string Expected);

/// <summary>Every code that the selection may answer with, and what it means.</summary>
public static class RequestProblemCodes
{
    /// <summary>A set names a part that the catalog does not hold.</summary>
    public const string UnknownPart = "unknown-part";

    /// <summary>A set names a part of another kind.</summary>
    public const string WrongKind = "wrong-kind";

    /// <summary>The driven clutch has no spring hole of that name.</summary>
    public const string UnknownHole = "unknown-hole";

    /// <summary>The flyweight's ramp has no such step, or it has no ramp.</summary>
    public const string UnknownAdjusterStep = "unknown-adjuster-step";

    /// <summary>More shims than the clutch takes.</summary>
    public const string TooManyShims = "too-many-shims";

    /// <summary>The flyweight has no such station, or the station no such mass.</summary>
    public const string StationMass = "station-mass";

    /// <summary>Neither the request nor the catalog says which parts are fitted.</summary>
    public const string FittedNeeded = "fitted-set-needed";

    /// <summary>Neither the request nor the catalog has a measured run.</summary>
    public const string BaselineNeeded = "baseline-needed";

    /// <summary>The measured run is one that this machine cannot make with these parts.</summary>
    public const string BaselineUnusable = "baseline-unusable";

    /// <summary>A value of the machine's profile is only usual for its class.</summary>
    public const string ProfileNotMeasured = "profile-not-measured";

    /// <summary>The pieces of the machine do not go together.</summary>
    public const string MachineImpossible = "machine-impossible";

    /// <summary>A slot is kept, and the part that is fitted there is excluded.</summary>
    public const string Contradiction = "contradiction";

    /// <summary>A slot is kept whose part breaks a fit rule.</summary>
    public const string KeptPartDoesNotFit = "kept-part-does-not-fit";

    /// <summary>A part of a set breaks a rule that the model cannot do without.</summary>
    public const string PartUnusable = "part-unusable";

    /// <summary>An engagement was sent for a machine that the belt does not start.</summary>
    public const string EngagementNotByBelt = "engagement-not-by-belt";

    /// <summary>No engagement was sent for a machine that the belt starts.</summary>
    public const string EngagementNeeded = "engagement-needed";

    /// <summary>Stock or a price ceiling was asked for without an outlet.</summary>
    public const string OutletNeeded = "outlet-needed";

    /// <summary>A target names no rpm, or several, at some ratio: over vehicle speed, or as a change of a set that does not shift.</summary>
    public const string TargetUnclear = "target-unclear";

    /// <summary>One side has more choices than <see cref="PartSelection"/> takes.</summary>
    public const string TooManyCombinations = "too-many-combinations";
}

/// <summary>An answer, or every reason why there is none.</summary>
public sealed record Outcome<T>(T? Answer, IReadOnlyList<RequestProblem> Problems) where T : class;

/// <summary>Makes outcomes.</summary>
public static class Outcome
{
    public static Outcome<T> Of<T>(T answer) where T : class => new(answer, []);

    public static Outcome<T> Refused<T>(IReadOnlyList<RequestProblem> problems) where T : class => new(null, problems);
}
