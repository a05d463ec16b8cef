using System.Text.Json.Nodes;
using Microsoft.Extensions.DependencyInjection;
using PartPicker.Api.StartUp;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.TestKit;
using Xunit;

namespace PartPicker.Service.Tests.Parts;

/// <summary>
/// What is listed as fitting a machine is what a prediction with it finds no fault with: two ways to the same rules.
/// </summary>
public sealed class PartFitTests
{
    private const int Catalogs = 40;

    // These depend on the hole and the helix, which a list of springs does not know.
    private static readonly string[] RulesOfAHole =
    [
        "driven-spring-twist-range", "driven-spring-wound", "driven-spring-wound-diameter", "driven-spring-twist-limit",
        "driven-spring-solid-length", "driven-spring-combined-stress",
    ];

    [Fact]
    public async Task A_part_is_listed_for_a_machine_where_a_prediction_has_nothing_against_it()
    {
        using Service service = new();
        await service.GetAsync("/v1/machines");
        int[] seen = [0, 0];
        for (int seed = 0; seed < Catalogs; seed++)
        {
            CatalogSnapshot catalog = new RandomCatalog(seed, maxPerPool: 8).Snapshot;
            service.Services.GetRequiredService<CurrentCatalog>().Snapshot = catalog;
            MachineProfile machine = catalog.FindMachine("machine")!;
            HashSet<string> listed = await Listed(service);
            foreach (Part part in catalog.All<Part>())
            {
                bool? fits = part is Kit kit ? Fits(kit, listed) : Fits(part, machine, catalog);
                if (fits is not { } expected)
                    continue;
                seen[expected ? 1 : 0]++;
                Assert.True(expected == listed.Contains(part.Id), $"catalog {seed}: {part.Id} fits: {expected}");
            }
        }

        Assert.All(seen, count => Assert.True(count > Catalogs));
    }

    private static async Task<HashSet<string>> Listed(Service service)
    {
        Answer answer = await service.GetAsync("/v1/parts?fitsMachine=machine&limit=200");
        Assert.Null(answer.Json["nextCursor"]);
        return [.. answer.Json["items"]!.AsArray().Select((JsonNode? item) => (string)item!["id"]!)];
    }

    /// <summary>Null where one prediction cannot tell.</summary>
    private static bool? Fits(Part part, MachineProfile machine, CatalogSnapshot catalog)
    {
        if (part.SupersededBy is not null)
            return false;
        PartSet fitted = machine.Machine.Fitted!;
        return part switch
        {
            Belt => part.Id == machine.Belt.Id,
            Shim shim => machine.DriveClutch.ShimLimit > 0
                && shim.OutsideDiameter <= machine.DriveClutch.CupBore
                && shim.InsideDiameter >= machine.DriveClutch.PostDiameter,
            DriveSpring => Keeps(fitted with { DriveSpring = part.Id }),
            Helix => Keeps(fitted with { Helix = part.Id }),
            DrivenSpring { TorqueTable: not null } => null,
            DrivenSpring => Keeps(fitted with { DrivenSpring = part.Id }),
            Flyweight body => Keeps(fitted with
            {
                Flyweight = body.Id,
                AdjusterStep = body.AdjusterCurves?[0].Name,
                StationMasses = body.Stations().ToDictionary(station => station.Name, station => station.Masses[0]),
            }),
            _ => throw new ArgumentOutOfRangeException(nameof(part), part.Kind, "No such part is drawn."),
        };

        bool Keeps(PartSet set)
        {
            PredictionRequest request = new() { Machine = machine, Parts = set, Anchor = false, PointCount = 3 };
            return SetPrediction.Predict(catalog, request).Answer is { } answer && !answer.Cautions.Any(IsMisfit);
        }

        bool IsMisfit(Caution caution) =>
            caution.Sentence.Contains($" {part.Id} does not fit this machine by rule ", StringComparison.Ordinal)
            && !RulesOfAHole.Any(rule => caution.Sentence.Contains($" {rule}:", StringComparison.Ordinal));
    }

    private static bool Fits(Kit kit, HashSet<string> listed) =>
        kit.SupersededBy is null && kit.Contents.All(line => listed.Contains(line.PartId));
}
