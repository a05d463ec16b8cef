using PartPicker.Api.Errors;
using PartPicker.Parts;
using PartPicker.Quantities;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>A list of parts as it is asked for: the query, and the outlet whose offers are shown.</summary>
internal sealed record PartQuestion(PartQuery Query, Outlet? Outlet);

/// <summary>Reads what parts are asked for: from a query string to what it means.</summary>
internal sealed class PartQueryReader
{
    private const string Min = ".min";
    private const string Max = ".max";

    private readonly QueryReader query;
    private readonly CatalogSnapshot catalog;
    private readonly FaultList faults;
    private readonly ItemKind? kind;
    private readonly ILookup<string, Field> fields;

    private PartQueryReader(IQueryCollection query, CatalogSnapshot catalog, FaultList faults)
    {
        this.query = new QueryReader(query, faults);
        this.catalog = catalog;
        this.faults = faults;
        kind = this.query.Word("kind", PartListing.Kinds);
        fields = PartListing.Fields(kind);
    }

    /// <summary>The question; null when the list holds why not.</summary>
    public static PartQuestion? Read(IQueryCollection query, CatalogSnapshot catalog, FaultList faults) =>
        new PartQueryReader(query, catalog, faults).Read(query);

    private PartQuestion? Read(IQueryCollection sent)
    {
        // The form of the answer was read before; here its parameters are only known.
        _ = query.Texts(AnswerFormat.UnitsParameter);
        _ = query.Texts(AnswerFormat.PrecisionParameter);
        MachineProfile? machine = Machine();
        Outlet? outlet = Outlet();
        bool inStock = query.Flag("inStock") ?? false;
        if (inStock && !sent.ContainsKey("outlet"))
            faults.AddParameter(ErrorCodes.OutletNeeded, "inStock", "true", "an outlet beside it, as in outlet=ID");
        string? text = query.Text("text", "words that stand in id or name");
        (string? sortField, bool descending) = Sort();
        int limit = query.Count("limit", 1, PartQuery.MaxLimit) ?? PartQuery.StandardLimit;
        string? cursor = query.Text("cursor", "the nextCursor of the page before");
        (FieldRange[] ranges, FieldWords[] words) = Filters();
        if (ranges.Length + words.Length > PartQuery.MaxFilters)
        {
            faults.AddParameter(
                ErrorCodes.OutOfRange, "kind", $"{ranges.Length + words.Length} filters", $"at most {PartQuery.MaxFilters} filters");
        }

        if (faults.Count > 0)
            return null;
        var asked = new PartQuery
        {
            Kind = kind,
            Ranges = ranges,
            Words = words,
            FitsMachine = machine,
            InStockAt = inStock ? outlet : null,
            Text = text,
            SortField = sortField,
            Descending = descending,
            Limit = limit,
        };
        if (cursor is null)
            return new PartQuestion(asked, outlet);
        return PartCursor.Read(cursor, asked, outlet, catalog.Revision, faults) is { } place
            ? new PartQuestion(asked with { After = place }, outlet)
            : null;
    }

    private MachineProfile? Machine()
    {
        if (query.Text("fitsMachine", "the id of a machine") is not { } id)
            return null;
        MachineProfile? machine = catalog.FindMachine(id);
        if (machine is null)
            faults.AddParameter(ErrorCodes.UnknownMachine, "fitsMachine", id, "the id of a machine, from GET /v1/machines");
        return machine;
    }

    private Outlet? Outlet()
    {
        if (query.Text("outlet", "the id of an outlet") is not { } id)
            return null;
        Outlet? outlet = catalog.FindOutlet(id);
        if (outlet is null)
        {
            faults.AddParameter(
                ErrorCodes.UnknownOutlet, "outlet", id, $"one of: {string.Join(", ", catalog.Outlets.Select(o => o.Id))}");
        }

        return outlet;
    }

    private (string? Field, bool Descending) Sort()
    {
        if (query.Text("sort", "the name of a field, with - before it for falling order") is not { } sent)
            return (null, false);
        bool descending = sent.StartsWith('-');
        string name = descending ? sent[1..] : sent;
        if (fields[name].Any(f => IsNumber(f) || IsWord(f)))
            return (name, descending);
        faults.AddParameter(ErrorCodes.UnknownField, "sort", sent, Known(f => IsNumber(f) || IsWord(f)));
        return (null, false);
    }

    private (FieldRange[], FieldWords[]) Filters()
    {
        Dictionary<string, FieldRange> ranges = new(StringComparer.Ordinal);
        List<FieldWords> words = [];
        foreach (string name in query.Others.ToArray())
        {
            bool isMin = name.EndsWith(Min, StringComparison.Ordinal);
            if (isMin || name.EndsWith(Max, StringComparison.Ordinal))
                AddRange(ranges, name, name[..^Min.Length], isMin);
            else if (fields[name].Any(IsWord))
                words.Add(new FieldWords(name, query.Texts(name)));
        }

        query.RefuseOthers(
            "kind, fitsMachine, outlet, inStock, text, sort, limit, cursor, units, precision, a field with .min or .max, or a "
            + $"field of words: {Known(IsWord)}");
        foreach (FieldRange range in ranges.Values.Where(r => r.Min > r.Max))
            faults.AddParameter(ErrorCodes.OutOfRange, range.Field + Min, null, "at most what .max says");
        return ([.. ranges.Values], [.. words]);
    }

    private void AddRange(Dictionary<string, FieldRange> ranges, string parameter, string name, bool isMin)
    {
        string sent = query.Text(parameter, "a number") ?? "";
        if (fields[name].FirstOrDefault(IsNumber) is not { } field)
        {
            faults.AddParameter(ErrorCodes.UnknownField, parameter, name, Known(IsNumber));
            return;
        }

        if (sent.Length == 0 || Number(field, parameter, sent) is not { } value)
            return;
        FieldRange range = ranges.GetValueOrDefault(name) ?? new FieldRange(name, null, null);
        ranges[name] = isMin ? range with { Min = value } : range with { Max = value };
    }

    private double? Number(Field field, string parameter, string sent)
    {
        if (field.Dimension is { } dimension)
        {
            QuantityReading reading = QuantityReader.Read(sent, dimension);
            if (reading.Problem is not { } problem)
                return reading.Value;
            faults.AddParameter(ErrorCodes.UnreadableQuantity, parameter, sent, problem);
            return null;
        }

        if (double.TryParse(sent, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out double number)
            && double.IsFinite(number))
        {
            return number;
        }

        faults.AddParameter(ErrorCodes.OutOfRange, parameter, sent, "a bare number, as in 12.5");
        return null;
    }

    private string Known(Func<Field, bool> wanted) =>
        $"one of: {string.Join(", ", fields.Where(f => f.Any(wanted)).Select(f => f.Key))}";

    private static bool IsNumber(Field field) => field.Shape is FieldShape.Quantity or FieldShape.Number or FieldShape.Count;

    private static bool IsWord(Field field) => field.Shape is FieldShape.Choice or FieldShape.Text or FieldShape.Reference;
}
