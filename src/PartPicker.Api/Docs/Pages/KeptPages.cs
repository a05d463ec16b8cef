using System.Reflection;
using System.Text.RegularExpressions;

namespace PartPicker.Api.Docs;

/// <summary>The files of docs/ that are built in: pages in Markdown, and their pictures.</summary>
internal static partial class KeptPages
{
    /// <summary>What a page's file ends with.</summary>
    public const string Ending = ".md";

    private const string Folder = "docs/";

    private static readonly Lazy<IReadOnlyList<string>> Keys = new(() =>
        [.. Key().Matches(Read("sources" + Ending)).Select(match => match.Groups[1].Value)]);

    /// <summary>Their names, without the ending: as "limits" or "model/springs".</summary>
    public static IReadOnlyList<string> Names { get; } =
    [
        .. Assembly.GetExecutingAssembly().GetManifestResourceNames()
            .Where(name => name.StartsWith(Folder, StringComparison.Ordinal) && name.EndsWith(Ending, StringComparison.Ordinal))
            .Select(name => name[Folder.Length..^Ending.Length])
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>Every key of the page of sources.</summary>
    public static IReadOnlyList<string> SourceKeys => Keys.Value;

    /// <summary>Where a source stands on its page.</summary>
    public static string Anchor(string sourceKey) => sourceKey.Replace(' ', '-');

    /// <summary>The text of a file below docs/.</summary>
    public static string Read(string file)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Folder + file)
            ?? throw new FileNotFoundException($"No file {file} of docs/ is built in.");
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }

    [GeneratedRegex(@"^\| \[(.+?)\] \|", RegexOptions.Multiline)]
    private static partial Regex Key();
}
