using UnitsNet;

namespace PartPicker.Parts;

/// <summary>What a field holds.</summary>
public enum FieldShape
{
    /// <summary>A number with a unit, as text on the wire ("0.192 in"); the value is a double in SI.</summary>
    Quantity,

    /// <summary>A bare number whose unit never varies and stands in the name ("helixDeg"); a double.</summary>
    Number,

    /// <summary>A whole number; an int.</summary>
    Count,

    /// <summary>A string.</summary>
    Text,

    /// <summary>One of a closed list of words; an enum value, camelCase on the wire.</summary>
    Choice,

    /// <summary>The id of another item; a string.</summary>
    Reference,

    /// <summary>Points; a list of <see cref="CurvePoint"/> in SI, by rising X.</summary>
    Curve,

    /// <summary>Several numbers with units; a list of double in SI.</summary>
    Quantities,

    /// <summary>Spring holes with their twist in degrees; a list of <see cref="SpringHole"/>.</summary>
    Holes,

    /// <summary>Curves by the name of their step; a list of <see cref="NamedCurve"/>.</summary>
    NamedCurves,

    /// <summary>Clutches with model-years; a list of <see cref="ClutchFit"/>.</summary>
    ClutchFits,

    /// <summary>Parts of a kit with how many packs; a list of <see cref="KitLine"/>.</summary>
    KitLines,
}

/// <summary>
/// One field of one kind of catalog item: its name on the wire and in CSV headers, what it holds, its range
/// and a sentence for a person. Readers, writers, checks and docs are all driven by this list.
/// </summary>
/// <param name="Kind">The kind of item it belongs to.</param>
/// <param name="Name">camelCase; the CSV header and the JSON member.</param>
/// <param name="Shape">What it holds.</param>
/// <param name="Sentence">One sentence for a person.</param>
public sealed record Field(ItemKind Kind, string Name, FieldShape Shape, string Sentence)
{
    /// <summary>Dimension of a quantity, or of a curve's Y; null for bare numbers (in a curve's Y: as the name says).</summary>
    public QuantityInfo? Dimension { get; init; }

    /// <summary>Dimension of a curve's X; null when X is a bare number.</summary>
    public QuantityInfo? XDimension { get; init; }

    /// <summary>What the bare numbers of a curve are multiplied by to become SI (degrees to radians).</summary>
    public double XScale { get; init; } = 1;

    /// <inheritdoc cref="XScale"/>
    public double YScale { get; init; } = 1;

    /// <summary>Least value allowed, in SI; of a curve its Y, of listed clutches the years, of a kit the packs.</summary>
    public double Min { get; init; }

    /// <summary>Greatest value allowed, likewise.</summary>
    public double Max { get; init; }

    /// <summary>Least and greatest X of a curve, in SI.</summary>
    public (double Min, double Max) XRange { get; init; }

    /// <summary>Fewest points of a curve.</summary>
    public int MinPoints { get; init; } = 1;

    /// <summary>The kind that a reference must lead to; null: the kind of the part itself.</summary>
    public ItemKind? RefersTo { get; init; }

    /// <summary>The words of a choice.</summary>
    public Type? ChoiceType { get; init; }

    public bool Required { get; init; }

    /// <summary>
    /// True where a value could be measured, and so has an <see cref="Origin"/>: not for names, years and facts of the
    /// trade.
    /// </summary>
    public bool HasOrigin { get; init; } =
        Shape is not (FieldShape.Text or FieldShape.Reference or FieldShape.KitLines);

    /// <summary>Value for an item that does not state this field; null: stays unknown.</summary>
    public object? Default { get; init; }

    /// <summary>The value of this field on an item; null when not stated.</summary>
    public required Func<CatalogItem, object?> Get { get; init; }

    /// <summary>A copy of the item with this field set; the value is of the type that <see cref="FieldShape"/> names.</summary>
    public required Func<CatalogItem, object, CatalogItem> Set { get; init; }

    /// <summary>Most points, masses or holes in one field.</summary>
    public const int MaxPoints = 200;
}
