using PartPicker.Api.Wire;
using PartPicker.Parts;
using PartPicker.Quantities;
using PartPicker.Selection;
using UnitsNet;
using UnitSystem = PartPicker.Quantities.UnitSystem;

namespace PartPicker.Api.Docs;

/// <summary>A value of a field as a catalog writes it: in a CSV cell for what is sold, in JSON for the rest.</summary>
/// <remarks>Drawn from the range of the field, so that no example can leave it.</remarks>
internal static class FieldExample
{
    public static string Of(Field field) => PartListing.Kinds.Contains(field.Kind) ? Cell(field) : Json(field);

    private static string Cell(Field field) => field.Shape switch
    {
        FieldShape.Curve => Points(field),
        FieldShape.NamedCurves => $"1 = {Points(field)} | 2 = {Points(field)}",
        FieldShape.Quantities => string.Join("; ", Several(field)),
        FieldShape.ClutchFits => "some-clutch 2017-2024; other-clutch",
        FieldShape.KitLines => "some-part; other-part x2",
        _ => Single(field),
    };

    private static string Json(Field field) => field.Shape switch
    {
        FieldShape.Number or FieldShape.Count => Single(field),
        FieldShape.Curve => $"[{string.Join(", ", Curve(field).Select(p => $"[{Quoted(p.X)}, {Quoted(p.Y)}]"))}]",
        FieldShape.Quantities => $"[{string.Join(", ", Several(field).Select(Quoted))}]",
        FieldShape.Holes => """{ "1": 50, "2": 70 }""",
        _ => Quoted(Single(field)),
    };

    private static string Single(Field field) => field.Shape switch
    {
        FieldShape.Quantity or FieldShape.Number => Written(Usual(field), field.Dimension),
        FieldShape.Count => $"{Math.Round(Usual(field))}",
        FieldShape.Choice => WireJson.Word((Enum)Enum.GetValues(field.ChoiceType!).GetValue(0)!),
        FieldShape.Reference => $"some-{(field.RefersTo is { } kind ? WireJson.Word(kind) : "part")}",
        FieldShape.Text => Text(field.Name),
        _ => throw new ArgumentOutOfRangeException(nameof(field), field.Shape, "Not a single value."),
    };

    private static string Text(string name) => name switch
    {
        "id" => "valley-1",
        "name" => "Valley, first make",
        "material" => "music-wire-a228",
        "mount" or "helixMount" => "three-screw",
        "use" => "utility",
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "Give this text an example."),
    };

    private static IEnumerable<string> Several(Field field) =>
        [Written(field.Min, field.Dimension), Written(Usual(field), field.Dimension)];

    private static string Points(Field field) => string.Join("; ", Curve(field).Select(p => $"{p.X}: {p.Y}"));

    private static (string X, string Y)[] Curve(Field field)
    {
        double x = Usual(field.XRange.Min, field.XRange.Max);
        double y = Usual(field);
        string[] xs =
        [
            Axis(field.XRange.Min > 0 ? x : 0, field.XDimension, field.XScale),
            Axis(field.XRange.Min > 0 ? 2 * x : x, field.XDimension, field.XScale),
        ];
        string[] ys = [Axis(y, field.Dimension, field.YScale), Axis(2 * y, field.Dimension, field.YScale)];

        // A spring pushes less the longer it is; every other curve may rise.
        return field.XDimension == Length.Info && field.Dimension == Force.Info
            ? [(xs[0], ys[1]), (xs[1], ys[0])]
            : [(xs[0], ys[0]), (xs[1], ys[1])];
    }

    private static double Usual(Field field) => Usual(field.Min, field.Max);

    private static double Usual(double min, double max) => min > 0 ? Math.Sqrt(min * max) : max / 10;

    private static string Axis(double si, QuantityInfo? dimension, double scale) => Written(si / scale, dimension);

    private static string Written(double value, QuantityInfo? dimension)
    {
        if (dimension is null)
            return $"{Plain(value)}";
        WrittenQuantity written = QuantityWriter.Write(value, dimension, UnitSystem.Metric);
        return $"{Plain(written.Value)} {written.Unit}";
    }

    // One digit: an example is not to look like a measurement.
    private static double Plain(double value)
    {
        if (value == 0)
            return 0;
        double place = Math.Pow(10, Math.Floor(Math.Log10(Math.Abs(value))));
        return SiDigits.Round(Math.Round(value / place) * place);
    }

    private static string Quoted(string text) => double.TryParse(text, out _) ? text : $"\"{text}\"";
}
