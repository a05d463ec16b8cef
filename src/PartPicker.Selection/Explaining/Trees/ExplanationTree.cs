using PartPicker.Mechanics;
using UnitsNet;
using static PartPicker.Selection.TreeNodes;

namespace PartPicker.Selection;

/// <summary>Takes a number of a prediction apart, down to the inputs; every value is one that the model computed with.</summary>
internal sealed class ExplanationTree(Scene scene, Prediction prediction, UncertaintyTree uncertainty)
{
    /// <summary>The tree of a number, or null where the prediction has none by that name.</summary>
    /// <param name="name">One of <see cref="ExplainedNames.Of"/>.</param>
    public ExplainedValue? Of(string name)
    {
        string[] words = name.Split('/');
        return words switch
        {
            [var number] => OfAll(number),
            [var number, var point] when Index(point) is { } j => OfPoint(number, j) is { } value ? value with { Name = name } : null,
            [ExplainedNames.OfSensitivity, var which] => OfSensitivity(which, 0),
            [ExplainedNames.OfSensitivity, var which, var point] when Index(point) is { } j => OfSensitivity(which, j + 1),
            _ => throw Unknown(name),
        };

        ExplainedValue? OfSensitivity(string which, int number) =>
            uncertainty.Sensitivity(name, Index(which.Split('.')[0])!.Value, number);
    }

