using System.Globalization;
using System.Text;
using PartPicker.Api.Wire;
using PartPicker.Parts;
using PartPicker.Quantities;
using UnitsNet;
using UnitSystem = PartPicker.Quantities.UnitSystem;

namespace PartPicker.Api.Docs;

/// <summary>The page on fields, written from the registry that reads, checks and lists them.</summary>
internal static class FieldDocs
{
    /// <summary>The page, in Markdown.</summary>
    public static string Page()
    {
        var page = new StringBuilder("""
            # Fields

            This page is written by the program from its field registry (`docs fields` on the command line); a test holds it so.

            The names are CSV headers, JSON members, and names for filters of `GET /v1/parts`. A quantity is written with its unit,
            in any unit of its kind; the ranges stand here in metric and in inch.

            """);
        foreach (ItemKind kind in Enum.GetValues<ItemKind>())
        {
            page.Append("\n## ").Append(WireJson.Word(kind)).Append("\n\n| field | holds | range | meaning |\n|---|---|---|---|\n");
            foreach (Field field in FieldRegistry.For(kind))
            {
                page.Append("| `").Append(field.Name).Append('`').Append(field.Required ? ", needed" : "").Append(" | ")
                    .Append(Holds(field)).Append(" | ").Append(Range(field)).Append(" | ").Append(field.Sentence).Append(" |\n");
            }
        }

        return page.ToString();
    }

    private static string Holds(Field field) => field.Shape switch
    {
        FieldShape.Quantity => Noun(field.Dimension!),
        FieldShape.Number => "number",
        FieldShape.Count => "whole number",
        FieldShape.Text => "text",
        FieldShape.Choice => string.Join(" or ", Enum.GetNames(field.ChoiceType!).Select(n => $"`{char.ToLowerInvariant(n[0])}{n[1..]}`")),
        FieldShape.Reference => field.RefersTo is { } kind ? $"id of a {WireJson.Word(kind)}" : "id of a part",
        FieldShape.Curve => $"{Axis(field.Dimension)} over {Axis(field.XDimension)}",
        FieldShape.NamedCurves => $"{Axis(field.Dimension)} over {Axis(field.XDimension)}, by step",
        FieldShape.Quantities => $"several of {Noun(field.Dimension!)}",
        FieldShape.Holes => "twist in degrees by hole",
        FieldShape.ClutchFits => "clutch ids with years",
        FieldShape.KitLines => "part ids with packs",
        _ => throw new ArgumentOutOfRangeException(nameof(field), field.Shape, "No such shape."),
    };

    private static string Range(Field field)
    {
        if (field.Shape is FieldShape.Choice or FieldShape.Reference or FieldShape.ClutchFits)
            return "";
        if (field.Shape == FieldShape.Text)
            return $"{Plain(field.Max)} characters";
        if (field.Dimension is not { } dimension)
            return $"{Plain(field.Min / field.YScale)} to {Plain(field.Max / field.YScale)}";
        string metric = Span(field, dimension, UnitSystem.Metric);
        string inch = Span(field, dimension, UnitSystem.Inch);
        return metric == inch ? metric : $"{metric}; {inch}";
    }

    private static string Span(Field field, QuantityInfo dimension, UnitSystem system)
    {
        WrittenQuantity min = QuantityWriter.Write(field.Min, dimension, system);
        WrittenQuantity max = QuantityWriter.Write(field.Max, dimension, system);
        return $"{Plain(min.Value)} to {Plain(max.Value)} {max.Unit}";
    }

    private static string Axis(QuantityInfo? dimension) => dimension is null ? "number" : Noun(dimension);

    private static string Noun(QuantityInfo dimension) => UnitAliases.For(dimension).Noun;

    private static string Plain(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
