using System.Text.Json.Nodes;
using PartPicker.Api.Docs;
using PartPicker.Api.Errors;
using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>Reads which parts are asked for: from the query of an address to what it means.</summary>
internal static class PartListReader
{
    private const string Kind = "kind";
    private const string Fields = "fields";
    private const string Text = "text";
    private const string FitsMachine = "fitsMachine";
    private const string Outlet = "outlet";
    private const string InStock = "inStock";
    private const string Sort = "sort";
    private const string Limit = "limit";

    /// <summary>The parameter that asks for the page after another one.</summary>
    public const string Cursor = "cursor";

    private static readonly string[] Kinds = [.. PartListing.Kinds.Select(kind => WireJson.Word(kind))];

    /// <summary>The query parameters that are read here.</summary>
    public static readonly IReadOnlyList<QueryParameter> Parameters =
    [
        new(Kind, "One kind of part; all kinds when left out.") { Words = Kinds },
        new(Fields, "Filters by the fields of a part, each under the name of its field. A number or a quantity is "
            + "asked for by a range, rate.min and rate.max, ends included and taken as rounded, as answers show them; a quantity needs its unit, which may be "
            + "any. A word, as material or ends, is asked for by itself and may stand several times: any of them "
            + "will do. A part that does not state the field is left out, unless the value can be computed. At "
            + $"most {PartQuery.MaxFilters} filters.")
        {
            ExampleOfMany = new JsonObject
            {
                ["rate.min"] = "60 lbf/in", ["rate.max"] = "120 lbf/in", ["material"] = "music-wire-a228",
            },
        },
        new(Text, "Words that must all stand in the id or the name, whatever the case.")
        {
            MaxLength = RequestLimits.MaxSearchTextLength,
        },
        new(FitsMachine, "Id of a machine: only parts that keep every rule of fit that can be checked on it.")
        {
            MaxLength = RequestLimits.MaxNameLength,
        },
        new(Outlet, "Id of an outlet, whose price and stock are shown.")
        {
            MaxLength = RequestLimits.MaxNameLength,
        },
        new(InStock, "True: only parts that the outlet has in stock.")
        {
            Words = QueryReader.Flags, Standard = QueryReader.Flags[1],
        },
        new(Sort, "The field that orders the list, with a minus in front from the greatest down; parts without it "
            + "come last, and the id breaks ties. By id when left out.")
        {
            MaxLength = RequestLimits.MaxNameLength,
        },
        new(Limit, "Most parts of one page.")
        {
            Range = (1, PartQuery.MaxLimit), Standard = PartQuery.StandardLimit,
        },
        new(Cursor, "nextCursor of the page before; every other parameter as it was there.")
        {
            MaxLength = PartCursor.MaxLength,
        },
        .. AnswerFormat.Parameters,
    ];

    private static readonly string Known = string.Concat(
        "one of: ", string.Join(", ", Parameters.Select(p => p.Name).Where(name => name != Fields)),
        ", or a field of the parts");

    /// <summary>The question; null when the list holds why not.</summary>
    public static PartListQuestion? Read(QueryReader query, CatalogSnapshot catalog, FaultList faults)
    {
        NameReader names = new(query, catalog, faults);
        ItemKind? kind = query.Word(Kind, Kinds) is { } word
            ? PartListing.Kinds[Array.IndexOf(Kinds, word)]
            : null;
        string? text = query.Text(Text, RequestLimits.MaxSearchTextLength);
        MachineProfile? machine = names.Machine(FitsMachine);
        Outlet? outlet = names.Outlet(Outlet);
        bool inStock = query.Flag(InStock) ?? false;
        if (inStock && query.All(Outlet).Count == 0)
            faults.Add(ErrorCodes.OutletNeeded, Outlet, null, "the id of the outlet whose stock counts");
        FieldFilterReader fields = new(query, kind, faults);
        (string? sort, bool descending) = fields.Order(Sort);
        int limit = query.Count(Limit, 1, PartQuery.MaxLimit) ?? PartQuery.StandardLimit;
        string? cursor = query.Text(Cursor, PartCursor.MaxLength);
        AnswerFormat format = AnswerFormat.Read(query);
        (IReadOnlyList<FieldRange> ranges, IReadOnlyList<FieldWords> words) = fields.Filters();
        query.RefuseOthers(Known);
        if (faults.Count > 0)
            return null;

        PartQuery asked = new()
        {
            Kind = kind, Ranges = ranges, Words = words, FitsMachine = machine,
            InStockAt = inStock ? outlet : null, Text = text, SortField = sort, Descending = descending,
            Limit = limit,
        };
        PartPlace? after = cursor is null
            ? null
            : PartCursor.Read(cursor, Cursor, asked, outlet, catalog.Revision, faults);
        return faults.Count > 0 ? null : new PartListQuestion(asked with { After = after }, outlet, format);
    }
}
