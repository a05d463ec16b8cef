using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using PartPicker.Api.Docs;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

/// <summary>Every link leads somewhere: on the service, and between the files of the repository.</summary>
[Collection(ServiceTests.Name)]
public sealed partial class PageLinkTests(Service service)
{
    private readonly Dictionary<string, Answer> pages = [];

    public static TheoryData<string> Pages => ["/", "/docs/errors", .. MarkdownPage.Names.Select(name => $"/docs/{name}")];

    public static TheoryData<string> Files =>
    [
        .. new[] { "README.md", "DEVELOPERS.md", "catalog-samples/README.md", "tests/reference/README.md" }.Concat(
            Directory.GetFiles(Path.Combine(Repository.Root, "docs"), "*.md", SearchOption.AllDirectories)
                .Select(file => Path.GetRelativePath(Repository.Root, file))
                .Order(StringComparer.Ordinal)),
    ];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Every_link_of_a_served_page_leads_to_its_place(string path)
    {
        string page = (await Get(path)).Text;
        string[] links = [.. Link().Matches(page).Select(match => WebUtility.HtmlDecode(match.Groups[1].Value)).Distinct()];

        Assert.NotEmpty(links);
        foreach (string link in links.Where(link => !link.StartsWith("data:", StringComparison.Ordinal)))
            await LeadsSomewhere(path, link);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_link_between_files_leads_to_its_place(string file)
    {
        string path = Path.Combine(Repository.Root, file);
        foreach (string link in MarkdownLink().Matches(File.ReadAllText(path)).Select(match => match.Groups[1].Value))
        {
            if (link.Contains(':', StringComparison.Ordinal))
                continue;
            string[] parts = link.Split('#');
            string target = parts[0].Length == 0 ? path : Path.GetFullPath(Path.Combine(Path.GetDirectoryName(path)!, parts[0]));
            Assert.True(Path.Exists(target), $"{file} leads to {link}, which is not there.");
            if (parts.Length > 1)
                Assert.True(Headings(target).Contains(parts[1]), $"{file} leads to {link}, but no heading of it is that.");
        }
    }

    [Fact]
    public async Task What_an_explanation_cites_stands_at_its_anchor()
    {
        JsonNode answer = (await service.PostAsync("/v1/predictions", """
            {
              "machine": "valley-two-seater",
              "explain": ["engagementRpm", "lockUpRpm", "upshiftRpm/5", "slipMargin/5", "powerLost/5", "vehicleSpeed/5",
                "anchoring.flyweightFactor", "anchoring.thrustFactor"]
            }
            """)).Json;
        JsonNode[] cited = [.. answer["explanations"]!.AsArray().SelectMany(tree => Nodes(tree!)).Where(node => node["relation"] is not null)];

        Assert.True(cited.Select(node => (string)node["relation"]!).Distinct().Count() > 30);
        foreach (string page in cited.Select(node => (string)node["page"]!).Distinct())
        {
            await LeadsSomewhere("", page);
        }

        foreach (JsonNode node in cited)
            Assert.EndsWith($"#{(string)node["relation"]!}", (string)node["page"]!);
        string[] keys = [.. cited.Select(node => (string?)node["source"]).OfType<string>().Distinct()];
        Assert.Contains("SAE J1349", keys);
        foreach (string key in keys)
            await LeadsSomewhere("", $"/docs/sources#{key.Replace(' ', '-')}");
    }

    [Fact]
    public void Every_source_has_an_anchor_of_its_own()
    {
        Assert.NotEmpty(KeptPages.SourceKeys);
        Assert.Equal(KeptPages.SourceKeys.Count, KeptPages.SourceKeys.Select(KeptPages.Anchor).Distinct().Count());
    }

    private static IEnumerable<JsonNode> Nodes(JsonNode node) =>
        node["parts"]!.AsArray().SelectMany(part => Nodes(part!)).Prepend(node);

    private async Task LeadsSomewhere(string from, string link)
    {
        string[] parts = link.Split('#');
        string path = parts[0].Length == 0 ? from : parts[0];
        Assert.True(path.StartsWith('/'), $"{from} leads to {link}, which is not on the service.");
        Answer target = await Get(path);
        Assert.True(target.Status is >= 200 and < 400, $"{from} leads to {link}, which answers {target.Status}.");
        if (parts.Length > 1)
            Assert.True(target.Text.Contains($" id=\"{parts[1]}\"", StringComparison.Ordinal), $"{from} leads to {link}: no such place.");
    }

    private async Task<Answer> Get(string path)
    {
        if (!pages.TryGetValue(path, out Answer? answer))
            pages[path] = answer = await service.GetAsync(path);
        return answer;
    }

    // As code hosts name them: small letters and -, without other signs.
    private static HashSet<string> Headings(string file) =>
    [
        .. File.ReadLines(file).Where(line => line.StartsWith('#'))
            .Select(line => NotInAnchor().Replace(line.TrimStart('#').Trim().ToLowerInvariant(), "").Replace(' ', '-')),
    ];

    [GeneratedRegex("href=\"([^\"]*)\"")]
    private static partial Regex Link();

    [GeneratedRegex(@"\]\(([^)\s]+)\)")]
    private static partial Regex MarkdownLink();

    [GeneratedRegex(@"[^\w\- ]")]
    private static partial Regex NotInAnchor();
}
