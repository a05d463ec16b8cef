using System.Globalization;
using PartPicker.Api.Errors;
using PartPicker.Parts;
using PartPicker.Quantities;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>
/// Reads filters and order by field name: "rate.min=60 lbf/in", "material=music-wire-a228", "-freeLength".
/// </summary>
/// <remarks>
/// Without a kind a name may belong to several kinds; fields of one name have one shape and one dimension,
/// whichever kind they belong to.
/// </remarks>
internal sealed class FieldFilterReader(QueryReader query, ItemKind? kind, FaultList faults)
{
    private const string Min = ".min";
    private const string Max = ".max";

    private static readonly string Limit = $"at most {PartQuery.MaxFilters} filters";

    private readonly ILookup<string, Field> fields = PartListing.Fields(kind);

    /// <summary>The field that orders the list; a minus in front turns the order round.</summary>
    public (string? Field, bool Descending) Order(string parameter)
    {
        if (query.Text(parameter, RequestLimits.MaxNameLength) is not { } text)
            return (null, false);
        bool descending = text[0] == '-';
        string name = descending ? text[1..] : text;
        if (Find(name) is not { } field)
        {
            faults.Add(
                ErrorCodes.UnknownField, parameter, text,
                $"{Names(f => IsRange(f) || IsWord(f))}; with - in front to turn it round");
        }
        else if (!IsRange(field) && !IsWord(field))
        {
            faults.Add(
                ErrorCodes.WrongFilter, parameter, text,
                $"a field of one value: {name} has several, which have no order");
        }

        return (name, descending);
    }

    /// <summary>The filters by field name among the parameters that nobody else has asked for.</summary>
    public (IReadOnlyList<FieldRange> Ranges, IReadOnlyList<FieldWords> Words) Filters()
    {
        List<FieldRange> ranges = [];
        List<FieldWords> words = [];
        HashSet<string> counted = new(StringComparer.Ordinal);
        foreach (string parameter in query.Others)
        {
            string name = WithoutEnd(parameter);
            if (Find(name) is { } field)
            {
                // The two ends of a range are one filter, and so is a word that stands twice.
                bool enough = counted.Count > PartQuery.MaxFilters;
                counted.UnionWith(name == parameter ? query.All(parameter).Select(word => $"{name}={word}") : [name]);
                if (counted.Count > PartQuery.MaxFilters && !enough)
                    faults.Add(ErrorCodes.TooManyFilters, parameter, null, Limit);
                Read(field, parameter, ranges, words);
            }
            else if (name != parameter || PartListing.Fields(null).Contains(name))
            {
                query.All(parameter);
                faults.Add(ErrorCodes.UnknownField, parameter, name, Names(name == parameter ? IsWord : IsRange));
            }
        }

        return (ranges, words);
    }

    private void Read(Field field, string parameter, List<FieldRange> ranges, List<FieldWords> words)
    {
        bool isRange = parameter != field.Name;
        IReadOnlyList<string> sent = query.All(parameter);
        if (isRange && IsRange(field))
            AddEnd(field, parameter, ranges);
        else if (!isRange && IsWord(field))
            words.Add(new FieldWords(field.Name, [.. sent.Where(word => IsKnown(field, parameter, word))]));
        else
            faults.Add(ErrorCodes.WrongFilter, parameter, string.Join(", ", sent), HowToAsk(field));
    }

    // The two ends of a range are two parameters: the second one joins the first.
    private void AddEnd(Field field, string parameter, List<FieldRange> ranges)
    {
        double? end = Value(field, parameter);
        bool isMin = parameter.EndsWith(Min, StringComparison.Ordinal);
        int at = ranges.FindIndex(range => range.Field == field.Name);
        FieldRange before = at < 0 ? new FieldRange(field.Name, null, null, ShownRounding(field)) : ranges[at];
        FieldRange range = isMin ? before with { Min = end } : before with { Max = end };
        if (at < 0)
            ranges.Add(range);
        else
            ranges[at] = range;
        if (range.Min > range.Max)
        {
            faults.Add(
                ErrorCodes.EmptyRange, field.Name + Min, string.Join(", ", query.All(field.Name + Min)),
                $"at most {field.Name}{Max}");
        }
    }

    // Half of the last digit that an answer shows, of the coarser system: a value copied from there finds its part.
    private static double ShownRounding(Field field) => field.Dimension is { } dimension
        ? Enum.GetValues<UnitSystem>().Select(UnitAliases.For(dimension).In)
            .Max(form => form.Unit.ToSi(Math.Pow(10, -form.Decimals)) - form.Unit.ToSi(0)) / 2
        : 0;

    private double? Value(Field field, string parameter)
    {
        string expected = HowToAsk(field);
        if (query.One(parameter, expected) is not { } text)
            return null;
        bool isBare = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
            && double.IsFinite(number);
        if (field.Dimension is not { } dimension)
        {
            if (isBare)
                return number;
            faults.Add(ErrorCodes.WrongType, parameter, text, expected);
            return null;
        }

        QuantityReading reading = QuantityReader.Read(text, dimension);
        if (reading.Problem is not { } problem)
            return SiDigits.Round(reading.Value);
        faults.Add(isBare ? ErrorCodes.UnitNeeded : ErrorCodes.UnreadableQuantity, parameter, text, problem);
        return null;
    }

    private bool IsKnown(Field field, string parameter, string word)
    {
        if (field.ChoiceType is null)
        {
            if (word.Length > 0)
                return true;
            faults.Add(ErrorCodes.OutOfRange, parameter, word, HowToAsk(field));
            return false;
        }

        if (Choices(field).Contains(word, StringComparer.Ordinal))
            return true;
        faults.Add(ErrorCodes.UnknownWord, parameter, word, HowToAsk(field));
        return false;
    }

    private static string HowToAsk(Field field) => field switch
    {
        { Shape: FieldShape.Quantity, Dimension: { } dimension } =>
            $"a range with units, as in {field.Name}{Min}={UnitAliases.For(dimension).Example}",
        _ when IsRange(field) => $"a range of bare numbers, as in {field.Name}{Min}={field.Min}",
        { ChoiceType: not null } => $"one of: {string.Join(", ", Choices(field))}",
        _ when IsWord(field) => $"a word, as in {field.Name}=…",
        _ => $"another field: {field.Name} holds a list or a curve, which cannot be asked for",
    };

    private static IEnumerable<string> Choices(Field field) =>
        Enum.GetValues(field.ChoiceType!).Cast<Enum>().Select(WireJson.Word);

    private Field? Find(string name) => fields[name].FirstOrDefault();

    private string Names(Func<Field, bool> which) =>
        $"one of: {string.Join(", ", fields.Where(named => which(named.First())).Select(named => named.Key))}";

    private static bool IsRange(Field field) =>
        field.Shape is FieldShape.Quantity or FieldShape.Number or FieldShape.Count;

    private static bool IsWord(Field field) =>
        field.Shape is FieldShape.Choice or FieldShape.Text or FieldShape.Reference;

    private static string WithoutEnd(string parameter) =>
        parameter.EndsWith(Min, StringComparison.Ordinal) || parameter.EndsWith(Max, StringComparison.Ordinal)
            ? parameter[..^Min.Length]
            : parameter;
}
