using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.TestKit;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>The search and the judge that tries everything give the same sets in the same order.</summary>
public sealed class SearchAgainstJudgeTests
{
    // A longer run sets the number of catalogs; the seeds start at 1 either way.
    private static readonly int Catalogs =
        int.Parse(Environment.GetEnvironmentVariable("PART_PICKER_SEARCH_CATALOGS") ?? "5000");

    // Trying everything takes seconds on each of these.
    private static readonly int LargeCatalogs =
        int.Parse(Environment.GetEnvironmentVariable("PART_PICKER_LARGE_CATALOGS") ?? "2");

    // Whole answers take bands for each pick: they are compared on fewer catalogs.
    private const int PerAnswer = 20;

    [Fact]
    public void The_search_equals_trying_everything_on_random_catalogs()
    {
        int answered = 0;
        int withinTolerance = 0;
        long skipped = 0;
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            var catalog = new RandomCatalog(seed);
            PlainAnswer expected = PlainSearch.Run(catalog.Snapshot, catalog.Request);
            var problems = new List<RequestProblem>();
            Ranking? ranking = PartSelection.Rank(catalog.Snapshot, catalog.Request, problems);
            Assert.True(ranking is not null, $"seed {seed}: {string.Join("; ", problems)}");
            Highlights highlights = ranking.Search.Highlights;
            Assert.True(ranking.Search.Proven);
            Same(seed, "picks", expected.Picks, ranking.Sets);
            Same(seed, "cheapest", One(expected.Cheapest), One(highlights.Cheapest));
            Same(seed, "fewest changes", One(expected.FewestChanges), One(highlights.FewestChanges));
            Same(seed, "undominated", expected.Undominated, highlights.Undominated);
            answered += ranking.Sets.Count > 0 ? 1 : 0;
            withinTolerance += highlights.Undominated.Count > 0 ? 1 : 0;
            skipped += ranking.Prepared.Index.Pools.Combinations - ranking.Search.Predictions;
        }

