using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>The total order of a list: a field, or price or stock at an outlet; parts without it last in either direction, then id.</summary>
internal sealed class PartOrder(string? sortField, Outlet? outlet, bool descending) : IComparer<Part>
{
    public int Compare(Part? x, Part? y) => Compare(PlaceOf(x!), PlaceOf(y!));

    public int Compare(PartPlace x, PartPlace y)
    {
        int byKey = (Known(x), Known(y)) switch
        {
            (true, false) => -1,
            (false, true) => 1,
            (false, false) => 0,
            _ => Direction * CompareKeys(x, y),
        };
        return byKey != 0 ? byKey : string.CompareOrdinal(x.Id, y.Id);
    }

    /// <summary>Where a part stands.</summary>
    public PartPlace PlaceOf(Part part)
    {
        if (sortField is PartQuery.Price or PartQuery.Stock)
        {
            Offer? offer = outlet?.Offers.GetValueOrDefault(part.Id);
            return new PartPlace(sortField == PartQuery.Price ? offer?.PriceMinor : offer?.Stock, null, part.Id);
        }

        if (sortField is null || FieldRegistry.For(part.Kind).FirstOrDefault(f => f.Name == sortField) is not { } field)
            return new PartPlace(null, null, part.Id);
        return new PartPlace(PartFacts.Number(part, field), PartFacts.Word(part, field), part.Id);
    }

    private int Direction => descending ? -1 : 1;

    private static bool Known(PartPlace place) => place.Number is not null || place.Word is not null;

    private static int CompareKeys(PartPlace x, PartPlace y) => x.Number is { } a && y.Number is { } b
        ? a.CompareTo(b)
        : string.CompareOrdinal(x.Word, y.Word);
}
