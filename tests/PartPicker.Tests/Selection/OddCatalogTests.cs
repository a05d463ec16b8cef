using PartPicker.Parts;
using PartPicker.Selection;
using Xunit;
using Xunit.Abstractions;

namespace PartPicker.Tests.Selection;

/// <summary>Whatever the import takes, selection answers or says why not.</summary>
public sealed class OddCatalogTests(ITestOutputHelper output)
{
    private static readonly int Catalogs =
        int.Parse(Environment.GetEnvironmentVariable("PART_PICKER_ODD_CATALOGS") ?? "250");

    [Fact]
    public void Nothing_that_the_import_accepts_makes_selection_throw_or_answer_no_number()
    {
        var counts = new SortedDictionary<string, int>();
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            var odd = new OddCatalog(seed);
            if (odd.Snapshot is not { } snapshot)
            {
                Count("refused by the import");
                continue;
            }

            try
            {
                Ask(snapshot, odd.Request!, Count);
                Ask(snapshot, odd.Request! with { Keep = new HashSet<Slot>() }, Count);
            }
            catch (Exception e)
            {
                throw new InvalidOperationException($"seed {seed}: {e.Message}", e);
            }
        }

        foreach ((string what, int count) in counts)
            output.WriteLine($"{count,6} {what}");

        // Catalogs that are all refused, or all plain, would prove nothing.
        Assert.True(counts["picked"] > Catalogs / 2);
        Assert.True(counts["part-unusable"] > Catalogs / 50);
        Assert.True(counts["refused by the import"] > Catalogs / 10);
        Assert.True(counts["machine-impossible"] > 0);

        void Count(string what) => counts[what] = counts.GetValueOrDefault(what) + 1;
    }

    private static void Ask(CatalogSnapshot snapshot, PickRequest request, Action<string> count)
    {
        Outcome<PickAnswer> picked = PartSelection.Pick(snapshot, request);
        count(picked.Answer is null ? picked.Problems[0].Code : "picked");
        if (picked.Answer is { } answer)
            AnswerChecks.Holds(request, answer);
        foreach (bool anchor in new[] { true, false })
        {
            Outcome<PredictionAnswer> predicted = SetPrediction.Predict(
                snapshot, new PredictionRequest { Machine = request.Machine, Anchor = anchor, Air = request.Air });
            Assert.Null(FiniteNumbers.FirstBad(predicted));
            Assert.NotEqual(predicted.Answer is null, predicted.Problems.Count == 0);
        }
    }
}
