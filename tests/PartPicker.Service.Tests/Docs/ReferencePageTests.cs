using PartPicker.Api.Docs;
using PartPicker.Parts;
using PartPicker.Selection;
using Xunit;

namespace PartPicker.Service.Tests.Docs;

/// <summary>The pages of reference say what the program says.</summary>
public sealed class ReferencePageTests
{
    public static TheoryData<string> Names => [.. ReferencePages.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_committed_page_is_what_the_program_writes(string name)
    {
        string written = ReferencePages.Find(name)!;
        string kept = KeptFile.Read(Path.Combine(Repository.Root, "docs", name + ".md"), written);

        Assert.True(kept == written, $"docs/{name}.md is not what 'docs {name}' prints. {KeptFile.HowTo}");
    }

    [Fact]
    public void The_committed_table_of_valid_spans_is_what_the_program_writes()
    {
        string path = Path.Combine(Repository.Root, "docs", "limits.md");
        string written = ValidityDocs.Into(File.ReadAllText(path));
        string kept = KeptFile.Read(path, written);

        Assert.True(kept == written, $"The spans in docs/limits.md are not those of the program. {KeptFile.HowTo}");
        Assert.Contains("| `spring-index` |", kept);
    }

    [Fact]
    public void Every_field_of_every_kind_has_a_row()
    {
        string[] sections = ReferencePages.Find("fields")!.Split("\n## ");

        foreach (ItemKind kind in Enum.GetValues<ItemKind>())
        {
            string heading = $"{char.ToLowerInvariant(kind.ToString()[0])}{kind.ToString()[1..]}\n";
            string section = sections.Single(s => s.StartsWith(heading, StringComparison.Ordinal));
            foreach (Field field in FieldRegistry.For(kind))
                Assert.Contains($"`{field.Name}`", section);
        }
    }

    [Fact]
    public void Ranges_stand_in_both_systems() =>
        Assert.Contains(
            "| `wireDiameter` | a length | `3 mm` | 0.5 mm to 20 mm | 0.0197 in to 0.7874 in | Diameter of the round wire. |",
            ReferencePages.Find("fields"));

    [Fact]
    public void Every_rule_that_refuses_a_part_of_the_samples_is_explained()
    {
        string page = FitDocs.Markdown();

        foreach (MachineProfile machine in SampleCatalog.Snapshot.Machines)
        {
            PickAnswer answer = PartSelection.Pick(SampleCatalog.Snapshot, new PickRequest
            {
                Machine = machine,
                Target = new ShiftTarget(machine.OwnBaseline!.EngagementRpm, new ShiftGoal.PeakPower()),
                Keep = new HashSet<Slot> { Slot.Helix, Slot.Flyweight },
                Fitted = machine.Machine.Fitted,
                Exclude = new HashSet<string> { "hx-40" },
                PointCount = 3,
            }).Answer!;
            IEnumerable<string> rules = answer.Refusals.Select(refusal => refusal.Rule).Concat(answer.UnknownByRule.Keys);
            Assert.All(rules.Distinct(), rule => Assert.Contains($"| `{rule}` | ", page));
        }
    }

    [Fact]
    public void Lengths_are_said_to_be_compared_as_they_are() =>
        Assert.Contains("Two lengths that differ by less than 0.05 mm (0.002 in) are the same.", FitDocs.Markdown());
}
