using System.Globalization;
using System.Text.RegularExpressions;
using PartPicker.Mechanics;
using PartPicker.Tests.Catalog;
using Xunit;

namespace PartPicker.Tests.Mechanics;

/// <summary>The pages of docs/model: their worked examples come out of the model, and they hold what explanations cite.</summary>
public sealed partial class ModelPageTests
{
    // The pages print six digits.
    private const double PrintedShare = 1e-5;

    private static readonly string Docs = Path.Combine(Path.GetDirectoryName(SampleFolder.Path)!, "docs");

    public static TheoryData<string, string, string, double> Rows
    {
        get
        {
            var rows = new TheoryData<string, string, string, double>();
            foreach (string page in Pages)
            {
                foreach (string[] cells in Table(page, "| relation | given | result |"))
                    rows.Add(page, cells[0], cells[1], Number(cells[2]));
            }

            return rows;
        }
    }

    public static TheoryData<string> Names => [.. Relations.All.Select(r => r.Name)];

    public static TheoryData<string> PageNames => [.. Pages];

    public static TheoryData<string> PagesOfRelations => [.. Relations.All.Select(r => r.Page).Append("uncertainty").Distinct()];

    [Theory]
    [MemberData(nameof(Rows))]
    public void A_worked_example_comes_out_as_its_page_prints_it(string page, string relation, string given, double result)
    {
        double computed = page is "shift-curve" or "anchoring"
            ? new WorkedMachine(Numbers(string.Join(", ", Table("shift-curve", "| of the machine | given |").Select(c => c[1]))))
                .Of(relation, Numbers(given))
            : WorkedExamples.Of(relation, Numbers(given));
        Assert.Equal(result, computed, PrintedShare * Math.Abs(result));
    }

    [Theory]
    [MemberData(nameof(PagesOfRelations))]
    public void A_page_works_an_example_and_says_what_it_does_not_know(string page)
    {
        string text = File.ReadAllText(PathOf(page));
        Assert.NotEmpty(Table(page, "| relation | given | result |"));
        Assert.Contains("| symbol | unit | meaning |", text, StringComparison.Ordinal);
        Assert.Contains("\n## What this does not know\n", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(PageNames))]
    public void A_page_cites_only_sources_that_are_listed(string page)
    {
        string[] cited = [.. Citation().Matches(File.ReadAllText(PathOf(page))).Select(match => match.Groups[1].Value).Distinct()];
        Assert.Subset(SourceKeys.ToHashSet(), cited.ToHashSet());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void What_an_explanation_cites_stands_on_its_page_and_among_the_sources(string name)
    {
        Relation relation = Relations.All.Single(r => r.Name == name);
        string page = File.ReadAllText(PathOf(relation.Page));
        Assert.Contains($"\n## `{name}`\n", page, StringComparison.Ordinal);
        if (relation.Source is { } key)
            Assert.Contains(key, SourceKeys);
    }

    [Fact]
    public void Each_key_of_the_sources_stands_there_once()
    {
        Assert.NotEmpty(SourceKeys);
        Assert.Equal(SourceKeys.Distinct(), SourceKeys);
    }

    private static string[] SourceKeys { get; } =
    [
        .. File.ReadLines(Path.Combine(Docs, "sources.md")).Where(l => l.StartsWith("| [", StringComparison.Ordinal))
            .Select(l => l.Split('|')[1].Trim().Trim('[', ']')),
    ];

    private static string[] Pages =>
    [
        .. Directory.GetFiles(Path.Combine(Docs, "model"), "*.md").Select(f => Path.GetFileNameWithoutExtension(f))
            .Order(StringComparer.Ordinal),
    ];

    private static string PathOf(string page) => Path.Combine(Docs, "model", page + ".md");

    private static string[][] Table(string page, string head) =>
    [
        .. File.ReadLines(PathOf(page)).SkipWhile(l => l != head).Skip(2).TakeWhile(l => l.StartsWith('|'))
            .Select(l => l.Split('|')[1..^1].Select(c => c.Trim()).ToArray()),
    ];

    // "a = 1, b = 2"
    private static Dictionary<string, double> Numbers(string given) => given.Split(", ", StringSplitOptions.RemoveEmptyEntries)
        .Select(g => g.Split(" = ")).ToDictionary(g => g[0], g => Number(g[1]));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    // A key in brackets that is not the text of a link.
    [GeneratedRegex(@"\[([A-Z][^\]\\$]*)\](?!\()")]
    private static partial Regex Citation();
}
