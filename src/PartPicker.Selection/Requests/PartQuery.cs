using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>What is asked of <see cref="PartListing"/>.</summary>
public sealed record PartQuery
{
    /// <summary>One kind of part; null: all kinds.</summary>
    public ItemKind? Kind { get; init; }

    /// <summary>Ranges of number and quantity fields, in SI; a part that does not state the field is left out.</summary>
    public IReadOnlyList<FieldRange> Ranges { get; init; } = [];

    /// <summary>Words that choice, text and reference fields must have; several words of one field are alternatives.</summary>
    public IReadOnlyList<FieldWords> Words { get; init; } = [];

    /// <summary>Only parts that keep every rule that can be checked on this machine.</summary>
    public MachineProfile? FitsMachine { get; init; }

    /// <summary>Only parts that this outlet has in stock.</summary>
    public Outlet? InStockAt { get; init; }

    /// <summary>Every word must stand in the id or the name, whatever the case.</summary>
    public string? Text { get; init; }

    /// <summary>The field that orders the list; id breaks ties and is the order when null. Parts without the field come last.</summary>
    public string? SortField { get; init; }

    public bool Descending { get; init; }

    public int Limit { get; init; } = StandardLimit;

    /// <summary>Go on after this place; null: from the start.</summary>
    public PartPlace? After { get; init; }

    public const int StandardLimit = 50;
    public const int MaxLimit = 200;
    public const int MaxFilters = 20;
}

/// <summary>A range of a field, ends included; null ends are open.</summary>
/// <param name="Rounding">How far beyond an end a value may lie and still be shown as that end (SI).</param>
public sealed record FieldRange(string Field, double? Min, double? Max, double Rounding = 0);

/// <summary>Words of a field that are wanted.</summary>
public sealed record FieldWords(string Field, IReadOnlyList<string> Words);

/// <summary>A place in the order of a list: the sort key of the last part seen (null where it has none), and its id.</summary>
public sealed record PartPlace(double? Number, string? Word, string Id);

/// <summary>One page of a list.</summary>
/// <param name="Items">The parts.</param>
/// <param name="Next">Where the next page starts; null on the last page.</param>
/// <param name="Total">Parts that match, on all pages.</param>
/// <param name="Facets">Counts over all that match, by field.</param>
public sealed record PartPage(
    IReadOnlyList<Part> Items, PartPlace? Next, int Total, IReadOnlyList<Facet> Facets);

/// <summary>How the matching parts divide by the words of one field, most first.</summary>
public sealed record Facet(string Field, IReadOnlyList<FacetCount> Counts);

/// <summary>A word and how many parts have it.</summary>
public sealed record FacetCount(string Word, int Count);
