using System.Globalization;
using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Service.Tests.Parts;

/// <summary>A list of parts, as an address asks for it and as a plain scan finds it.</summary>
/// <param name="Query">The query of the address, without page and cursor.</param>
/// <param name="Filters">What each part must meet.</param>
/// <param name="Sort">The field of the order; null: the id.</param>
/// <param name="Descending">From the greatest down.</param>
internal sealed record RandomList(string Query, IReadOnlyList<Func<Part, bool>> Filters, string? Sort, bool Descending)
{
    private static readonly string[] Texts = ["spring", "VALLEY", "arm", "0", "ds-1", "mm cup"];

    public static RandomList Make(Random random, CatalogSnapshot catalog)
    {
        List<string> query = [];
        List<Func<Part, bool>> filters = [];
        ItemKind? kind = random.Next(4) == 0 ? null : Any(random, PartListing.Kinds);
        if (kind is { } one)
        {
            query.Add($"kind={Camel(one.ToString())}");
            filters.Add(part => part.Kind == one);
        }

        Field[] fields = [.. PartListing.Fields(kind).Select(named => named.First())];
        for (int i = random.Next(3); i > 0; i--)
            AddFilter(random, catalog, Any(random, fields), query, filters);
        if (random.Next(4) == 0)
        {
            string text = Any(random, Texts);
            query.Add($"text={Uri.EscapeDataString(text)}");
            filters.Add(part => text.Split(' ').All(word => Contains(part.Id, word) || Contains(part.Name, word)));
        }

        if (random.Next(3) == 0)
            AddOutlet(random, Any(random, [.. catalog.Outlets]), query, filters);

        string? sort = random.Next(3) == 0 ? null : Any(random, [.. fields.Where(f => IsNumber(f) || IsWord(f))]).Name;
        bool descending = sort is not null && random.Next(2) == 0;
        if (sort is not null)
            query.Add($"sort={(descending ? "-" : "")}{sort}");
        return new RandomList(string.Join('&', query.Distinct()), filters, sort, descending);
    }

    /// <summary>What the list holds, in its order: every part looked at, sorted by the words of the documentation.</summary>
    public IEnumerable<Part> Scan(CatalogSnapshot catalog)
    {
        Part[] parts = [.. catalog.All<Part>().Where(part => Filters.All(holds => holds(part)))];
        (Part Part, object? Key)[] keyed = [.. parts.Select(part => (part, KeyOf(part)))];
        var known = keyed.Where(entry => entry.Key is not null);
        var ordered = Descending
            ? known.OrderByDescending(entry => entry.Key, Keys)
            : known.OrderBy(entry => entry.Key, Keys);
        return ordered.ThenBy(entry => entry.Part.Id, StringComparer.Ordinal)
            .Concat(keyed.Where(entry => entry.Key is null).OrderBy(entry => entry.Part.Id, StringComparer.Ordinal))
            .Select(entry => entry.Part);
    }

    private object? KeyOf(Part part)
    {
        if (Sort is null || FieldRegistry.For(part.Kind).SingleOrDefault(f => f.Name == Sort) is not { } field)
            return null;
        return IsNumber(field) ? Number(part, field) : Word(part, field);
    }

    private static readonly Comparer<object?> Keys = Comparer<object?>.Create((a, b) => a is double x && b is double y
        ? x.CompareTo(y)
        : string.CompareOrdinal((string?)a, (string?)b));

    private static void AddOutlet(Random random, Outlet outlet, List<string> query, List<Func<Part, bool>> filters)
    {
        bool inStock = random.Next(2) == 0;
        query.Add($"outlet={outlet.Id}&inStock={(inStock ? "true" : "false")}");
        if (inStock)
            filters.Add(part => outlet.Offers.TryGetValue(part.Id, out Offer? offer) && offer.Stock > 0);
    }

    private static void AddFilter(
        Random random, CatalogSnapshot catalog, Field field, List<string> query, List<Func<Part, bool>> filters)
    {
        // Values that parts have make the ends of ranges and the words that something is found by.
        Part[] having = [.. catalog.All<Part>().Where(p => OwnField(p, field.Name) is { } own
            && (Number(p, own) ?? (object?)Word(p, own)) is not null)];
        if (having.Length == 0 || query.Exists(q => q.StartsWith(field.Name, StringComparison.Ordinal)))
            return;
        Part sample = Any(random, having);
        if (IsNumber(field) && Number(sample, OwnField(sample, field.Name)!) is { } end)
        {
            bool isMin = random.Next(2) == 0;
            query.Add($"{field.Name}.{(isMin ? "min" : "max")}={Uri.EscapeDataString(Written(end, field))}");
            filters.Add(p => OwnField(p, field.Name) is { } own && Number(p, own) is { } value
                && (isMin ? value >= end - Slack(end, field) : value <= end + Slack(end, field)));
        }
        else if (IsWord(field) && Word(sample, OwnField(sample, field.Name)!) is { Length: > 0 } word)
        {
            query.Add($"{field.Name}={Uri.EscapeDataString(word)}");
            filters.Add(p => OwnField(p, field.Name) is { } own && Word(p, own) == word);
        }
    }

    // SI is one of the systems that a quantity may be written in.
    private static string Written(double si, Field field) =>
        field.Dimension is not { } dimension
            ? si.ToString("R", CultureInfo.InvariantCulture)
            : si.ToString("R", CultureInfo.InvariantCulture) + " " + dimension.Name switch
            {
                "Length" => "m",
                "Mass" => "kg",
                "Force" => "N",
                "Torque" => "N·m",
                "ForcePerLength" => "N/m",
                "RotationalStiffness" => "N·m/rad",
                "LinearDensity" => "kg/m",
                _ => throw new ArgumentOutOfRangeException(nameof(field), dimension.Name, "No unit is listed here."),
            };

    // Twelve digits of what is sent count; an end is taken as rounded to the digits that either system shows.
    private static double Slack(double value, Field field) => 1e-9 * Math.Abs(value) + (field.Dimension?.Name switch
    {
        null => 0,
        "Length" => 0.0254e-4,
        "Mass" => 1e-5,
        "Force" => 0.44482216152605,
        "Torque" => 0.013558179483314004,
        "ForcePerLength" => 1.7512683524647637,
        "RotationalStiffness" => Math.Max(1e-5, 0.1129848290276167e-3) * 180 / Math.PI,
        "LinearDensity" => 1.4881639435695538e-3,
        var other => throw new ArgumentOutOfRangeException(nameof(field), other, "No rounding is listed here."),
    }) / 2;

    private static double? Number(Part part, Field field) => field.Get(part) switch
    {
        double number => number,
        int count => count,
        _ => PartFacts.ComputedNumber(part, field.Name),
    };

    private static string? Word(Part part, Field field) => field.Get(part) switch
    {
        string word => word,
        Enum word => Camel(word.ToString()),
        _ => null,
    };

    private static Field? OwnField(Part part, string name) =>
        FieldRegistry.For(part.Kind).SingleOrDefault(field => field.Name == name);

    private static bool IsNumber(Field field) => field.Shape is FieldShape.Quantity or FieldShape.Number or FieldShape.Count;

    private static bool IsWord(Field field) => field.Shape is FieldShape.Choice or FieldShape.Text or FieldShape.Reference;

    private static bool Contains(string text, string word) => text.Contains(word, StringComparison.OrdinalIgnoreCase);

    private static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static T Any<T>(Random random, IReadOnlyList<T> items) => items[random.Next(items.Count)];
}
