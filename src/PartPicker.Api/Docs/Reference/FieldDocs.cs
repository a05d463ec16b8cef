using System.Text;
using PartPicker.Api.Wire;
using PartPicker.Parts;
using PartPicker.Quantities;
using PartPicker.Selection;
using UnitsNet;
using UnitSystem = PartPicker.Quantities.UnitSystem;

namespace PartPicker.Api.Docs;

/// <summary>Writes the page of fields from the field registry, so that the page cannot say another thing.</summary>
internal static class FieldDocs
{
    /// <summary>The page, as Markdown.</summary>
    public static string Markdown()
    {
        StringBuilder page = new();
        page.Append("""
            # The fields of a catalog

            This page is written by `docs fields` from the one list of fields that readers, writers and checks use.
            A name here is the head of a CSV column, the member of a JSON object and the name of a filter.
            Fields in **bold** must be stated. Ranges include their ends; a curve has one for y and one for x.
            An example shows how a value is written, as in a CSV cell for what is sold and as in JSON for the rest of a machine.

            ## How values are written

            A bare number carries its unit in its name. A quantity is written with its unit, in any unit of its kind:

            | quantity | examples | units |
            |---|---|---|

            """);
        IEnumerable<QuantityInfo> dimensions = All().SelectMany(f => new[] { f.Dimension, f.XDimension })
            .OfType<QuantityInfo>().Distinct().OrderBy(Noun, StringComparer.Ordinal);
        foreach (QuantityInfo dimension in dimensions)
        {
            string units = string.Join(", ", UnitAliases.For(dimension).Units.Select(unit => unit.Symbol));
            page.Append($"| {Noun(dimension)} | {Examples(dimension)} | {units} |\n");
        }

        page.Append('\n');
        foreach (ItemKind kind in Enum.GetValues<ItemKind>())
            Append(page, kind);
        return page.ToString().TrimEnd() + "\n";
    }

    private static IEnumerable<Field> All() => Enum.GetValues<ItemKind>().SelectMany(FieldRegistry.For);

    private static void Append(StringBuilder page, ItemKind kind)
    {
        page.Append($"## {WireJson.Word(kind)}\n\n");
        page.Append("| field | holds | example | metric range | inch range | what it is |\n|---|---|---|---|---|---|\n");
        foreach (Field field in FieldRegistry.For(kind))
        {
            string name = field.Required ? $"**`{field.Name}`**" : $"`{field.Name}`";
            string example = FieldExample.Of(field).Replace("|", "\\|");
            string ranges = string.Join(" | ", Enum.GetValues<UnitSystem>().Select(system => Range(field, system)));
            page.Append(
                $"| {name} | {Holds(field)} | `{example}` | {ranges} | {field.Sentence}{Otherwise(field)} |\n");
        }

        page.Append('\n');
    }

    private static string Holds(Field field) => field.Shape switch
    {
        FieldShape.Quantity => Noun(field.Dimension!),
        FieldShape.Number => "a bare number",
        FieldShape.Count => "a whole number",
        FieldShape.Text => $"text of up to {field.Max} characters",
        FieldShape.Choice => $"one of: {string.Join(", ", Choices(field))}",
        FieldShape.Reference => field.RefersTo is { } kind ? $"an id: {WireJson.Word(kind)}" : "an id: a part of the same kind",
        FieldShape.Curve => Points(field),
        FieldShape.Quantities => $"several, each {Noun(field.Dimension!)}",
        FieldShape.Holes => "degrees by the name of the hole or of the pair",
        FieldShape.NamedCurves => $"by step, {Points(field)}",
        FieldShape.ClutchFits => "ids of clutches, each with model-years",
        FieldShape.KitLines => "ids of parts, each with packs",
        _ => throw new ArgumentOutOfRangeException(nameof(field), field.Shape, "No such shape."),
    };

    private static string Points(Field field) =>
        $"points: {Axis(field.Dimension)} over {Axis(field.XDimension)}, at least {field.MinPoints}";

    private static IEnumerable<string> Choices(Field field) => PartFacts.Words(field)!.Select(word => $"`{word}`");

    /// <summary>The same quantity in both systems, or once where they share the unit.</summary>
    private static string Examples(QuantityInfo dimension)
    {
        DimensionUnits units = UnitAliases.For(dimension);
        double si = QuantityReader.Read(units.Example, dimension).Value;
        IEnumerable<string> written =
            Enum.GetValues<UnitSystem>().Select(system => $"`{Quantity(si, dimension, system)}`");
        return string.Join(" or ", written.Distinct());
    }

    private static string Range(Field field, UnitSystem system) => field.Shape switch
    {
        FieldShape.Text or FieldShape.Reference or FieldShape.Choice => "",
        FieldShape.Curve or FieldShape.NamedCurves =>
            $"y {Ends(field.Min, field.Max, field.Dimension, field.YScale, system)}, "
            + $"x {Ends(field.XRange.Min, field.XRange.Max, field.XDimension, field.XScale, system)}",
        _ => Ends(field.Min, field.Max, field.Dimension, scale: 1, system),
    };

    private static string Ends(double min, double max, QuantityInfo? dimension, double scale, UnitSystem system) =>
        dimension is null
            ? $"{SiDigits.Round(min / scale)} to {SiDigits.Round(max / scale)}"
            : $"{Quantity(min, dimension, system)} to {Quantity(max, dimension, system)}";

    private static string Quantity(double si, QuantityInfo dimension, UnitSystem system)
    {
        WrittenQuantity written = QuantityWriter.Write(si, dimension, system);
        return $"{written.Value} {written.Unit}";
    }

    /// <summary>What holds where the field is not stated.</summary>
    private static string Otherwise(Field field) => field.Default switch
    {
        null when PartFacts.ComputedFields(field.Kind).Contains(field.Name) => " Computed where it is not stated.",
        null => "",
        Enum choice => $" `{WireJson.Word(choice)}` where it is not stated.",
        var value => $" {value} where it is not stated.",
    };

    private static string Axis(QuantityInfo? dimension) => dimension is null ? "a bare number" : Noun(dimension);

    private static string Noun(QuantityInfo dimension) => UnitAliases.For(dimension).Noun;
}
