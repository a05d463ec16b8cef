using UnitsNet;

namespace PartPicker.Selection;

/// <summary>A number of a prediction with the relation and the numbers that make it.</summary>
/// <param name="Name">What it is; of an input, the piece and its field.</param>
/// <param name="Value">In SI, or in <paramref name="Unit"/> where it has no dimension.</param>
/// <param name="Dimension">What it is a quantity of; null for a number that is written in <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit of a number without dimension; empty for a bare one.</param>
/// <param name="Relation">The relation that makes it of its parts; null for an input.</param>
/// <param name="Parts">
/// What it is made of. A value with a relation and no parts is taken apart elsewhere: where it first stands in the same
/// tree, or in a tree of its own, where its name is one of <see cref="ExplainedNames"/>.
/// </param>
public sealed record ExplainedValue(
    string Name,
    double Value,
    QuantityInfo? Dimension,
    string Unit,
    CitedRelation? Relation,
    IReadOnlyList<ExplainedValue> Parts);

/// <summary>A relation as an explanation cites it.</summary>
/// <param name="Name">Stable name; it stands on the page.</param>
/// <param name="Equation">The equation in plain characters.</param>
/// <param name="Source">Key of docs/sources.md; null for what is derived.</param>
/// <param name="Page">Page of docs/model that explains it, without its ending.</param>
public sealed record CitedRelation(string Name, string Equation, string? Source, string Page);

/// <summary>Names of the numbers that can be explained: all that a prediction says of its curve, its bands and its sensitivities.</summary>
public static class ExplainedNames
{
    public const string Engagement = "engagementRpm";
    public const string EngagementBand = "engagementBandRpm";
    public const string LockUp = "lockUpRpm";
    public const string ShiftOut = "shiftOutRpm";
    public const string PeakPower = "peakPower";
    public const string TorqueFactor = "torqueFactor";
    public const string FlyweightFactor = "anchoring.flyweightFactor";
    public const string ThrustFactor = "anchoring.thrustFactor";

    /// <summary>Most sensitivities that a prediction has: every station filled, and another hole.</summary>
    public const int MostSensitivities = 14;

    internal const string UpshiftRpm = "upshiftRpm";
    internal const string BackshiftRpm = "backshiftRpm";
    internal const string UpshiftBand = "upshiftBandRpm";
    internal const string Hysteresis = "hysteresisRpm";

    /// <summary>Before a name of <see cref="OfBalance"/> it means that of the backshift.</summary>
    internal const string OfBackshift = "backshift.";

    /// <summary>Before the number of a sensitivity, counted from 1.</summary>
    internal const string OfSensitivity = "sensitivities";

    /// <summary>Names of numbers of the whole prediction.</summary>
    public static IReadOnlyList<string> OfAll { get; } =
        [Engagement, EngagementBand, LockUp, ShiftOut, PeakPower, TorqueFactor, FlyweightFactor, ThrustFactor];

    /// <summary>Names that a point of the curve has, whichever way it shifts.</summary>
    public static IReadOnlyList<string> OfPoint { get; } =
    [
        UpshiftRpm, BackshiftRpm, Hysteresis, UpshiftBand, "ratio", "openingTravel", "driveRadius", "drivenRadius", "driveWrap",
        "drivenWrap", "helixAngle", "camTurn", "helixHold",
    ];

    /// <summary>Names that the balance at a point has, of the upshift unless said.</summary>
    public static IReadOnlyList<string> OfBalance { get; } =
    [
        "engineTorque", "power", "powerLost", "drivenClamp", "driveThrust", "flyweightThrust", "springForce", "tightTension",
        "slackTension", "tightTensionNet", "slackTensionNet", "activeArc", "driveActiveArc", "slipMargin", "beltSpeed",
        "vehicleSpeed",
    ];

    /// <summary>Every name that a curve of so many points has.</summary>
    public static IEnumerable<string> Of(int pointCount) =>
    [
        .. OfAll,
        .. Enumerable.Range(1, pointCount).SelectMany(At),
        .. Enumerable.Range(1, MostSensitivities).SelectMany(k => Enumerable.Range(1, pointCount)
            .Select(point => At($"{OfSensitivity}/{k}.{UpshiftRpm}", point)).Prepend($"{OfSensitivity}/{k}.{Engagement}")),
    ];

    /// <summary>Which names there are, for a person.</summary>
    /// <param name="pointCount">Points of the curve.</param>
    public static string InWords(int pointCount) =>
        $"one of: {string.Join(", ", OfAll)}; of a point of the curve, with n from 1 in low gear to {pointCount}, "
        + $"{string.Join(", ", OfPoint.Concat(OfBalance).Select(name => $"{name}/n"))}; of its backshift "
        + $"{OfBackshift}power/n and so on; of the k-th sensitivity {OfSensitivity}/k.{Engagement} and "
        + $"{OfSensitivity}/k.{UpshiftRpm}/n";

    /// <summary>Upshift or backshift rpm at the j-th point of the curve.</summary>
    internal static string Rpm(bool upshift, int point) => At(upshift ? UpshiftRpm : BackshiftRpm, point);

    private static IEnumerable<string> At(int point) =>
        OfPoint.Concat(OfBalance).Concat(OfBalance.Select(name => OfBackshift + name)).Select(name => At(name, point));

    private static string At(string name, int point) => $"{name}/{point}";
}