        // The comparison means something only if catalogs have answers and the search skips sets.
        Assert.True(answered > Catalogs / 2, $"only {answered} of {Catalogs} catalogs had an answer");
        Assert.True(withinTolerance > Catalogs / 10, $"only {withinTolerance} of {Catalogs} catalogs had a set within tolerance");
        Assert.True(skipped > 0, "the search skipped nothing");
        Figures.Keep("search", $"search equals plain on {Catalogs} catalogs");
    }

    [Fact]
    public void The_search_equals_trying_everything_on_catalogs_of_a_shop()
    {
        for (int seed = 1; seed <= LargeCatalogs; seed++)
        {
            // A long run makes most of them 100,000 sets large.
            var size = seed <= 2 ? new LargeCatalogSize(1.5e4, 8, 2, 2, 4, 8, 7) : new LargeCatalogSize(1e5, 16, 4, 2, 6, 8, 8);
            var catalog = new LargeCatalog(seed, size);
            PickRequest request = Varied(catalog.Request(seed), catalog.Snapshot, new Random(seed));
            PlainAnswer expected = PlainSearch.Run(catalog.Snapshot, request);
            Ranking ranking = PartSelection.Rank(catalog.Snapshot, request, [])!;
            Assert.True(ranking.Search.Proven);
            Assert.NotEmpty(ranking.Sets);
            Same(seed, "picks", expected.Picks, ranking.Sets);
            Same(seed, "cheapest", One(expected.Cheapest), One(ranking.Search.Highlights.Cheapest));
            Same(seed, "fewest changes", One(expected.FewestChanges), One(ranking.Search.Highlights.FewestChanges));
            Same(seed, "undominated", expected.Undominated, ranking.Search.Highlights.Undominated);
        }
    }

    private static PickRequest Varied(PickRequest request, CatalogSnapshot catalog, Random random) => request with
    {
        Outlet = random.Next(2) == 0 ? catalog.Outlets.First() : null,
        PointCount = random.Next(3, 16),
        Count = random.Next(1, 30),
        Group = random.Next(4) == 0,
        RankBy = random.Next(3) == 0 ? RankBy.LeastWork : RankBy.Miss,
        Tolerances = new Tolerances(random.Next(20, 300), random.Next(20, 300)),
        SlipMargin = random.Next(2) == 0 ? 1.0 : null,
    };

    [Fact]
    public void Whole_answers_say_what_trying_everything_says()
    {
        for (int seed = 1; seed <= Catalogs / PerAnswer; seed++)
        {
            var catalog = new RandomCatalog(seed);
            PlainAnswer expected = PlainSearch.Run(catalog.Snapshot, catalog.Request);
            PickAnswer answer = PartSelection.Pick(catalog.Snapshot, catalog.Request).Answer!;
            Same(seed, "picks", expected.Picks, answer.Picks);
            Same(seed, "cheapest", One(expected.Cheapest), One(answer.Cheapest));
            Same(seed, "fewest changes", One(expected.FewestChanges), One(answer.FewestChanges));
            Same(seed, "undominated", [.. expected.Undominated.Take(PickAnswer.MaxUndominated)], answer.Undominated);
            Assert.Equal(expected.Undominated.Count, answer.UndominatedCount);
        }
    }

    [Fact]
    public void With_a_friction_told_by_the_run_the_search_equals_trying_everything()
    {
        int answered = 0;
        for (int seed = 1; seed <= 40; seed++)
        {
            var catalog = new RandomCatalog(seed);
            Baseline run = catalog.Request.Machine.OwnBaseline!;
            PickRequest request = catalog.Request with { Baseline = run with { SolveFriction = true } };
            var problems = new List<RequestProblem>();
            if (PartSelection.Rank(catalog.Snapshot, request, problems) is not { } ranking)
            {
                Assert.All(problems, p => Assert.Equal(RequestProblemCodes.BaselineUnusable, p.Code));
                continue;
            }

            Same(seed, "picks", PlainSearch.Run(catalog.Snapshot, request).Picks, ranking.Sets);
            answered += ranking.Sets.Count > 0 ? 1 : 0;
        }

        Assert.True(answered > 5, $"only {answered} catalogs had an answer");
    }

    [Fact]
    public void The_best_of_each_air_and_of_all_is_what_trying_everything_gives()
    {
        AirState[] airs = [new(0, 253), new(900, null), new(2600, 298)];
        int together = 0;
        int apart = 0;
        for (int seed = 1; seed <= Catalogs / PerAnswer; seed++)
        {
            var catalog = new RandomCatalog(seed);
            PickRequest request = catalog.Request with { Conditions = airs, Count = 1 };
            if (PartSelection.Pick(catalog.Snapshot, request) is not { Answer.Season: { } season })
                continue;
            (IReadOnlyList<PlainPick?> best, PlainPick? forAll) = PlainSeason.Run(catalog.Snapshot, catalog.Request, airs);
            for (int i = 0; i < airs.Length; i++)
            {
                Same(seed, $"best of air {i}", One(best[i]), One(season.Conditions[i].Best));
                Assert.True(season.Conditions[i].Proven);
                Assert.Equal(PlainSeason.Key(season.ForAll?.Parts), PlainSeason.Key(season.Conditions[i].ForAll?.Parts));
            }

            Assert.Equal(PlainSeason.Key(forAll?.Parts), PlainSeason.Key(season.ForAll?.Parts));
            if (season.ForAll is not { } all)
                continue;
            Assert.Equal(forAll!.RoundedMiss / 1000.0, all.Miss, 12);
            Assert.Equal(forAll.WithinTolerance, all.WithinTolerance);
            Assert.Equal(all.Miss, season.Conditions.Max(c => c.ForAll!.Miss), 12);
            together++;
            apart += season.Conditions.Any(c => PlainSeason.Key(c.Best!.Parts) != PlainSeason.Key(all.Parts)) ? 1 : 0;
        }

        Assert.True(together > Catalogs / 50, $"only {together} catalogs had a set for all");
        Assert.True(apart > together / 10, $"only {apart} of {together} sets for all are not the best of each air");
    }

    [Fact]
    public void Changes_against_what_is_fitted_rank_as_trying_everything_does()
    {
        int answered = 0;
        for (int seed = 1; seed <= Catalogs / 10; seed++)
        {
            var catalog = new RandomCatalog(seed);
            var random = new Random(seed);
            bool anchor = random.Next(2) == 0;
            PickRequest request = catalog.Request with
            {
                Anchor = anchor,
                LaunchRpm = anchor ? catalog.Request.LaunchRpm : null,
                Target = new ShiftTarget(null, new ShiftGoal.Change(random.Next(-300, 301)))
                {
                    EngagementChangeRpm = catalog.Request.Target.EngagementRpm is null ? null : random.Next(-300, 301),
                },
            };
            var problems = new List<RequestProblem>();
            if (PartSelection.Rank(catalog.Snapshot, request, problems) is not { } ranking)
            {
                Assert.All(problems, p => Assert.Equal("target-unclear", p.Code));
                continue;
            }

            Same(seed, "picks", PlainSearch.Run(catalog.Snapshot, request).Picks, ranking.Sets);
            Assert.Equal(anchor, ranking.Condition.Predictor.Anchoring is not null);
            answered += ranking.Sets.Count > 0 ? 1 : 0;
        }

        Assert.True(answered > Catalogs / 20, $"only {answered} catalogs had an answer");
    }

    [Fact]
    public void A_search_that_is_ended_early_has_a_true_bound_and_a_final_head()
    {
        int ended = 0;
        int final = 0;
        for (int seed = 1; seed <= Catalogs / PerAnswer; seed++)
        {
            var catalog = new RandomCatalog(seed);
            PickRequest whole = catalog.Request with { RankBy = RankBy.Miss, Group = false, Count = PickRequest.MaxCount };
            long[] misses = [.. PlainSearch.Run(catalog.Snapshot, whole).Picks.Select(p => p.RoundedMiss)];
            foreach (int limit in new[] { 1, 5, 20, 60, 200, 1000 })
            {
                Ranking ranking = PartSelection.Rank(catalog.Snapshot, whole with { WorkLimit = limit }, [])!;
                if (limit == 1 && misses.Length > 0)
                    Assert.False(ranking.Search.Proven);
                if (ranking.Search.Proven)
                    continue;
                ended++;
                double bound = ranking.Search.LeastMissLeft!.Value;
                long[] listed = [.. ranking.Sets.Select(s => s.Key.RoundedMiss)];

                // What misses by less than the bound is listed, and stands where trying everything puts it.
                long[] head = [.. misses.Where(m => m < 1000 * bound - 1)];
                Assert.Equal(head, listed.Take(head.Length));
                final += head.Length;
            }
        }

        Assert.True(ended > Catalogs / 20, $"only {ended} searches were ended early");
        Assert.True(final > 0, "no search ended early listed anything final");
    }

    private static void Same(int seed, string what, IReadOnlyList<PlainPick> expected, IReadOnlyList<Pick> actual)
    {
        string[] wanted = [.. expected.Select(p => Line(p.Parts, p.RoundedMiss, p.Changes, p.Price, p.WithinTolerance))];
        string[] got = [.. actual.Select(p =>
            Line(p.Parts, (long)Math.Round(p.Miss * 1000), p.Changes.Count, p.PriceMinor, p.WithinTolerance))];
        Same(seed, what, wanted, got);
    }

    private static void Same(int seed, string what, IReadOnlyList<PlainPick> expected, IReadOnlyList<RankedSet> actual)
    {
        string[] wanted = [.. expected.Select(p => Line(p.Parts, p.RoundedMiss, p.Changes, p.Price, p.WithinTolerance))];
        string[] got =
        [
            .. actual.Select(s => Line(
                s.Set.Ids, s.Key.RoundedMiss, s.Key.Changes, s.Key.PriceMinor, s.Key.WithinTolerance)),
        ];
        Same(seed, what, wanted, got);
    }

    private static void Same(int seed, string what, string[] wanted, string[] got) => Assert.True(
        wanted.SequenceEqual(got),
        $"seed {seed}, {what}\nexpected\n{string.Join('\n', wanted)}\ngot\n{string.Join('\n', got)}");

    private static T[] One<T>(T? item) where T : class => item is null ? [] : [item];

    [Fact]
    public void The_order_of_rows_in_the_catalog_makes_no_difference()
    {
        var catalog = new RandomCatalog(7);
        CatalogItem[] items =
        [
            .. catalog.Snapshot.All<Part>(),
            .. catalog.Request.Machine.Pieces.Where(p => p is not Part),
        ];
        var shuffled = new CatalogSnapshot(
            "shuffled", new CatalogContents([.. items.Reverse()], [.. catalog.Snapshot.Outlets]));
        PickAnswer straight = PartSelection.Pick(catalog.Snapshot, catalog.Request).Answer!;
        PickAnswer reversed = PartSelection.Pick(
            shuffled, catalog.Request with { Machine = shuffled.FindMachine("machine")! }).Answer!;
        Assert.NotEmpty(straight.Picks);
        Assert.Equal(
            straight.Picks.Select(p => Line(p.Parts, 0, 0, p.PriceMinor, true)),
            reversed.Picks.Select(p => Line(p.Parts, 0, 0, p.PriceMinor, true)));
    }

    private static string Line(PartSet set, long miss, int changes, long? price, bool within)
    {
        string masses = string.Join(",", Enum.GetValues<StationName>().Select(s => set.StationMasses.GetValueOrDefault(s)));
        return $"miss {miss} changes {changes} price {price} {within} | "
            + $"{set.DriveSpring} {set.Shims} {set.Flyweight} {set.AdjusterStep} [{masses}] {set.DrivenSpring} {set.Hole} {set.Helix}";
    }
}
