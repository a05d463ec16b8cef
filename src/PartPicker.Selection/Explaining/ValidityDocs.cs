using System.Text;
using PartPicker.Mechanics;

namespace PartPicker.Selection;

/// <summary>Writes the table of valid spans into a page, so that the page cannot say another thing.</summary>
public static class ValidityDocs
{
    public const string Start = "<!-- valid spans: written by the program -->";
    public const string End = "<!-- end of valid spans -->";

    /// <summary>The page with what stands between its markers written anew.</summary>
    /// <exception cref="ArgumentException">The page lacks a marker.</exception>
    public static string Into(string page)
    {
        int start = page.IndexOf(Start, StringComparison.Ordinal);
        int end = page.IndexOf(End, StringComparison.Ordinal);
        if (start < 0 || end < start)
            throw new ArgumentException("The page lacks the markers of the table.", nameof(page));
        return $"{page[..(start + Start.Length)]}\n\n{Table()}\n{page[end..]}";
    }

    private static string Table()
    {
        StringBuilder table = new("| span | of what | holds for | outside | source |\n|---|---|---|---|---|\n");
        foreach (ValidRange range in ValidRanges.All)
            table.Append($"| `{range.Key}` | {range.Quantity} | {range.Span} | {range.Why} | {range.Source} |\n");
        return table.ToString();
    }
}
