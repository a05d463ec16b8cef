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

/// <summary>Names of the numbers that can be explained.</summary>
public static class ExplainedNames
{
    public const string Engagement = "engagementRpm";
    public const string LockUp = "lockUpRpm";
    public const string ShiftOut = "shiftOutRpm";
    public const string PeakPower = "peakPower";
    public const string FlyweightFactor = "anchoring.flyweightFactor";
    public const string ThrustFactor = "anchoring.thrustFactor";

    /// <summary>Names that a point of the curve has.</summary>
    internal const string UpshiftRpm = "upshiftRpm";

    /// <inheritdoc cref="UpshiftRpm"/>
    internal const string SlipMargin = "slipMargin";

    /// <inheritdoc cref="UpshiftRpm"/>
    internal const string PowerLost = "powerLost";

    /// <inheritdoc cref="UpshiftRpm"/>
    internal const string VehicleSpeed = "vehicleSpeed";

    private static readonly string[] OfPoint = [UpshiftRpm, SlipMargin, PowerLost, VehicleSpeed];

    /// <summary>Names of numbers of the whole prediction.</summary>
    public static IReadOnlyList<string> OfAll { get; } =
        [Engagement, LockUp, ShiftOut, PeakPower, FlyweightFactor, ThrustFactor];

    /// <summary>Names of the numbers of the upshift at the j-th point of the curve, counted from 1 in low gear.</summary>
    public static IEnumerable<string> At(int point) => OfPoint.Select(name => At(name, point));

    /// <summary>Upshift rpm at the j-th point of the curve.</summary>
    public static string Upshift(int point) => At(UpshiftRpm, point);

    /// <summary>Every name that a curve of so many points has.</summary>
    public static IEnumerable<string> Of(int pointCount) =>
        [.. OfAll, .. Enumerable.Range(1, pointCount).SelectMany(At)];

    private static string At(string name, int point) => $"{name}/{point}";
}
