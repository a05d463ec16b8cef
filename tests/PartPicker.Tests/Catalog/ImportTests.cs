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
        Assert.Equal("The catalog folder cannot be read: it is not there. Check the path.", finding.Reason);
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
        Assert.Contains("what it links to is not there", finding.Reason);
    }

    [Theory]
    [InlineData("\"id\": \"en-1\",", "\"id\": \"en-1\",,", "byte 18 of this line")]
    [InlineData("\"friction\": 0.36", "\"friction\": [[[[[[[]]]]]]]", "deeper than the 8 levels")]
    public void What_is_no_JSON_is_told_in_our_own_words(string old, string spoilt, string told)
    {
        ImportFinding finding = Assert.Single(new TestCatalog().Replace(TestCatalog.Machine, old, spoilt).Read().Findings);

        Assert.Equal(FindingCodes.BadJson, finding.Code);
        Assert.Contains(told, finding.Reason);
        Assert.DoesNotContain("reader", finding.Reason);
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
    public void References_are_followed_though_other_values_are_refused()
    {
        var catalog = new TestCatalog()
            .Replace(TestCatalog.Helices, "hx-two,Two angles,45", "hx-two,Two angles,95")
            .Replace(TestCatalog.DriveSprings, "pair,2,ds-rate", "pair,0,ds-gone")
            .Replace(TestCatalog.Kits, "ds-rate; fw-two", "ds-rate; fw-gone")
            .Replace(TestCatalog.Machine, "\"centreDistance\": \"270 mm\"", "\"centreDistance\": 270")
            .Replace(TestCatalog.Machine, "\"hole\": \"2\"", "\"hole\": 2")
            .Replace(TestCatalog.Machine, "\"drivenSpring\": \"dv-rate\"", "\"drivenSpring\": \"dv-gone\"")
            .Replace(TestCatalog.Machine, "\"hole\": \"1\"", "\"hole\": \"9\"")
            .Replace(TestCatalog.Outlet, "kt-1,", "kt-gone,");

        ImportResult result = catalog.Read();

        Assert.Equal(
            [
                "drive-springs.csv packQuantity out-of-range",
                "drive-springs.csv supersededBy unknown-reference",
                "helices.csv helixDeg out-of-range",
                "kits.csv contents unknown-reference",
                "machines/hill-cart.json /machines/0/centreDistance wrong-shape",
                "machines/hill-cart.json /machines/0/fitted/hole wrong-shape",
                "machines/hill-cart.json /machines/0/fitted/drivenSpring unknown-reference",
                "machines/hill-cart.json /machines/0/baselines/1/parts/hole unknown-hole",
                "outlets/north.csv partId unknown-reference",
            ],
            result.Findings.Select(f => $"{f.File} {f.Column} {f.Code}"));
        Assert.True(result.MoreMayFollow);
    }

    [Fact]
    public void What_could_not_be_read_may_hold_what_seems_missing_of_its_kind_and_of_no_other()
    {
        var catalog = new TestCatalog()
            .Set(TestCatalog.Helices, [0xFF, 0xFE])
            .Replace(TestCatalog.Kits, "ds-rate; fw-two", "hx-two; fw-two")
            .Replace(TestCatalog.DriveSprings, "pair,2,ds-rate", "pair,2,ds-gone");

        ImportResult result = catalog.Read();

        Assert.Equal(
            ["drive-springs.csv unknown-reference", "helices.csv not-utf8"],
            result.Findings.Select(f => $"{f.File} {f.Code}"));
        Assert.True(result.MoreMayFollow);
    }

    [Fact]
    public void An_outlet_that_could_not_be_read_is_there_all_the_same() =>
        Assert.Equal(
            FindingCodes.NotUtf8, Assert.Single(new TestCatalog().Set(TestCatalog.Outlet, [0xFF, 0xFE]).Read().Findings).Code);

    [Fact]
    public void Where_everything_was_read_nothing_more_follows() =>
        Assert.False(new TestCatalog().Replace(TestCatalog.Outlet, "kt-1,", "kt-gone,").Read().MoreMayFollow);

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
                Assert.Equal(Comparable(field.Get(one)), Comparable(field.Get(other)));
        }

        Assert.Equal(expected.Outlets.Select(o => (o.Id, o.Currency)), actual.Outlets.Select(o => (o.Id, o.Currency)));
        foreach ((Outlet one, Outlet other) in expected.Outlets.Zip(actual.Outlets))
        {
            Assert.Equal(one.Offers, other.Offers);
            Assert.Equal(one.LabourMinutes, other.LabourMinutes);
        }
    }

    // Records that hold lists are equal only when the lists are one and the same.
    private static object? Comparable(object? value) => value is IEnumerable<NamedCurve> curves
        ? curves.SelectMany(c => c.Points.Select(p => (c.Name, p))).ToArray()
        : value;
}
