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

    public static PartListWire WritePage(PartQuestion question, PartPage page, AnswerWriter writer) => new()
    {
        CatalogRevision = writer.Catalog.Revision,
        Units = writer.Format.UnitsWord,
        Items = [.. page.Items.Select(part => Item(part, question.Outlet, writer))],
        Total = page.Total,
        NextCursor = page.Next is { } next
            ? PartCursor.Write(next, question.Query, question.Outlet, writer.Catalog.Revision)
            : null,
        Facets = [.. page.Facets.Select(facet => new FacetWire
        {
            Field = facet.Field,
            Counts = [.. facet.Counts.Select(c => new FacetCountWire { Word = c.Word, Count = c.Count })],
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
            if (field.Get(part) is null && field.Dimension is { } dimension
                && PartFacts.ComputedNumber(part, field.Name) is { } value)
            {
                values.Add(field.Name, writer.Quantity(value, dimension));
            }
        }

        return values;
    }

    private static OfferWire? Offer(Part part, Outlet? outlet) => outlet?.Offers.GetValueOrDefault(part.Id) is { } offer
        ? new OfferWire
        {
            Price = offer.PriceMinor is { } minor ? new PriceWire { AmountMinor = minor, Currency = outlet.Currency } : null,
            Stock = offer.Stock,
        }
        : null;
}
