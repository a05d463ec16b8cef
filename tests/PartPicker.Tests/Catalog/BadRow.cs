namespace PartPicker.Tests.Catalog;

/// <summary>One thing that is wrong with an otherwise sound catalog, and the one finding that must come of it.</summary>
internal sealed record BadRow(
    Action<TestCatalog> Spoil, string File, int? Row, string? Column, string? Value, string Code, string Remedy)
{
    /// <summary>In one file, one text in place of another.</summary>
    public static BadRow Edit(
        string file, string old, string @new, int? row, string? column, string? value, string code, string remedy) =>
        new(catalog => catalog.Replace(file, old, @new), file, row, column, value, code, remedy);

    /// <summary>A row more at the end of a CSV file; the helices end at line 4, so it is line 5 there.</summary>
    public static BadRow Helix(string line, string? column, string? value, string code, string remedy) => new(
        catalog => catalog.Append(TestCatalog.Helices, line), TestCatalog.Helices, 5, column, value, code, remedy);

    /// <summary>In the machine file, one text in place of another.</summary>
    public static BadRow Machine(
        string old, string @new, string pointer, string? value, string code, string remedy) =>
        Edit(TestCatalog.Machine, old, @new, null, pointer, value, code, remedy);
}
