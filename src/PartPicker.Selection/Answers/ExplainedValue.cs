using UnitsNet;

namespace PartPicker.Selection;

/// <summary>A number of a prediction with the relation and the numbers that make it.</summary>
/// <param name="Name">What it is; of an input, the piece and its field.</param>
/// <param name="Value">In SI, or in <paramref name="Unit"/> where it has no dimension.</param>
/// <param name="Dimension">What it is a quantity of; null for a number that is written in <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit of a number without dimension; empty for a bare one.</param>
/// <param name="Relation">Name of the relation that makes it of its parts; null for an input.</param>
/// <param name="Equation">That relation in plain characters; null for an input.</param>
/// <param name="Source">Key of its source; null for an input and for what is derived.</param>
/// <param name="Parts">What it is made of.</param>
public sealed record ExplainedValue(
    string Name,
    double Value,
    QuantityInfo? Dimension,
    string Unit,
    string? Relation,
    string? Equation,
    string? Source,
    IReadOnlyList<ExplainedValue> Parts);

/// <summary>Names of the numbers that can be explained.</summary>
public static class ExplainedNames
{
    public const string Engagement = "engagementRpm";
    public const string ShiftOut = "shiftOutRpm";

    /// <summary>Upshift rpm at the j-th point of the curve, counted from 1 in low gear.</summary>
    public static string Upshift(int point) => $"upshiftRpm/{point}";

    /// <summary>Every name that a curve of so many points has.</summary>
    public static IEnumerable<string> Of(int pointCount) =>
        [Engagement, ShiftOut, .. Enumerable.Range(1, pointCount).Select(Upshift)];
}
