using PartPicker.Api.Docs;
using PartPicker.Catalog;
using PartPicker.Parts;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

/// <summary>Every example of the page of fields is read by the import as it stands.</summary>
public sealed class FieldExampleTests
{
    private static readonly Dictionary<ItemKind, string> Files = new()
    {
        [ItemKind.DriveSpring] = "drive-springs.csv",
        [ItemKind.Flyweight] = "flyweights.csv",
        [ItemKind.DrivenSpring] = "driven-springs.csv",
        [ItemKind.Helix] = "helices.csv",
        [ItemKind.Belt] = "belts.csv",
        [ItemKind.Shim] = "shims.csv",
        [ItemKind.Kit] = "kits.csv",
    };

    private static readonly Dictionary<ItemKind, string> Lists = new()
    {
        [ItemKind.Engine] = "engines",
        [ItemKind.DriveClutch] = "driveClutches",
        [ItemKind.DrivenClutch] = "drivenClutches",
        [ItemKind.Gearing] = "gearings",
        [ItemKind.ArmProfile] = "armProfiles",
        [ItemKind.Machine] = "machines",
    };

    // What one item alone, of which nothing else is stated, cannot meet.
    private static readonly string[] AboutTheRest =
    [
        FindingCodes.MissingColumn, FindingCodes.MissingValue, FindingCodes.HalfGiven, FindingCodes.EitherOr,
        FindingCodes.NotKnown, FindingCodes.UnknownReference,
    ];

    public static TheoryData<ItemKind> Kinds => [.. Enum.GetValues<ItemKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void An_example_is_read_as_it_stands(ItemKind kind)
    {
        foreach (Field field in FieldRegistry.For(kind).Where(field => field.Name != "id"))
        {
            string example = FieldExample.Of(field);
            Assert.Contains($" | `{example.Replace("|", "\\|")}` | ", ReferencePages.Find("fields"));
            Assert.Empty(Findings(field, example).Select(finding => finding.Code).Except(AboutTheRest));
        }
    }

    [Fact]
    public void An_example_out_of_its_range_would_be_found()
    {
        Field wire = FieldRegistry.For(ItemKind.DriveSpring).Single(field => field.Name == "wireDiameter");
        Field travel = FieldRegistry.For(ItemKind.DriveClutch).Single(field => field.Name == "contactTravel");

        Assert.Contains(Findings(wire, "30 mm"), finding => finding.Code == FindingCodes.OutOfRange);
        Assert.Contains(Findings(travel, "\"3\""), finding => finding.Code == FindingCodes.BadQuantity);
    }

    private static IReadOnlyList<ImportFinding> Findings(Field field, string example)
    {
        using TemporaryFolder folder = new();
        if (Files.TryGetValue(field.Kind, out string? file))
        {
            File.WriteAllText(Path.Combine(folder.Path, file), $"id,{field.Name}\nalone,\"{example}\"\n");
        }
        else
        {
            Directory.CreateDirectory(Path.Combine(folder.Path, "machines"));
            File.WriteAllText(
                Path.Combine(folder.Path, "machines", "alone.json"),
                $$"""{ "{{Lists[field.Kind]}}": [{ "id": "alone", "origin": "measured", "{{field.Name}}": {{example}} }] }""");
        }

        return CatalogImport.ReadFolder(folder.Path).Findings;
    }
}
