using PartPicker.Parts;
using UnitsNet;

namespace PartPicker.Catalog;

/// <summary>
/// What a file says for a field to the value type that <see cref="FieldShape"/> names, for CSV and JSON alike.
/// </summary>
internal static class FieldReader
{
    /// <summary>Names of holes and steps are as stamped: short.</summary>
    private const int MaxStampedName = 40;

    /// <summary>The value; null when anything of it was refused.</summary>
    /// <param name="field">What to read.</param>
    /// <param name="written">What the file says.</param>
    /// <param name="refuse">Told every reason, each with the token it is about.</param>
    public static object? Read(Field field, WrittenValue written, Action<Token, Refusal> refuse) =>
        field.Shape switch
        {
            FieldShape.Curve => Curve(field, written.Whole, written.Tokens, refuse),
            FieldShape.NamedCurves => NamedCurves(field, written, refuse),
            FieldShape.Quantities => Quantities(field, written, refuse),
            FieldShape.Holes => Holes(field, written, refuse),
            FieldShape.ClutchFits => ClutchFits(field, written, refuse),
            FieldShape.KitLines => KitLines(field, written, refuse),
            _ => Single(field, written, refuse),
        };

    /// <summary>The id of an item is a text in the registry, but has rules of its own.</summary>
    public static bool IsId(Field field) => field.Shape == FieldShape.Reference || field.Name == "id";

