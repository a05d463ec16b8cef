using PartPicker.Mechanics;
using UnitsNet;
using static PartPicker.Selection.TreeNodes;

namespace PartPicker.Selection;

/// <summary>Takes the thrust of the flyweights apart.</summary>
internal sealed class FlyweightTree(Scene scene, TreeNodes nodes)
{
    public ExplainedValue FrictionShare() =>
        Field("driveClutch.flyweightFrictionShare", scene.Drivetrain.FlyweightFrictionShare);

    /// <summary>a_f: it has a tree of its own where a run tells it, and is 1 elsewhere.</summary>
    public ExplainedValue Factor()
    {
        double factor = scene.Model.Anchor.Flyweight;
        return scene.Run is { EngagementRpm: not null }
            ? Elsewhere(ExplainedNames.FlyweightFactor, factor, "", Relations.FlyweightFactor)
            : nodes.Input("flyweightFactor", factor);
    }

    public ExplainedValue Thrust(double rpm, double travel, Func<ExplainedValue> travelNode)
    {
        double speed = Rotation.ToRadiansPerSecond(rpm);
        return nodes.Of(
            "flyweightThrust",
            scene.Model.Anchor.Flyweight * scene.Flyweights.ThrustPerSpeedSquared(travel) * speed * speed,
            Force.Info, Relations.FlyweightThrust,
            () => [Factor(), nodes.Input("engineSpeed", rpm, "rpm"), ThrustPerSpeedSquared(travel, travelNode)]);
    }

    public ExplainedValue ThrustPerSpeedSquared(double travel, Func<ExplainedValue> travelNode) => nodes.Of(
        "thrustPerSpeedSquared", scene.Flyweights.ThrustPerSpeedSquared(travel), "kg·m", Relations.ThrustPerSpeedSquared,
        () =>
        [
            Field("driveClutch.armCount", scene.Flyweights.ArmCount),
            .. new[] { "body" }.Concat(scene.Set.Flyweight.Body.Stations().Select(s => Words.Camel($"{s.Name}")))
                .Zip(scene.Flyweights.Masses)
                .Where(pair => pair.Second.Mass > 0)
                .SelectMany(pair => OfMass($"flyweight.{pair.First}", pair.Second.Mass, pair.Second.Radius, travel, travelNode)),
        ]);

    private IEnumerable<ExplainedValue> OfMass(
        string name, double mass, SmoothCurve radius, double travel, Func<ExplainedValue> travelNode)
    {
        yield return nodes.Input($"{name}.mass", mass, Mass.Info);
        yield return nodes.Of($"{name}.radius", radius.At(travel), Length.Info, Relations.RadiusCurve, Points);
        yield return nodes.Of($"{name}.radiusSlope", radius.Slope(travel), "", Relations.RadiusSlope, Points);

        IEnumerable<ExplainedValue> Points() =>
        [
            travelNode(),
            .. CurveParts.Smooth(
                nodes, $"{name}.curve", [.. radius.Knots.Select(x => (x, radius.At(x)))], travel,
                new("travel", Length.Info), new("radius", Length.Info)),
        ];
    }
}
