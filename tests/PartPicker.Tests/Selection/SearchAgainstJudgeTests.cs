using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.TestKit;
using Xunit;
using Xunit.Abstractions;

namespace PartPicker.Tests.Selection;

/// <summary>The search and the judge that tries everything give the same sets in the same order.</summary>
public sealed class SearchAgainstJudgeTests(ITestOutputHelper output)
{
    // A longer run sets the number of catalogs; the seeds start at 1 either way.
    private static readonly int Catalogs =
        int.Parse(Environment.GetEnvironmentVariable("PART_PICKER_SEARCH_CATALOGS") ?? "400");

    [Fact]
    public void The_search_equals_trying_everything_on_random_catalogs()
    {
        int answered = 0;
        long skipped = 0;
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            var catalog = new RandomCatalog(seed);
            IReadOnlyList<PlainPick> expected = PlainSearch.Run(catalog.Snapshot, catalog.Request);
            Outcome<PickAnswer> outcome = PartSelection.Pick(catalog.Snapshot, catalog.Request);
            Assert.True(outcome.Answer is not null, $"seed {seed}: {string.Join("; ", outcome.Problems)}");

            string[] wanted = [.. expected.Select((p, i) => Line(i + 1, p.Parts, p.RoundedMiss, p.Changes, p.Price, p.WithinTolerance))];
            string[] got = [.. outcome.Answer.Picks.Select(p =>
                Line(p.Rank, p.Parts, (long)Math.Round(p.Miss * 1000), p.Changes.Count, p.PriceMinor, p.WithinTolerance))];
            Assert.True(wanted.SequenceEqual(got), $"seed {seed}\nexpected\n{string.Join('\n', wanted)}\ngot\n{string.Join('\n', got)}");
            answered += got.Length > 0 ? 1 : 0;
            skipped += outcome.Answer.Work.Combinations - outcome.Answer.Work.Predictions;
        }

        // The comparison means something only if catalogs have answers and the search skips sets.
        Assert.True(answered > Catalogs / 2, $"only {answered} of {Catalogs} catalogs had an answer");
        Assert.True(skipped > 0, "the search skipped nothing");
        output.WriteLine($"search equals plain on {Catalogs} catalogs");
    }

    [Fact]
    public void The_order_of_rows_in_the_catalog_makes_no_difference()
    {
        var catalog = new RandomCatalog(7);
        CatalogItem[] items =
        [
            .. catalog.Snapshot.All<Part>(),
            .. catalog.Request.Machine.Pieces,
        ];
        var shuffled = new CatalogSnapshot(
            "shuffled", new CatalogContents([.. items.Reverse()], [.. catalog.Snapshot.Outlets]));
        PickAnswer straight = PartSelection.Pick(catalog.Snapshot, catalog.Request).Answer!;
        PickAnswer reversed = PartSelection.Pick(
            shuffled, catalog.Request with { Machine = shuffled.FindMachine("machine")! }).Answer!;
        Assert.NotEmpty(straight.Picks);
        Assert.Equal(
            straight.Picks.Select(p => Line(p.Rank, p.Parts, 0, 0, p.PriceMinor, true)),
            reversed.Picks.Select(p => Line(p.Rank, p.Parts, 0, 0, p.PriceMinor, true)));
    }

    private static string Line(int rank, PartSet set, long miss, int changes, long? price, bool within)
    {
        string masses = string.Join(",", Enum.GetValues<StationName>().Select(s => set.StationMasses.GetValueOrDefault(s)));
        return $"{rank} miss {miss} changes {changes} price {price} {within} | "
            + $"{set.DriveSpring} {set.Flyweight} [{masses}] {set.DrivenSpring} {set.Hole} {set.Helix}";
    }
}
