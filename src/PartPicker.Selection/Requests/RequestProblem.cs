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
    public const string UnknownPart = "unknown-part";
    public const string WrongKind = "wrong-kind";
    public const string UnknownHole = "unknown-hole";
    public const string StationMass = "station-mass";
    public const string FittedNeeded = "fitted-set-needed";
    public const string BaselineNeeded = "baseline-needed";
    public const string BaselineUnusable = "baseline-unusable";
    public const string ProfileNotMeasured = "profile-not-measured";
    public const string MachineImpossible = "machine-impossible";
    public const string KeptPartDoesNotFit = "kept-part-does-not-fit";
    public const string PartUnusable = "part-unusable";
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
