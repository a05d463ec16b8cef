using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Lists parts by what they are: filter, facets, order, page.</summary>
public static class PartListing
{
    /// <summary>The kinds that can be listed.</summary>
    public static readonly IReadOnlyList<ItemKind> Kinds =
    [
        ItemKind.DriveSpring, ItemKind.Flyweight, ItemKind.DrivenSpring, ItemKind.Helix,
        ItemKind.Belt, ItemKind.Shim, ItemKind.Kit,
    ];

    /// <summary>Most words of one field that facets list; the rest is left out.</summary>
    public const int MaxFacetWords = 30;

    /// <summary>The fields of a kind, or of all kinds, that a query may name, by name.</summary>
    public static ILookup<string, Field> Fields(ItemKind? kind) =>
        (kind is { } one ? [one] : Kinds).SelectMany(FieldRegistry.For).ToLookup(f => f.Name, StringComparer.Ordinal);

    /// <summary>The page that a query asks for.</summary>
    /// <remarks>
    /// The order is total: the sort field, parts without it last, then id. A page goes on after a place in that
    /// order, not after a count, so parts that come or go between two pages make nothing appear twice.
    /// </remarks>
    public static PartPage List(CatalogSnapshot catalog, PartQuery query)
    {
        PartFilter filter = new(catalog, query);
        Part[] matching = [.. catalog.All<Part>().Where(filter.Matches)];
        PartOrder order = new(query.SortField, query.SortOutlet, query.Descending);
        Part[] page =
        [
            .. matching
                .Where(p => query.After is not { } place || order.Compare(order.PlaceOf(p), place) > 0)
                .Order(order)
                .Take(query.Limit + 1),
        ];
        bool more = page.Length > query.Limit;
        Part[] items = more ? page[..query.Limit] : page;
        return new PartPage(items, more ? order.PlaceOf(items[^1]) : null, matching.Length, Facets(matching, query.Kind));
    }

    private static List<Facet> Facets(IReadOnlyList<Part> parts, ItemKind? kind)
    {
        var facets = new List<Facet> { Count("kind", parts.Select(p => (string?)Words.Camel(p.Kind.ToString()))) };
        facets.AddRange(
            from fields in Fields(kind)
            where fields.All(f => f.Shape == FieldShape.Choice) || fields.Key == "material"
            select Count(fields.Key, parts.Select(p => fields.FirstOrDefault(f => f.Kind == p.Kind) is { } field
                ? PartFacts.Word(p, field)
                : null)));
        return [.. facets.Where(f => f.Counts.Count > 0)];
    }

    private static Facet Count(string field, IEnumerable<string?> words) => new(
        field,
        [
            .. words.OfType<string>()
                .GroupBy(w => w, StringComparer.Ordinal)
                .Select(g => new FacetCount(g.Key, g.Count()))
                .OrderByDescending(c => c.Count).ThenBy(c => c.Word, StringComparer.Ordinal)
                .Take(MaxFacetWords),
        ]);
}
