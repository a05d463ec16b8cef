using PartPicker.Mechanics;
using PartPicker.Parts;
using PartPicker.Selection;
using PartPicker.Tests.Catalog;
using Xunit;

namespace PartPicker.Tests.Selection;

/// <summary>A number taken apart: its values are the prediction's own, and each follows from its parts.</summary>
public sealed class ExplanationTests
{
    private const int PointCount = 4;

    public static TheoryData<string> Machines => [.. SampleFolder.Snapshot.Machines.Select(m => m.Machine.Id)];

    [Theory]
    [MemberData(nameof(Machines))]
    public void The_tree_holds_the_numbers_of_the_prediction(string machine)
    {
        PredictionAnswer answer = Predict(machine);
        Prediction prediction = answer.Prediction;
        Assert.Equal(prediction.EngagementRpm, Named(answer, ExplainedNames.Engagement)?.Value);
        Assert.Equal(prediction.ShiftOutRpm, Named(answer, ExplainedNames.ShiftOut)?.Value);
        for (int j = 0; j < PointCount; j++)
        {
            ExplainedValue? tree = Named(answer, ExplainedNames.Upshift(j + 1));
            Balance? balance = prediction.Curve[j].Upshift;
            Assert.Equal(balance?.Rpm, tree?.Value);
            if (tree is null || balance is null)
                continue;
            Assert.Equal(balance.FlyweightThrust.Newtons, Part(tree, "flyweightThrust").Value);
            Assert.Equal(balance.SpringForce.Newtons, Part(tree, "springForce").Value);
            Near(balance.DriveThrust.Newtons, Part(tree, "driveThrust").Value * Part(tree, "anchoring.thrustFactor").Value);
        }
    }

    [Theory]
    [MemberData(nameof(Machines))]
    public void Every_value_follows_from_its_parts(string machine)
    {
        ExplainedValue[] all = [.. Predict(machine).Explanations.SelectMany(Nodes)];
        Assert.NotEmpty(all);
        foreach (ExplainedValue node in all)
            Check(node);
    }

    [Fact]
    public void A_twist_that_stiffens_the_driven_spring_is_a_part_of_its_force()
    {
        var bench = new Bench();
        bench = new Bench
        {
            DrivenClutch = bench.DrivenClutch with { TwistStiffening = YesNo.Yes },
            DrivenSpring = bench.DrivenSpring with { ActiveCoils = 5 },
        };
        ExplainedValue tree = bench.Predict(r => r with { Explain = [ExplainedNames.ShiftOut] }).Answer!.Explanations[0];
        Assert.Contains(Nodes(tree), node => node.Name == "twistStiffening" && node.Value > 1);
        Assert.All(Nodes(tree), Check);
    }

    [Fact]
    public void Every_relation_of_the_list_has_a_name_of_its_own_and_every_one_that_is_cited_stands_in_it()
    {
        Assert.Equal(Relations.All.Count, Relations.All.Select(r => r.Name).Distinct().Count());
        var cited = SampleFolder.Snapshot.Machines.SelectMany(m => Predict(m.Machine.Id).Explanations).SelectMany(Nodes)
            .Select(node => node.Relation).OfType<string>().ToHashSet();
        Assert.Subset(Relations.All.Select(r => r.Name).ToHashSet(), cited);
        Assert.Contains(Relations.Balance.Name, cited);
        Assert.Contains(Relations.Engagement.Name, cited);
    }

