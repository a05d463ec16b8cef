using System.Text.Json;
using System.Text.RegularExpressions;
using PartPicker.Parts;
using Xunit;

namespace PartPicker.Tests.Catalog;

/// <summary>The page that says how a catalog is written leaves nothing out.</summary>
public sealed class FormatPageTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(SampleFolder.Path, "README.md"));

    public static TheoryData<ItemKind> Kinds => [.. Enum.GetValues<ItemKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_field_and_every_word_of_a_choice_stands_there(ItemKind kind)
    {
        foreach (Field field in FieldRegistry.For(kind))
        {
            Assert.Contains($"`{field.Name}`", Page);
            foreach (string word in field.ChoiceType?.GetEnumNames() ?? [])
                Assert.Contains($"`{JsonNamingPolicy.CamelCase.ConvertName(word)}`", Page);
        }
    }

    [Fact]
    public void The_machine_that_it_shows_is_read_without_a_finding()
    {
        string shown = Regex.Match(Page, "```json\n(\\{\n.*?)```", RegexOptions.Singleline).Groups[1].Value;
        var catalog = new TestCatalog().Clear();
        foreach (string file in Directory.GetFiles(SampleFolder.Path, "*", SearchOption.AllDirectories))
            catalog.Set(Path.GetRelativePath(SampleFolder.Path, file), File.ReadAllBytes(file));

        Machine machine = catalog.Set("machines/valley-two-seater.json", shown).Item<Machine>("valley-two-seater");

        Assert.Equal("valley-drive", machine.DriveClutchId);
        Assert.NotNull(machine.Fitted);
    }

    [Fact]
    public void Every_file_at_the_top_and_every_ready_made_request_stands_there()
    {
        foreach (string file in Directory.GetFiles(SampleFolder.Path, "*.csv")
            .Concat(Directory.GetFiles(Path.Combine(SampleFolder.Path, "requests"))))
        {
            Assert.Contains($"| `{Path.GetFileName(file)}` |", Page);
        }
    }
}
