using PartPicker.Api.Docs;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

/// <summary>The pages that the program writes of itself are the committed ones.</summary>
public sealed class WrittenPageTests
{
    [Fact]
    public void The_page_on_fit_is_what_the_rules_say() => Same("fit.md", FitDocs.Page());

    [Fact]
    public void The_page_on_fields_is_what_the_registry_says() => Same("fields.md", FieldDocs.Page());

    private static void Same(string file, string page) => Assert.True(
        KeptFile.Read(Path.Combine(Repository.Root, "docs", file), page) == page,
        $"docs/{file} is not what the program writes. {KeptFile.HowTo}");
}
