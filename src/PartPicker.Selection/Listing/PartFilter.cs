using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Whether a part matches every condition of a query.</summary>
internal sealed class PartFilter
{
    // A length asked for in inches meets one stated in millimetres within rounding of either.
    private const double RelativeSlack = 1e-9;

    private readonly PartQuery query;
    private readonly string[] textWords;
    private readonly PartFitness? fitness;

    public PartFilter(CatalogSnapshot catalog, PartQuery query)
    {
        this.query = query;
        textWords = query.Text?.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries) ?? [];
        fitness = query.FitsMachine is { } machine ? PartFitness.For(catalog, machine) : null;
    }

    public bool Matches(Part part) =>
        (query.Kind is not { } kind || part.Kind == kind)
        && query.Ranges.All(r => InRange(part, r))
        && query.Words.All(w => HasWord(part, w))
        && textWords.All(w => Contains(part.Id, w) || Contains(part.Name, w))
        && (query.InStockAt is not { } outlet || outlet.Offers.GetValueOrDefault(part.Id)?.Stock > 0)
        && (fitness is null || fitness.Fits(part));

    private static bool InRange(Part part, FieldRange range) =>
        FieldOf(part, range.Field) is { } field
        && PartFacts.Number(part, field) is { } value
        && (range.Min is not { } min || value >= min - range.Rounding - Math.Abs(min) * RelativeSlack)
        && (range.Max is not { } max || value <= max + range.Rounding + Math.Abs(max) * RelativeSlack);

    private static bool HasWord(Part part, FieldWords wanted) =>
        FieldOf(part, wanted.Field) is { } field
        && PartFacts.Word(part, field) is { } word
        && wanted.Words.Contains(word, StringComparer.Ordinal);

    private static Field? FieldOf(Part part, string name) =>
        FieldRegistry.For(part.Kind).FirstOrDefault(f => f.Name == name);

    private static bool Contains(string text, string word) => text.Contains(word, StringComparison.OrdinalIgnoreCase);
}
