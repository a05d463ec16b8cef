using System.Reflection;
using PartPicker.Catalog;
using Xunit;

namespace PartPicker.Tests.Catalog;

public sealed class BadRowTests
{
    private static readonly Dictionary<string, BadRow> Cases =
        new([.. BadFileRows.Cases, .. BadCsvRows.Cases, .. BadMachineRows.Cases]);

    /// <summary>These cannot be made by spoiling one file, and have tests of their own.</summary>
    private static readonly string[] ElsewhereTested =
        [FindingCodes.MissingFolder, FindingCodes.UnreadableFile, FindingCodes.TooManyFindings];

    public static TheoryData<string> Names => [.. Cases.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void One_cause_gives_one_finding_at_its_place_and_no_contents(string name)
    {
        BadRow bad = Cases[name];
        var catalog = new TestCatalog();
        bad.Spoil(catalog);

        ImportResult result = catalog.Read();

        ImportFinding finding = Assert.Single(result.Findings);
        Assert.Equal((bad.File, bad.Row, bad.Column, bad.Code), (finding.File, finding.Row, finding.Column, finding.Code));
        if (bad.Value is not null)
            Assert.Equal(bad.Value, finding.Value);
        Assert.Contains(bad.Remedy, finding.Reason);
        Assert.Null(result.Contents);
    }

    [Fact]
    public void Every_code_has_a_case()
    {
        IEnumerable<string> codes = typeof(FindingCodes)
            .GetFields(BindingFlags.Public | BindingFlags.Static).Select(f => (string)f.GetRawConstantValue()!);

        Assert.Empty(codes.Except(Cases.Values.Select(c => c.Code)).Except(ElsewhereTested));
    }
}
