using PartPicker.Catalog;
using PartPicker.Parts;
using Xunit;

namespace PartPicker.Tests.Catalog;

/// <summary>What holds for an import as a whole.</summary>
public sealed class ImportTests
{
    [Fact]
    public void A_folder_that_is_not_there_is_a_finding()
    {
        string folder = Path.Combine(Path.GetTempPath(), $"part-picker-{Guid.NewGuid():N}");

        ImportResult result = CatalogImport.ReadFolder(folder);

        ImportFinding finding = Assert.Single(result.Findings);
        Assert.Equal((FindingCodes.MissingFolder, folder), (finding.Code, finding.Value));
        Assert.Null(result.Contents);
    }

    [Fact]
    public void A_link_that_leads_nowhere_is_a_finding()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("part-picker-catalog-");
        File.CreateSymbolicLink(Path.Combine(folder.FullName, "helices.csv"), Path.Combine(folder.FullName, "gone"));

        ImportResult result = CatalogImport.ReadFolder(folder.FullName);
        folder.Delete(recursive: true);

        ImportFinding finding = Assert.Single(result.Findings);
        Assert.Equal(("helices.csv", FindingCodes.UnreadableFile), (finding.File, finding.Code));
    }

    [Theory]
    [InlineData("")]
    [InlineData("a\0b")]
    public void A_folder_whose_name_can_be_none_is_a_finding(string folder) =>
        Assert.Equal(FindingCodes.MissingFolder, Assert.Single(CatalogImport.ReadFolder(folder).Findings).Code);

    [Fact]
    public void All_causes_in_all_files_are_found_at_once_by_file_and_line()
    {
        var catalog = new TestCatalog()
            .Replace(TestCatalog.Outlet, "2450", "24,50")
            .Replace(TestCatalog.Helices, "hx-two,Two angles,45", "hx-two,Two angles,95")
            .Replace(TestCatalog.DrivenSprings, "9 N/mm", "9 N")
            .Replace(TestCatalog.DriveSprings, "1.5 in,120 lbf", "1.5 in,20 lbf")
            .Replace(TestCatalog.DriveSprings, "0.192 in,2.2 in", "0.192,2.2")
            .Replace(TestCatalog.Machine, "\"friction\": 0.36", "\"friction\": 36")
            .Replace(TestCatalog.Machine, "\"tyreRadius\": \"13.4 in\"", "\"tyreRadius\": 13.4");

        Assert.Equal(
            [
                "drive-springs.csv 2 wireDiameter bad-quantity",
                "drive-springs.csv 2 outsideDiameter bad-quantity",
                "drive-springs.csv 4 secondLoad wrong-trend",
                "driven-springs.csv 2 rate bad-quantity",
                "helices.csv 3 helixDeg out-of-range",
                "machines/hill-cart.json  /belts/0/friction out-of-range",
                "machines/hill-cart.json  /gearings/0/tyreRadius wrong-shape",
                "outlets/north.csv 2  ragged-row",
            ],
            catalog.Read().Findings.Select(f => $"{f.File} {f.Row} {f.Column} {f.Code}"));
    }

    [Fact]
    public void A_bad_row_does_not_make_references_to_it_look_wrong()
    {
        ImportFinding finding = Assert.Single(new TestCatalog()
            .Replace(TestCatalog.Helices, "hx-two,Two angles,45", "hx-two,Two angles,95").Read().Findings);

        Assert.Equal("helices.csv", finding.File);
    }

    [Fact]
    public void Findings_beyond_the_limit_are_counted_and_said_to_be_there()
    {
        int rows = ImportLimits.MaxFindings + 7;
        string lines = string.Concat(Enumerable.Range(0, rows).Select(i => $"bad-{i},,5,,,,\n"));

        IReadOnlyList<ImportFinding> findings = new TestCatalog().Append(TestCatalog.Helices, lines).Read().Findings;

        Assert.Equal(ImportLimits.MaxFindings + 1, findings.Count);
        Assert.All(findings.SkipLast(1), f => Assert.Equal(FindingCodes.OutOfRange, f.Code));
        Assert.Equal(FindingCodes.TooManyFindings, findings[^1].Code);
        Assert.Contains($"{rows} findings", findings[^1].Reason);
    }

    [Fact]
    public void Exactly_as_many_findings_as_the_limit_are_listed_without_a_closing_one()
    {
        string lines = string.Concat(Enumerable.Range(0, ImportLimits.MaxFindings).Select(i => $"bad-{i},,5,,,,\n"));

        IReadOnlyList<ImportFinding> findings = new TestCatalog().Append(TestCatalog.Helices, lines).Read().Findings;

        Assert.Equal(ImportLimits.MaxFindings, findings.Count);
        Assert.DoesNotContain(findings, f => f.Code == FindingCodes.TooManyFindings);
    }

    [Fact]
    public void The_order_of_rows_does_not_matter()
    {
        var shuffled = new TestCatalog();
        var random = new Random(20_311);
        foreach (string file in shuffled.Files.Where(f => f.EndsWith(".csv")).ToArray())
        {
            string[] lines = shuffled.Text(file).Split('\n', StringSplitOptions.RemoveEmptyEntries);
            random.Shuffle(lines.AsSpan(1));
            shuffled.Set(file, string.Join('\n', lines));
        }

        AssertSame(new TestCatalog().Contents(), shuffled.Contents());
    }

    [Fact]
    public void The_lists_of_a_machine_file_may_stand_in_any_order()
    {
        var reordered = new TestCatalog();
        string gearings = reordered.Text(TestCatalog.Machine).Split('\n').Single(l => l.Contains("gearings")) + "\n";
        reordered.Replace(TestCatalog.Machine, gearings, "").Replace(TestCatalog.Machine, "{\n", "{\n" + gearings);

        AssertSame(new TestCatalog().Contents(), reordered.Contents());
    }

    [Fact]
    public void Inch_and_metric_spellings_of_one_value_give_the_same_value()
    {
        var inch = new TestCatalog().Replace(TestCatalog.DriveSprings, "90 mm,,17.5 N/mm", "3.5 in,,100 lbf/in");
        var metric = new TestCatalog()
            .Replace(TestCatalog.DriveSprings, "90 mm,,17.5 N/mm", "88.9 mm,,17.512683524647636 N/mm");

        var one = inch.Item<DriveSpring>("ds-rate");
        var other = metric.Item<DriveSpring>("ds-rate");

        Assert.Equal(one.FreeLength!.Value.Meters, other.FreeLength!.Value.Meters, 1e-15);
        Assert.Equal(one.Rate!.Value.NewtonsPerMeter, other.Rate!.Value.NewtonsPerMeter, 1e-9);
    }

    internal static void AssertSame(CatalogContents expected, CatalogContents actual)
    {
        Assert.Equal(expected.Items.Select(i => (i.Kind, i.Id)), actual.Items.Select(i => (i.Kind, i.Id)));
        foreach ((CatalogItem one, CatalogItem other) in expected.Items.Zip(actual.Items))
        {
            foreach (Field field in FieldRegistry.For(one.Kind))
                Assert.Equal(field.Get(one), field.Get(other));
        }

        Assert.Equal(expected.Outlets.Select(o => (o.Id, o.Currency)), actual.Outlets.Select(o => (o.Id, o.Currency)));
        foreach ((Outlet one, Outlet other) in expected.Outlets.Zip(actual.Outlets))
            Assert.Equal(one.Offers, other.Offers);
    }
}