    // The formulas are written here anew, so that a part that is left out or mixed up is found.
    private static void Check(ExplainedValue node)
    {
        switch (node.Relation)
        {
            case null:
                Assert.Empty(node.Parts);
                break;
            case "engagement":
                Near(
                    Math.Pow(node.Value * Math.PI / 30, 2),
                    V("springForce") / ((1 - V("driveClutch.flyweightFrictionShare"))
                        * V("anchoring.flyweightFactor") * V("thrustPerSpeedSquared")));
                break;
            case "balance":
                // The rpm is found within its bracket, the forces only as near as that.
                Assert.Equal(0, Net() / V("driveThrust"), 1e-6);
                break;
            case "shifts-at-engagement":
                Assert.True(Net() >= -1e-6 * V("driveThrust"));
                break;
            case "flyweight-thrust":
                Near(
                    node.Value,
                    V("anchoring.flyweightFactor") * Math.Pow(V("engineSpeed") * Math.PI / 30, 2) * V("thrustPerSpeedSquared"));
                break;
            case "thrust-per-speed-squared":
                Near(
                    node.Value,
                    V("driveClutch.armCount") * node.Parts.Where(p => p.Name.EndsWith(".mass", StringComparison.Ordinal))
                        .Sum(m => m.Value * V(m.Name.Replace(".mass", ".radius")) * V(m.Name.Replace(".mass", ".radiusSlope"))));
                break;
            case "driven-clamp":
                Near(
                    node.Value,
                    V("drivenSpringForce")
                    + (V("twistTorque") + V("drivenClutch.camTorqueShare") * V("belt.efficiency") * V("ratio") * V("engineTorque"))
                    / (V("drivenClutch.camRadius") * Math.Tan(V("helixAngle") - V("drivenClutch.camFrictionDeg"))));
                break;
            case "effective-tension":
                Near(node.Value, V("engineTorque") / V("driveRadius"));
                break;
            case "groove-friction":
                Near(node.Value, V("belt.friction") / Math.Sin(V("driveClutch.sheaveHalfAngleDeg")));
                break;
            case "belt-tension":
                Near(
                    2 * Math.Tan(V("driveClutch.sheaveHalfAngleDeg")) * V("drivenClamp"),
                    V("slackTensionNet") * (V("drivenWrap") - V("activeArc")) + V("effectiveTension") / V("drivenGrooveFriction"));
                Near(node.Value, V("slackTensionNet") + V("effectiveTension"));
                break;
            case "slipping-tension":
                Near(V("slackTensionNet"), V("effectiveTension") / (Math.Exp(V("drivenGrooveFriction") * V("drivenWrap")) - 1));
                Near(node.Value, V("slackTensionNet") + V("effectiveTension"));
                break;
            case "active-arc":
                Near(node.Value, Math.Log(V("tightTensionNet") / V("slackTensionNet")) / V("driveGrooveFriction"));
                break;
            case "drive-thrust":
                Near(
                    node.Value,
                    (V("tightTensionNet") * Math.Max(0, V("driveWrap") - V("driveActiveArc"))
                        + V("effectiveTension") / V("driveGrooveFriction"))
                    / (2 * Math.Tan(V("driveClutch.sheaveHalfAngleDeg"))));
                break;
            case "locked-thrust":
                Near(node.Value, V("tightTensionNet") * V("driveWrap") / (2 * Math.Tan(V("driveClutch.sheaveHalfAngleDeg"))));
                break;
            case "engine-torque":
                Near(node.Value, V("torqueFactor") * V("engineTorqueAtSeaLevel"));
                break;
            default:
                // Read off a curve of a part: its inputs say where.
                Assert.Contains(node.Relation, new[] { "spring-force", "driven-spring-force", "twist-torque" });
                Assert.NotEmpty(node.Parts);
                break;
        }

        double V(string name) => Part(node, name).Value;

        double Net() => (1 - V("driveClutch.flyweightFrictionShare")) * V("flyweightThrust") - V("springForce")
            - V("anchoring.thrustFactor") * V("driveThrust");
    }

    private static PredictionAnswer Predict(string machine)
    {
        Outcome<PredictionAnswer> outcome = SetPrediction.Predict(SampleFolder.Snapshot, new PredictionRequest
        {
            Machine = SampleFolder.Snapshot.FindMachine(machine)!,
            PointCount = PointCount,
            Explain = [.. ExplainedNames.Of(PointCount)],
        });
        return outcome.Answer ?? throw new InvalidOperationException(string.Join("; ", outcome.Problems));
    }

    private static ExplainedValue? Named(PredictionAnswer answer, string name) =>
        answer.Explanations.SingleOrDefault(e => e.Name == name);

    private static ExplainedValue Part(ExplainedValue node, string name) => node.Parts.Single(p => p.Name == name);

    private static IEnumerable<ExplainedValue> Nodes(ExplainedValue node) => node.Parts.SelectMany(Nodes).Prepend(node);

    private static void Near(double expected, double actual) =>
        Assert.Equal(expected, actual, 1e-9 * Math.Max(1, Math.Abs(expected)));
}
