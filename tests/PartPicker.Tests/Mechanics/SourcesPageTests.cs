using System.Text.RegularExpressions;
using PartPicker.Tests.Catalog;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>docs/sources.md against the code: what is cited stands there, and what it lists is tested.</summary>
public sealed partial class SourcesPageTests
{
    private static readonly string Root = Path.GetDirectoryName(SampleFolder.Path)!;
    private static readonly string[] Page = File.ReadAllLines(Path.Combine(Root, "docs", "sources.md"));

    [Fact]
    public void Every_source_that_a_comment_cites_is_listed()
    {
        HashSet<string> keys = [.. Page.Select(l => Key().Match(l)).Where(m => m.Success).Select(m => m.Groups[1].Value)];
        string[] unlisted =
        [
            .. CodeFiles().SelectMany(file => File.ReadLines(file)
                .Where(l => l.TrimStart().StartsWith("//", StringComparison.Ordinal))
                .SelectMany(l => Citation().Matches(l))
                .Select(m => m.Groups[1].Value)
                .Where(key => !keys.Contains(key))
                .Select(key => $"[{key}] in {Path.GetFileName(file)}")),
        ];
        Assert.True(keys.Count > 20);
        Assert.Empty(unlisted);
    }

    [Fact]
    public void Every_listed_number_is_tested_in_the_class_that_the_page_names()
    {
        (string[] Ids, string[] Classes)[] rows =
        [
            .. Page.SkipWhile(l => l != "| id | source | test class |").Skip(2).TakeWhile(l => l.StartsWith('|'))
                .Select(l => l.Split('|'))
                .Select(c => (c[1].Trim().Split(", "), c[3].Trim().Split(", ").Select(name => name.Trim('`')).ToArray())),
        ];
        Assert.True(rows.Length > 20);
        foreach ((string[] ids, string[] classes) in rows)
        {
            string text = string.Concat(classes.Select(name => File.ReadAllText(CodeFiles().Single(f => Path.GetFileName(f) == name + ".cs"))));
            Assert.All(ids, id => Assert.Matches($"Trait\\(\"Outside\", \"{Regex.Escape(id)}[\"/ ]", text));
        }
    }

    private static IEnumerable<string> CodeFiles() =>
        new[] { "src/PartPicker.Mechanics", "src/PartPicker.Selection", "tests/PartPicker.Tests" }
            .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Root, folder), "*.cs", SearchOption.AllDirectories))
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal));

    [GeneratedRegex(@"^\| \[([^\]]+)\] \|")]
    private static partial Regex Key();

    // A key has capitals or a number before its bracket closes; [0, 1] and a list of code have not.
    [GeneratedRegex(@"\[([A-Z0-9][A-Z0-9]*(?: [A-Z0-9][A-Za-z0-9.-]*)*)\](?!\()")]
    private static partial Regex Citation();
}
