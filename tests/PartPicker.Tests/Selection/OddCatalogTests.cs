using PartPicker.Parts;
using PartPicker.Selection;
using Xunit;
using Xunit.Abstractions;

namespace PartPicker.Tests.Selection;

/// <summary>Whatever the import takes, selection answers or says why not.</summary>
public sealed class OddCatalogTests(ITestOutputHelper output)
{
    private static readonly int Catalogs =
        int.Parse(Environment.GetEnvironmentVariable("PARTPICKER_ODD_CATALOGS") ?? "500");

    [Fact]
    public void Nothing_that_the_import_accepts_makes_selection_throw_or_answer_no_number()
    {
        var counts = new SortedDictionary<string, int>();
        var failures = new List<string>();
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            var odd = new OddCatalog(seed);
            if (odd.Snapshot is not { } snapshot)
            {
                Count($"import {odd.Findings[0].Code}");
                continue;
            }

            foreach (PickRequest request in new[] { odd.Request!, odd.Request! with { Keep = new HashSet<Slot>() } })
            {
                try
                {
                    Outcome<PickAnswer> picked = PartSelection.Pick(snapshot, request);
                    Count(picked.Answer is null ? $"pick {picked.Problems[0].Code}" : $"pick {picked.Answer.Picks.Count > 0}");
                    if (FiniteNumbers.FirstBad(picked) is { } bad)
                        failures.Add($"seed {seed}: pick {bad}");
                    if (picked.Answer is { Picks.Count: 0, InTheWay.Count: 0 })
                        failures.Add($"seed {seed}: no reason");
                    foreach (bool anchor in new[] { true, false })
                    {
                        Outcome<PredictionAnswer> predicted = SetPrediction.Predict(
                            snapshot, new PredictionRequest { Machine = request.Machine, Anchor = anchor, Air = request.Air });
                        Count(predicted.Answer is null ? $"predict {predicted.Problems[0].Code}" : "predict");
                        if (FiniteNumbers.FirstBad(predicted) is { } worse)
                            failures.Add($"seed {seed}: predict {worse}");
                    }
                }
                catch (Exception e)
                {
                    failures.Add($"seed {seed}: {e.GetType().Name} {e.Message}\n{string.Join("\n", e.StackTrace!.Split("\n").Take(6))}");
                }
            }
        }

        foreach ((string what, int count) in counts)
            output.WriteLine($"{count,6} {what}");
        Assert.True(failures.Count == 0, $"{failures.Count}\n" + string.Join("\n", failures.Take(12)));

        void Count(string what) => counts[what] = counts.GetValueOrDefault(what) + 1;
    }
}