    /// <summary>The name of a spring hole or of a step, as stamped.</summary>
    public static Refusal? StampedName(string name) => ValueReader.Text(name, MaxStampedName);

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
        Field field, Token whole, IReadOnlyList<Token> points, Action<Token, Refusal> refuse) =>
        Entries(
            whole, points, field.MinPoints, refuse,
            (Token token, List<CurvePoint> earlier, out CurvePoint point) =>
                Point(field, token, out point)
                ?? (earlier.Count == 0 || point.X > earlier[^1].X
                    ? null
                    : new Refusal(
                        FindingCodes.NotRising,
                        "The first number of each point must be above that of the point before.")));

    private static NamedCurve[]? NamedCurves(Field field, WrittenValue written, Action<Token, Refusal> refuse)
    {
        NamedCurve[]? curves = Entries(
            written.Whole, written.Tokens, least: 1, refuse,
            (Token token, List<NamedCurve> earlier, out NamedCurve curve) =>
            {
                string name = token.Key ?? "";
                curve = new NamedCurve(name, []);
                if (token.Key is null)
                {
                    return new(
                        FindingCodes.BadEntry, "A curve is written name = x: y; x: y, and curves are parted by |.");
                }

                // Its points have places of their own, and are refused one by one.
                curve = curve with { Points = Curve(field, token, token.Parts, refuse) ?? [] };
                return StampedName(name) ?? Twin(earlier.Exists(c => c.Name == name), name);
            });
        return curves is not null && curves.All(c => c.Points.Count > 0) ? curves : null;
    }

    private static double[]? Quantities(Field field, WrittenValue written, Action<Token, Refusal> refuse) =>
        Entries(
            written.Whole, written.Tokens, field.MinPoints, refuse,
            (Token token, List<double> earlier, out double si) =>
                ValueReader.Quantity(token.Text, written.Unit, field.Dimension!, field.Min, field.Max, out si)
                ?? (earlier.Contains(si)
                    ? new Refusal(FindingCodes.DuplicateValue, "The list holds this value already. Leave one out.")
                    : null));

    private static SpringHole[]? Holes(Field field, WrittenValue written, Action<Token, Refusal> refuse) =>
        Entries(
            written.Whole, written.Tokens, field.MinPoints, refuse,
            (Token token, List<SpringHole> earlier, out SpringHole hole) =>
            {
                string? sheave = token.Part(EntryMembers.Sheave);
                string? helix = token.Part(EntryMembers.Helix);
                Refusal? badTwist = ValueReader.Number(
                    token.Part(EntryMembers.TwistDeg) ?? token.Text, field.Min, field.Max, out double twist);
                SpringHole read = sheave is not null && helix is not null
                    ? SpringHole.Pair(sheave, helix, twist)
                    : new SpringHole(token.Key ?? "", twist);
                hole = read;
                return (sheave is null ? null : StampedName(sheave))
                    ?? (helix is null ? null : StampedName(helix))
                    ?? StampedName(read.Name) ?? badTwist
                    ?? Twin(earlier.Exists(h => h.Name == read.Name), read.Name);
            });

    private static ClutchFit[]? ClutchFits(Field field, WrittenValue written, Action<Token, Refusal> refuse) =>
        Entries(
            written.Whole, written.Tokens, field.MinPoints, refuse,
            (Token token, List<ClutchFit> earlier, out ClutchFit fit) =>
            {
                Refusal? badFrom = Count(field, token, EntryMembers.FromYear, out int? from);
                Refusal? badTo = Count(field, token, EntryMembers.ToYear, out int? to);
                fit = new ClutchFit(token.Part(EntryMembers.Clutch) ?? "", from, to);
                return Formed(token, "the id of a clutch and its model-years: clutch-id 2018-2023, clutch-id 2018-")
                    ?? ValueReader.Id(fit.ClutchId) ?? badFrom ?? badTo
                    ?? Exchanged(from, to) ?? Repeated(earlier.Contains(fit));
            });

    private static KitLine[]? KitLines(Field field, WrittenValue written, Action<Token, Refusal> refuse) =>
        Entries(
            written.Whole, written.Tokens, field.MinPoints, refuse,
            (Token token, List<KitLine> earlier, out KitLine line) =>
            {
                string part = token.Part(EntryMembers.Part) ?? "";
                Refusal? badPacks = Count(field, token, EntryMembers.Packs, out int? packs);
                line = new KitLine(part, packs ?? 1);
                return Formed(token, "the id of a part and how many packs of it: part-id, part-id x2")
                    ?? ValueReader.Id(part) ?? badPacks
                    ?? Repeated(earlier.Exists(l => l.PartId == part));
            });

    /// <summary>A whole number of an entry, in the range of its field; null when it is left out.</summary>
    private static Refusal? Count(Field field, Token entry, string member, out int? value)
    {
        value = null;
        if (entry.Part(member) is not { } text)
            return null;
        Refusal? refusal = ValueReader.Whole(text, (long)field.Min, (long)field.Max, out long number);
        if (refusal is null)
            value = (int)number;
        return refusal is null ? null : refusal with { Reason = $"In {member}: {refusal.Reason}" };
    }

    private static Refusal? Formed(Token entry, string form) => entry.Parts.Count > 0
        ? null
        : new(FindingCodes.BadEntry, $"An entry is {form}. Entries are parted by semicolons.");

    private static Refusal? Exchanged(int? from, int? to) => from > to
        ? new(FindingCodes.NotBelow, $"The first year, {from}, is after the last. Exchange them.")
        : null;

    private static Refusal? Twin(bool there, string name) => there
        ? new(FindingCodes.DuplicateValue, $"The name {name} stands twice. Name each as it is stamped.")
        : null;

    private static Refusal? Repeated(bool there) => there
        ? new(FindingCodes.DuplicateValue, "The list holds this entry already. Join the two.")
        : null;

    private static T[]? Entries<T>(
        Token whole, IReadOnlyList<Token> tokens, int least, Action<Token, Refusal> refuse, EntryReader<T> read)
    {
        if (tokens.Count < least || tokens.Count > Field.MaxPoints)
        {
            refuse(whole, new(
                tokens.Count < least ? FindingCodes.TooFewPoints : FindingCodes.TooManyPoints,
                $"There are {tokens.Count} entries; {least} to {Field.MaxPoints} are needed."));
            return null;
        }

        var entries = new List<T>(tokens.Count);
        foreach (Token token in tokens)
        {
            if (read(token, entries, out T entry) is { } refusal)
                refuse(token, refusal);
            else
                entries.Add(entry);
        }

        return entries.Count == tokens.Count ? [.. entries] : null;
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
