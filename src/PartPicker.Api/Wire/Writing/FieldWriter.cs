using PartPicker.Parts;
using UnitsNet;

namespace PartPicker.Api.Wire;

/// <summary>Writes the values of a catalog item, in the order of the field registry.</summary>
internal static class FieldWriter
{
    public static OrderedDictionary<string, FieldValueWire> Write(CatalogItem item, AnswerWriter writer)
    {
        OrderedDictionary<string, FieldValueWire> values = [];
        foreach (Field field in FieldRegistry.For(item.Kind))
        {
            // Id and name stand beside the fields in every answer.
            if (field.Name is not ("id" or "name") && field.Get(item) is { } value)
                values.Add(field.Name, new FieldValueWire(Value(field, value, writer)));
        }

        return values;
    }

    private static object Value(Field field, object value, AnswerWriter writer) => field.Shape switch
    {
        FieldShape.Quantity => writer.Quantity((double)value, field.Dimension!),
        FieldShape.Number => (double)value,
        FieldShape.Count => (double)(int)value,
        FieldShape.Text or FieldShape.Reference => (string)value,
        FieldShape.Choice => WireJson.Word((Enum)value),
        FieldShape.Curve => Curve(field, (IReadOnlyList<CurvePoint>)value, writer),
        FieldShape.Quantities => ((IReadOnlyList<double>)value)
            .Select(si => writer.Quantity(si, field.Dimension!)).ToArray(),
        FieldShape.Holes => Holes((IReadOnlyList<SpringHole>)value),
        FieldShape.NamedCurves => ((IReadOnlyList<NamedCurve>)value)
            .Select(curve => new NamedCurveWire { Name = curve.Name, Curve = Curve(field, curve.Points, writer) })
            .ToArray(),
        FieldShape.ClutchFits => ((IReadOnlyList<ClutchFit>)value)
            .Select(fit => new ClutchFitWire { Clutch = fit.ClutchId, FromYear = fit.FromYear, ToYear = fit.ToYear })
            .ToArray(),
        FieldShape.KitLines => ((IReadOnlyList<KitLine>)value)
            .Select(line => new KitLineWire { Part = line.PartId, Packs = line.Packs }).ToArray(),
        _ => throw new ArgumentOutOfRangeException(nameof(field), field.Shape, "No such shape."),
    };

    public static HoleWire[] Holes(IReadOnlyList<SpringHole> holes) =>
        [.. holes.Select(hole => new HoleWire
        {
            Name = hole.Name, SheaveHole = hole.SheaveHole, HelixHole = hole.HelixHole, TwistDeg = hole.TwistDeg,
        })];

    private static CurveWire Curve(Field field, IReadOnlyList<CurvePoint> points, AnswerWriter writer)
    {
        var pairs = points.Select(point => (
            X: Axis(point.X, field.XDimension, field.XScale, writer),
            Y: Axis(point.Y, field.Dimension, field.YScale, writer))).ToArray();
        return new CurveWire
        {
            XUnit = pairs.Length > 0 ? pairs[0].X.Unit : "",
            YUnit = pairs.Length > 0 ? pairs[0].Y.Unit : "",
            Points = [.. pairs.Select(pair => new[] { pair.X.Value, pair.Y.Value })],
        };
    }

    private static QuantityWire Axis(double si, QuantityInfo? dimension, double scale, AnswerWriter writer) =>
        dimension is not null
            ? writer.Quantity(si, dimension)
            : new QuantityWire { Value = SiDigits.Round(si / scale), Unit = "" };
}
