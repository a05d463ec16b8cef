using PartPicker.Mechanics;
using UnitsNet;
using static PartPicker.Selection.TreeNodes;

namespace PartPicker.Selection;

/// <summary>Takes a number of a prediction apart, down to the inputs; every value is one that the model computed with.</summary>
internal sealed class ExplanationTree(Scene scene, Prediction prediction)
{
    /// <summary>The tree of a number, or null where the prediction has none by that name.</summary>
    /// <param name="name">One of <see cref="ExplainedNames.Of"/>.</param>
    public ExplainedValue? Of(string name)
    {
        int last = prediction.Curve.Count - 1;
        return name switch
        {
            ExplainedNames.Engagement => prediction.EngagementRpm is null ? null : Engagement(name, scene, new TreeNodes()),
            ExplainedNames.LockUp => prediction.LockUpRpm is { } rpm ? LockUp(name, rpm) : null,
            ExplainedNames.ShiftOut => OfPoint(ExplainedNames.UpshiftRpm, name, last),
            ExplainedNames.PeakPower => new EngineTree(scene, new TreeNodes()).PeakPower(),
            ExplainedNames.FlyweightFactor => scene.Run is { EngagementRpm: { } measured } run ? FlyweightFactor(run, measured) : null,
            ExplainedNames.ThrustFactor => scene.Run is { } run ? ThrustFactor(run) : null,
            _ => name.Split('/') is [var number, var point]
                ? OfPoint(number, name, int.Parse(point, System.Globalization.CultureInfo.InvariantCulture) - 1)
                : throw new ArgumentOutOfRangeException(nameof(name), name, "No number of a prediction."),
        };
    }

    private ExplainedValue? OfPoint(string number, string name, int j)
    {
        if (prediction.Curve[j].Upshift is not { } balance)
            return null;
        PointLoads point = scene.At(j, balance.Rpm);
        var nodes = new TreeNodes();
        return number switch
        {
            ExplainedNames.UpshiftRpm => Balanced(name, point, nodes),
            ExplainedNames.SlipMargin => new ThrustTree(scene, nodes).SlipMargin(name, point),
            ExplainedNames.PowerLost => nodes.Of(
                name, point.Loads.PowerLost, Power.Info, Relations.PowerLost,
                () => [PeakPower(), new EngineTree(scene, nodes).Power(point, () => Speed(point))]),
            ExplainedNames.VehicleSpeed => nodes.Of(
                name, point.Loads.VehicleSpeed, UnitsNet.Speed.Info, Relations.VehicleSpeed,
                () =>
                [
                    Speed(point),
                    Field("gearing.tyreRadius", scene.Drivetrain.TyreRadius, Length.Info),
                    new BeltTree(scene, nodes).Ratio(point),
                    Field("gearing.finalDrive", scene.Drivetrain.FinalDrive),
                ]),
            _ => throw new ArgumentOutOfRangeException(nameof(number), number, "No number of a point."),
        };
    }

    private static ExplainedValue Engagement(string name, Scene scene, TreeNodes nodes)
    {
        double travel = scene.Drive.Engagement.Travel;
        var flyweights = new FlyweightTree(scene, nodes);
        return nodes.Of(
            name, scene.Drive.Engagement.Rpm, "rpm", Relations.Engagement,
            () =>
            [
                new SpringTree(scene, nodes).Drive(travel, Travel),
                flyweights.FrictionShare(),
                flyweights.Factor(),
                flyweights.ThrustPerSpeedSquared(travel, Travel),
            ]);

        ExplainedValue Travel() => nodes.Input("engagementTravel", travel, Length.Info);
    }

    private ExplainedValue LockUp(string name, double rpm)
    {
        PointLoads point = scene.At(0, rpm);
        var nodes = new TreeNodes();
        var thrust = new ThrustTree(scene, nodes);
        return nodes.Of(
            name, rpm, "rpm", Relations.LockUp, () => [.. DriveSide(point, nodes), thrust.Factor(), thrust.Grip(point)]);
    }

    private ExplainedValue Balanced(string name, PointLoads point, TreeNodes nodes) => nodes.Of(
        name, point.Loads.Rpm, "rpm", BalanceOf(point),
        () => [.. DriveSide(point, nodes), new ThrustTree(scene, nodes).Asked(point)]);

    private IEnumerable<ExplainedValue> DriveSide(PointLoads point, TreeNodes nodes) => DriveSide(scene, point, nodes);

    private static IEnumerable<ExplainedValue> DriveSide(Scene scene, PointLoads point, TreeNodes nodes)
    {
        var flyweights = new FlyweightTree(scene, nodes);
        double travel = point.Position.Travel;
        return
        [
            flyweights.FrictionShare(),
            flyweights.Thrust(point.Loads.Rpm, travel, Travel),
            new SpringTree(scene, nodes).Drive(travel, Travel),
        ];

        ExplainedValue Travel() => new BeltTree(scene, nodes).Travel(point);
    }

    private ExplainedValue FlyweightFactor(MeasuredRun run, double measured)
    {
        var nodes = new TreeNodes();
        Scene bare = scene.OfRun(run, AnchorFactors.None);
        return nodes.Of(
            ExplainedNames.FlyweightFactor, scene.Model.Anchor.Flyweight, "", Relations.FlyweightFactor,
            () =>
            [
                Engagement(ExplainedNames.Engagement, bare, nodes.Within("run")),
                Field("baseline.engagementRpm", measured, "rpm"),
            ]);
    }

    private ExplainedValue ThrustFactor(MeasuredRun run)
    {
        var nodes = new TreeNodes();
        Scene tied = scene.OfRun(run, scene.Model.Anchor);
        return nodes.Of(
            ExplainedNames.ThrustFactor, scene.Model.Anchor.Thrust, "", Relations.ThrustFactor,
            () => run.Rpm.SelectMany((rpm, j) => Reading(tied, tied.At(j, rpm), nodes.Within($"run/{j + 1}"))));
    }

    private static IEnumerable<ExplainedValue> Reading(Scene run, PointLoads point, TreeNodes nodes)
    {
        double left = (1 - run.Drivetrain.FlyweightFrictionShare) * point.Loads.FlyweightThrust - point.Loads.SpringForce;
        yield return nodes.Of("thrustLeft", left, Force.Info, Relations.ThrustLeft, () => DriveSide(run, point, nodes));
        yield return new ThrustTree(run, nodes).OfBelt(point);
    }

    private ExplainedValue PeakPower() =>
        Elsewhere(ExplainedNames.PeakPower, scene.Model.PeakPower, Power.Info, Relations.PeakPower);

    private ExplainedValue Speed(PointLoads point) =>
        Elsewhere(ExplainedNames.Upshift(point.J + 1), point.Loads.Rpm, "rpm", BalanceOf(point));

    private Relation BalanceOf(PointLoads point) =>
        point.Loads.Rpm == scene.Drive.Engagement.Rpm ? Relations.ShiftsAtEngagement : Relations.Balance;
}
