using PartPicker.Catalog;
using PartPicker.Mechanics;
using PartPicker.Parts;
using PartPicker.SampleCatalog;
using UnitsNet;
using Xunit;

namespace PartPicker.Tests.Catalog;

/// <summary>The sample catalog is what its program writes, can be grown, and is true to itself.</summary>
public sealed class SampleCatalogTests
{
    // Not the drive springs: how many of them have an old number beside them is drawn as well.
    private static readonly string[] Drawn = ["driven-springs.csv", "flyweights.csv", "helices.csv"];

    private const double MakersScatter = 0.05;

    [Fact]
    public void The_committed_files_are_byte_for_byte_what_the_program_writes()
    {
        using var written = new WrittenSamples(SampleOptions.Standard.Seed, SampleOptions.Standard.Scale);

        Assert.Equal(CsvFiles(SampleFolder.Path), CsvFiles(written.Folder));
        foreach (string name in CsvFiles(written.Folder))
        {
            byte[] committed = File.ReadAllBytes(Path.Combine(SampleFolder.Path, name));
            byte[] made = File.ReadAllBytes(Path.Combine(written.Folder, name));
            Assert.True(
                committed.AsSpan().SequenceEqual(made),
                $"{name} is not what dotnet run --project tests/PartPicker.SampleCatalog writes: run that again.");
        }
    }

    [Fact]
    public void Another_seed_draws_other_parts_of_the_same_number()
    {
        IReadOnlyList<CsvFile> one = SampleFiles.Make(seed: 1, scale: 1);
        IReadOnlyList<CsvFile> other = SampleFiles.Make(seed: 2, scale: 1);

        foreach ((CsvFile a, CsvFile b) in one.Zip(other).Where(p => Drawn.Contains(p.First.Name)))
        {
            Assert.Equal(a.Ids, b.Ids);
            Assert.NotEqual(a.Text, b.Text);
        }
    }

    [Theory]
    [InlineData(2, 1)]
    [InlineData(3, 10)]
    public void A_catalog_of_any_seed_and_scale_is_read_without_a_finding(int seed, int scale)
    {
        using var written = new WrittenSamples(seed, scale);
        CopyMachines(written.Folder);

        ImportResult result = CatalogImport.ReadFolder(written.Folder);

        Assert.Empty(result.Findings);
        int committed = SampleFolder.Snapshot.All<DriveSpring>().Count(s => s.SupersededBy is null);
        int read = result.Contents!.Items.OfType<DriveSpring>().Count(s => s.SupersededBy is null);
        Assert.InRange(read, committed * 0.75 * scale, committed * scale);
    }

    [Theory]
    [InlineData(ItemKind.DriveSpring, 150)]
    [InlineData(ItemKind.Flyweight, 40)]
    [InlineData(ItemKind.DrivenSpring, 60)]
    [InlineData(ItemKind.Helix, 30)]
    [InlineData(ItemKind.Belt, 10)]
    [InlineData(ItemKind.Kit, 8)]
    [InlineData(ItemKind.Shim, 5)]
    [InlineData(ItemKind.Machine, 5)]
    public void There_are_enough_of_each_kind_to_show_the_service_at_work(ItemKind kind, int least) =>
        Assert.InRange(SampleFolder.Import.Contents!.Items.Count(i => i.Kind == kind), least, int.MaxValue);

    [Fact]
    public void Drawing_and_rating_of_a_drive_spring_agree_within_a_few_per_cent()
    {
        (DriveSpring Spring, double Stated)[] both =
        [
            .. from spring in SampleFolder.Snapshot.All<DriveSpring>()
               where spring.KnownByGeometry && StatedRate(spring) is not null
               select (spring, StatedRate(spring)!.Value),
        ];

        Assert.InRange(both.Length, 30, int.MaxValue);
        foreach ((DriveSpring spring, double stated) in both)
        {
            Length wire = spring.WireDiameter!.Value;
            Length mean = Length.FromMeters(spring.OutsideDiameter!.Value.Meters - wire.Meters);
            double drawn = HelicalSpring.Rate(
                WireMaterial.Find(spring.Material!)!.ShearModulus(wire), wire, mean, spring.ActiveCoils!.Value).NewtonsPerMeter;
            Assert.True(
                Math.Abs(stated / drawn - 1) < MakersScatter, $"{spring.Id}: rated {stated:0}, drawn {drawn:0} N/m");
        }
    }

    private static double? StatedRate(DriveSpring spring) => spring switch
    {
        { KnownByTwoLoads: true } => (spring.SecondLoad!.Value.Newtons - spring.FirstLoad!.Value.Newtons)
            / (spring.FirstLength!.Value.Meters - spring.SecondLength!.Value.Meters),
        _ => spring.Rate?.NewtonsPerMeter,
    };

    private static string[] CsvFiles(string folder) =>
    [
        .. Directory.GetFiles(folder, "*.csv", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(folder, f)).Order(StringComparer.Ordinal),
    ];

    private static void CopyMachines(string folder)
    {
        Directory.CreateDirectory(Path.Combine(folder, "machines"));
        foreach (string file in Directory.GetFiles(Path.Combine(SampleFolder.Path, "machines")))
            File.Copy(file, Path.Combine(folder, "machines", Path.GetFileName(file)));
    }

    /// <summary>What the program writes, in a folder that goes away.</summary>
    private sealed class WrittenSamples : IDisposable
    {
        public WrittenSamples(int seed, int scale)
        {
            foreach (CsvFile file in SampleFiles.Make(seed, scale))
                file.WriteBelow(Folder);
        }

        public string Folder { get; } = Directory.CreateTempSubdirectory("part-picker-samples-").FullName;

        public void Dispose() => Directory.Delete(Folder, recursive: true);
    }
}
