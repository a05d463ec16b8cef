using PartPicker.Parts;
using UnitsNet;

namespace PartPicker.Catalog;

/// <summary>
/// What a file says for a field to the value type that <see cref="FieldShape"/> names, for CSV and JSON alike.
/// </summary>
internal static class FieldReader
{
    /// <summary>Names of holes are as stamped: short.</summary>
    private const int MaxHoleName = 40;

    /// <summary>The value; null when anything of it was refused.</summary>
    /// <param name="field">What to read.</param>
    /// <param name="written">What the file says.</param>
    /// <param name="refuse">Told every reason, each with the token it is about.</param>
    public static object? Read(Field field, WrittenValue written, Action<Token, Refusal> refuse) =>
        field.Shape switch
        {
            FieldShape.Curve => Curve(field, written, refuse),
            FieldShape.Quantities => Quantities(field, written, refuse),
            FieldShape.Holes => Holes(field, written, refuse),
            _ => Single(field, written, refuse),
        };

    /// <summary>The id of an item is a text in the registry, but has rules of its own.</summary>
    public static bool IsId(Field field) => field.Shape == FieldShape.Reference || field.Name == "id";

    /// <summary>The name of a spring hole, as stamped.</summary>
    public static Refusal? HoleName(string name) => ValueReader.Text(name, MaxHoleName);

    private static object? Single(Field field, WrittenValue written, Action<Token, Refusal> refuse)
    {
        Token token = written.Tokens[0];
        string text = token.Text;
        object? value = null;
        Refusal? refusal;
        switch (field.Shape)
        {
            case FieldShape.Quantity:
                refusal = ValueReader.Quantity(
                    text, written.Unit, field.Dimension!, field.Min, field.Max, out double si);
                value = si;
                break;
            case FieldShape.Number:
                refusal = ValueReader.Number(text, field.Min, field.Max, out double number);
                value = number;
                break;
            case FieldShape.Count:
                refusal = ValueReader.Whole(text, (long)field.Min, (long)field.Max, out long count);
                value = (int)count;
                break;
            case FieldShape.Choice:
                refusal = ValueReader.Choice(text, field.ChoiceType!, out value);
                break;
            case FieldShape.Text or FieldShape.Reference:
                refusal = IsId(field) ? ValueReader.Id(text) : ValueReader.Text(text, (int)field.Max);
                value = text;
                break;
            default:
                throw new InvalidOperationException($"{field.Shape} is not a single value.");
        }

        if (refusal is null)
            return value;
        refuse(token, refusal);
        return null;
    }

    private static CurvePoint[]? Curve(
        Field field, WrittenValue written, Action<Token, Refusal> refuse) =>
        Entries(written, field.MinPoints, refuse, (Token token, List<CurvePoint> earlier, out CurvePoint point) =>
            Point(field, token, out point)
            ?? (earlier.Count == 0 || point.X > earlier[^1].X
                ? null
                : new Refusal(
                    FindingCodes.NotRising, "The first number of each point must be above that of the point before.")));

    private static double[]? Quantities(
        Field field, WrittenValue written, Action<Token, Refusal> refuse) =>
        Entries(written, field.MinPoints, refuse, (Token token, List<double> earlier, out double si) =>
            ValueReader.Quantity(token.Text, written.Unit, field.Dimension!, field.Min, field.Max, out si)
            ?? (earlier.Contains(si)
                ? new Refusal(FindingCodes.DuplicateValue, "The list holds this value already. Leave one out.")
                : null));

    private static SpringHole[]? Holes(
        Field field, WrittenValue written, Action<Token, Refusal> refuse) =>
        Entries(written, field.MinPoints, refuse, (Token token, List<SpringHole> earlier, out SpringHole hole) =>
        {
            string name = token.Key ?? "";
            Refusal? badTwist = ValueReader.Number(token.Text, field.Min, field.Max, out double twist);
            hole = new SpringHole(name, twist);
            return HoleName(name) ?? badTwist ?? (earlier.Exists(h => h.Name == name)
                ? new Refusal(FindingCodes.DuplicateValue, "Two holes have this name. Name each as it is stamped.")
                : null);
        });

    private static T[]? Entries<T>(
        WrittenValue written, int least, Action<Token, Refusal> refuse, EntryReader<T> read)
    {
        if (written.Tokens.Count < least || written.Tokens.Count > Field.MaxPoints)
        {
            bool few = written.Tokens.Count < least;
            refuse(written.Whole, new(
                few ? FindingCodes.TooFewPoints : FindingCodes.TooManyPoints,
                $"There are {written.Tokens.Count} entries; {least} to {Field.MaxPoints} are needed."));
            return null;
        }

        var entries = new List<T>(written.Tokens.Count);
        foreach (Token token in written.Tokens)
        {
            if (read(token, entries, out T entry) is { } refusal)
                refuse(token, refusal);
            else
                entries.Add(entry);
        }

        return entries.Count == written.Tokens.Count ? [.. entries] : null;
    }

    private static Refusal? Point(Field field, Token token, out CurvePoint point)
    {
        point = default;
        if (token.Key is not { } x)
            return new(FindingCodes.BadPoint, "A point is written x: y, and points are parted by semicolons.");
        if (Axis(x, field.XDimension, field.XRange.Min, field.XRange.Max, field.XScale, out double xSi) is { } badX)
            return badX with { Reason = $"In x, the first of the point: {badX.Reason}" };
        if (Axis(token.Text, field.Dimension, field.Min, field.Max, field.YScale, out double ySi) is { } badY)
            return badY with { Reason = $"In y, the second of the point: {badY.Reason}" };
        point = new CurvePoint(xSi, ySi);
        return null;
    }

    private static Refusal? Axis(
        string text, QuantityInfo? dimension, double min, double max, double scale, out double si)
    {
        if (dimension is not null)
            return ValueReader.Quantity(text, unit: null, dimension, min, max, out si);
        Refusal? refusal = ValueReader.Number(text, min / scale, max / scale, out double number);
        si = number * scale;
        return refusal;
    }

    private delegate Refusal? EntryReader<T>(Token token, List<T> earlier, out T entry);
}
