using PartPicker.Mechanics;
using PartPicker.Selection;
using PartPicker.TestKit;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>What a search keeps of the parts, so that it need not be made again for every set, gives the model's own digits.</summary>
public sealed class JudgedSetTests
{
    private const int Catalogs = 150;

    [Fact]
    public void Both_sides_of_a_judged_set_are_the_predictors_to_the_last_bit()
    {
        int pairs = 0;
        int sides = 0;
        for (int seed = 1; seed <= Catalogs; seed++)
        {
            (Predictor predictor, SearchIndex index) = Prepared(seed);
            CandidatePools pools = index.Pools;
            if (pools.Empty)
                continue;
            int points = predictor.Model.Positions.Count;
            var kept = new DriveSide(default, new double[points], new double[points]);
            for (int s = 0; s < pools.DriveSprings.Count; s++)
            {
                for (int f = 0; f < pools.Flyweights.Count; f += 1 + pools.Flyweights.Count / 10)
                {
                    DriveSide plain = predictor.Drive(pools.DriveSprings[s], pools.Flyweights[f]);
                    index.Fill(kept, predictor, s, f);
                    Assert.Equal(plain.Engagement, index.EngagementOf(predictor, s, f));
                    Assert.Equal(plain.ThrustPerSpeedSquared, kept.ThrustPerSpeedSquared);
                    Assert.Equal(plain.SpringForce, kept.SpringForce);
                    pairs++;
                }
            }

            var lines = new ClampLine[points];
            for (int d = 0; d < pools.Driven.Count; d++)
            {
                index.Clamps.Lines(d, lines);
                Assert.Equal(predictor.Driven(pools.Driven[d]).Upshift, lines);
                sides++;
            }
        }

        Assert.True(pairs > 1000 && sides > 1000, $"only {pairs} pairs and {sides} driven sides were compared");
    }

    private static (Predictor Predictor, SearchIndex Index) Prepared(int seed)
    {
        var catalog = new RandomCatalog(seed, maxPerPool: 4);
        PickRequest request = catalog.Request;
        MachineModel machine = MachineModel.Create(request.Machine, [])!;
        Predictor predictor = PredictorBuilder.Build(
            catalog.Snapshot, machine, request.Machine.OwnBaseline, "", request.Air, request.AirLaw, request.PointCount, [])!;
        SetUp fitted = new SetUpReader(catalog.Snapshot, request.Machine, [], []).Find(request.Machine.Machine.Fitted!, "")!;
        CandidatePools pools = new PoolBuilder(catalog.Snapshot, machine, fitted, request, new FitReport()).Build([], default)!;
        return (predictor, SearchIndex.Build(pools, fitted, machine, request.PointCount, default));
    }
}
