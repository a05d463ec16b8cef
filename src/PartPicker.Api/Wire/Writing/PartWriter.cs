using PartPicker.Parts;
using PartPicker.Selection;

namespace PartPicker.Api.Wire;

/// <summary>Writes parts.</summary>
internal static class PartWriter
{
    public static PartWire Write(Part part, Outlet? outlet, AnswerWriter writer) => new()
    {
        CatalogRevision = writer.Catalog.Revision,
        Id = part.Id,
        Kind = WireJson.Word(part.Kind),
        Name = part.Name,
        Current = Current(part, writer),
        Fields = FieldWriter.Write(part, writer),
        Computed = Computed(part, writer),
        Offer = Offer(part, outlet),
    };

    /// <param name="page">The parts.</param>
    /// <param name="next">The cursor of the next page; null on the last.</param>
    /// <param name="outlet">Whose prices and stock are shown; null: none are.</param>
    public static PartListWire WriteList(PartPage page, string? next, Outlet? outlet, AnswerWriter writer) => new()
    {
        CatalogRevision = writer.Catalog.Revision,
        Units = writer.Format.UnitsWord,
        Items = [.. page.Items.Select(part => Item(part, outlet, writer))],
        Total = page.Total,
        NextCursor = next,
        Facets = [.. page.Facets.Select(facet => new FacetWire
        {
            Field = facet.Field,
            Counts = [.. facet.Counts.Select(count => new FacetCountWire { Word = count.Word, Count = count.Count })],
        })],
    };

    private static PartItemWire Item(Part part, Outlet? outlet, AnswerWriter writer) => new()
    {
        Id = part.Id,
        Kind = WireJson.Word(part.Kind),
        Name = part.Name,
        Current = Current(part, writer),
        Fields = FieldWriter.Write(part, writer),
        Computed = Computed(part, writer),
        Offer = Offer(part, outlet),
    };

    private static NamedIdWire? Current(Part part, AnswerWriter writer) =>
        part.SupersededBy is not null && writer.Catalog.FindCurrentPart(part.Id) is { } current
            ? new NamedIdWire { Id = current.Id, Name = current.Name }
            : null;

    private static OrderedDictionary<string, QuantityWire> Computed(Part part, AnswerWriter writer)
    {
        OrderedDictionary<string, QuantityWire> values = [];
        foreach (Field field in FieldRegistry.For(part.Kind))
        {
            if (field.Get(part) is null && PartFacts.ComputedNumber(part, field.Name) is { } value)
                values.Add(field.Name, writer.Quantity(value, field.Dimension!));
        }

        return values;
    }

    private static OfferWire? Offer(Part part, Outlet? outlet) =>
        outlet?.Offers.GetValueOrDefault(part.Id) is { } offer
            ? new OfferWire
            {
                Price = offer.PriceMinor is { } amount
                    ? new PriceWire { AmountMinor = amount, Currency = outlet.Currency }
                    : null,
                Stock = offer.Stock,
            }
            : null;
}
