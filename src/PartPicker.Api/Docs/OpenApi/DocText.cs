namespace PartPicker.Api.Docs;

/// <summary>Doc comments as text of the API document.</summary>
internal static class DocText
{
    private static readonly char[] Breaks = ['\r', '\n'];

    /// <summary>Without the line breaks of the source.</summary>
    public static string? OneLine(string? text) => text is null
        ? null
        : string.Join(' ', text.Split(Breaks, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));
}