    // A count from 1, as names have it, as an index; null for a word.
    private static int? Index(string text) =>
        int.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out int count) ? count - 1 : null;

    private static ArgumentOutOfRangeException Unknown(string name) => new(nameof(name), name, "No number of a prediction.");

    private ExplainedValue? OfAll(string name) => name switch
    {
        ExplainedNames.Engagement => prediction.EngagementRpm is null ? null : Engagement(name, scene, new TreeNodes()),
        ExplainedNames.EngagementBand => uncertainty.Band(name, 0),
        ExplainedNames.LockUp => prediction.LockUpRpm is { } rpm ? LockUp(name, rpm) : null,
        ExplainedNames.ShiftOut => OfPoint(ExplainedNames.UpshiftRpm, prediction.Curve.Count - 1) is { } value
            ? value with { Name = name }
            : null,
        ExplainedNames.PeakPower => new EngineTree(scene, new TreeNodes()).PeakPower(),
        ExplainedNames.TorqueFactor => new AirTree(scene, new TreeNodes()).TorqueFactor(),
        ExplainedNames.FlyweightFactor => scene.Run is { EngagementRpm: { } measured } run ? FlyweightFactor(run, measured) : null,
        ExplainedNames.ThrustFactor => scene.Run is { } run ? ThrustFactor(run) : null,
        _ => throw Unknown(name),
    };

    private ExplainedValue? OfPoint(string name, int j)
    {
        var nodes = new TreeNodes();
        var belt = new BeltTree(scene, nodes);
        PointLoads still = new(j, scene.Model.Positions[j], default, ShiftDirection.Upshift);
        ShiftPoint point = prediction.Curve[j];
        return name switch
        {
            ExplainedNames.UpshiftBand => uncertainty.Band(name, j + 1),
            ExplainedNames.Hysteresis => Hysteresis(nodes, point, j),
            "ratio" => belt.Ratio(still),
            "openingTravel" => belt.OpeningTravel(still),
            "driveRadius" => belt.DriveRadius(still),
            "drivenRadius" => belt.DrivenRadius(still),
            "driveWrap" => belt.DriveWrap(still),
            "drivenWrap" => belt.DrivenWrap(still),
            "helixAngle" => new HelixTree(scene, nodes).HelixAngle(still),
            "camTurn" => new HelixTree(scene, nodes).CamTurn(still),
            "helixHold" => new ThrustTree(scene, nodes).HelixHold(still),
            ExplainedNames.UpshiftRpm => At(point.Upshift, ShiftDirection.Upshift) is { } up ? Balanced(name, up, nodes) : null,
            ExplainedNames.BackshiftRpm => At(point.Backshift, ShiftDirection.Backshift) is { } back ? Balanced(name, back, nodes) : null,
            _ when name.StartsWith(ExplainedNames.OfBackshift, StringComparison.Ordinal) =>
                At(point.Backshift, ShiftDirection.Backshift) is { } back
                    ? OfBalance(name[ExplainedNames.OfBackshift.Length..], back, nodes)
                    : null,
            _ => At(point.Upshift, ShiftDirection.Upshift) is { } up ? OfBalance(name, up, nodes) : null,
        };

        PointLoads? At(Balance? balance, ShiftDirection direction) => balance is null ? null : scene.At(j, balance.Rpm, direction);
    }

    private ExplainedValue? OfBalance(string name, PointLoads point, TreeNodes nodes)
    {
        var engine = new EngineTree(scene, nodes);
        var thrust = new ThrustTree(scene, nodes);
        return name switch
        {
            "engineTorque" => engine.Torque(point.Loads.Rpm),
            "power" => engine.Power(point, () => Speed(point)),
            "powerLost" => nodes.Of(
                name, point.Loads.PowerLost, Power.Info, Relations.PowerLost,
                () => [PeakPower(), engine.Power(point, () => Speed(point))]),
            "drivenClamp" => thrust.Clamp(point),
            "driveThrust" => thrust.Asked(point),
            "flyweightThrust" => Flyweights(scene, point, nodes),
            "springForce" => Spring(scene, point, nodes),
            "tightTension" => thrust.Whole(name, point, thrust.Tight(point), () => Speed(point)),
            "slackTension" => thrust.Whole(name, point, thrust.Slack(point), () => Speed(point)),
            "tightTensionNet" => thrust.Tight(point),
            "slackTensionNet" => thrust.Slack(point),
            "activeArc" => thrust.DrivenArc(point),
            "driveActiveArc" => thrust.DriveArc(point),
            "slipMargin" => thrust.SlipMargin(name, point),
            "beltSpeed" => thrust.BeltSpeed(point, () => Speed(point)),
            "vehicleSpeed" => nodes.Of(
                name, point.Loads.VehicleSpeed, UnitsNet.Speed.Info, Relations.VehicleSpeed,
                () =>
                [
                    Speed(point),
                    Field("gearing.tyreRadius", scene.Drivetrain.TyreRadius, Length.Info),
                    new BeltTree(scene, nodes).Ratio(point),
                    Field("gearing.finalDrive", scene.Drivetrain.FinalDrive),
                ]),
            _ => throw Unknown(name),
        };
    }

    private ExplainedValue? Hysteresis(TreeNodes nodes, ShiftPoint point, int j) =>
        point is { HysteresisRpm: { } gap, Upshift: { } up, Backshift: { } back }
            ? nodes.Of(
                ExplainedNames.Hysteresis, gap, "rpm", Relations.Hysteresis,
                () =>
                [
                    Speed(scene.At(j, up.Rpm, ShiftDirection.Upshift)),
                    Speed(scene.At(j, back.Rpm, ShiftDirection.Backshift)),
                ])
            : null;

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
            name, rpm, "rpm", Relations.LockUp, () => [.. DriveSide(scene, point, nodes), thrust.Factor(), thrust.Grip(point)]);
    }

    private ExplainedValue Balanced(string name, PointLoads point, TreeNodes nodes) => nodes.Of(
        name, point.Loads.Rpm, "rpm", BalanceOf(point),
        () => [.. DriveSide(scene, point, nodes), new ThrustTree(scene, nodes).Asked(point)]);

    private static IEnumerable<ExplainedValue> DriveSide(Scene scene, PointLoads point, TreeNodes nodes) =>
        [new FlyweightTree(scene, nodes).FrictionShare(), Flyweights(scene, point, nodes), Spring(scene, point, nodes)];

    private static ExplainedValue Flyweights(Scene scene, PointLoads point, TreeNodes nodes) =>
        new FlyweightTree(scene, nodes).Thrust(
            point.Loads.Rpm, point.Position.Travel, () => new BeltTree(scene, nodes).Travel(point));

    private static ExplainedValue Spring(Scene scene, PointLoads point, TreeNodes nodes) =>
        new SpringTree(scene, nodes).Drive(point.Position.Travel, () => new BeltTree(scene, nodes).Travel(point));

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
        Elsewhere(ExplainedNames.Rpm(point.IsUpshift, point.J + 1), point.Loads.Rpm, "rpm", BalanceOf(point));

    private Relation BalanceOf(PointLoads point) => (point.Loads.Rpm == scene.Drive.Engagement.Rpm, point.IsUpshift) switch
    {
        (true, true) => Relations.ShiftsAtEngagement,
        (true, false) => Relations.BackshiftsAtEngagement,
        (false, true) => Relations.Balance,
        _ => Relations.BackshiftBalance,
    };
}
