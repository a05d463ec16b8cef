using PartPicker.Parts;

namespace PartPicker.Selection;

/// <summary>Says ahead of an answer what is wrong with a set, so that a caller learns of it beside other faults.</summary>
public static class SetCheck
{
    /// <summary>The problems that an answer about this set would be refused with, as far as they lie in the set.</summary>
    /// <param name="catalog">Where its ids lead.</param>
    /// <param name="machine">Where its hole is.</param>
    /// <param name="set">The set.</param>
    /// <param name="place">Where the set stands in the request, as in "fitted".</param>
    public static IReadOnlyList<RequestProblem> Find(
        CatalogSnapshot catalog, MachineProfile machine, PartSet set, string place)
    {
        var problems = new List<RequestProblem>();
        SetUpReader.Find(catalog, machine, set, place, problems);
        return problems;
    }
}
