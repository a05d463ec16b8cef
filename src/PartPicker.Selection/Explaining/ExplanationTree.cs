using PartPicker.Mechanics;
using UnitsNet;

namespace PartPicker.Selection;

/// <summary>Takes a number of a prediction apart, down to the inputs; every value is one that the model computed with.</summary>
internal sealed class ExplanationTree(Predictor predictor, SetUp set, Prediction prediction)
{
    private readonly Drivetrain machine = predictor.Machine.Drivetrain;
    private readonly FlyweightSet flyweights = set.Flyweight.Model(predictor.Machine);
    private readonly double engagement = predictor.Drive(set.Spring, set.Flyweight).Engagement.Rpm;
    private readonly LinearCurve driveForce = Predictor.DriveForce(predictor.Machine, set.Spring);

    /// <summary>The tree of a number, or null where the prediction has none by that name.</summary>
    /// <param name="name">One of <see cref="ExplainedNames.Of"/>.</param>
    public ExplainedValue? Of(string name)
    {
        if (name == ExplainedNames.Engagement)
            return prediction.EngagementRpm is { } rpm ? Engagement(rpm) : null;
        int last = prediction.Curve.Count - 1;
        int j = name == ExplainedNames.ShiftOut
            ? last
            : Enumerable.Range(0, last + 1).First(k => ExplainedNames.Upshift(k + 1) == name);
        return prediction.Curve[j].Upshift is { } balance ? Balanced(name, prediction.Curve[j], balance) : null;
    }

    private ExplainedValue Engagement(double rpm)
    {
        double travel = prediction.EngagementTravel.Meters;
        double force = driveForce.At(machine.DriveSpringLength - set.Spring.ShimThickness - travel);
        return Number(
            ExplainedNames.Engagement, rpm, "rpm", Relations.Engagement,
            [SpringForce(travel, force), ThrustPerSpeedSquared(travel), FrictionShare(), FlyweightFactor()]);
    }

    private ExplainedValue Balanced(string name, ShiftPoint point, Balance balance) => Number(
        name, balance.Rpm, "rpm", balance.Rpm == engagement ? Relations.ShiftsAtEngagement : Relations.Balance,
        [
            Quantity(
                "flyweightThrust", balance.FlyweightThrust.Newtons, Force.Info, Relations.FlyweightThrust,
                [Input("engineSpeed", balance.Rpm, "rpm"), FlyweightFactor(), ThrustPerSpeedSquared(point.Travel.Meters)]),
            FrictionShare(),
            SpringForce(point.Travel.Meters, balance.SpringForce.Newtons),
            DriveThrust(point, balance),
            Input("anchoring.thrustFactor", predictor.Model.Anchor.Thrust),
        ]);

    private ExplainedValue SpringForce(double travel, double force) => Quantity(
        "springForce", force, Force.Info, Relations.SpringForce,
        [
            Input("driveClutch.springLength", machine.DriveSpringLength, Length.Info),
            Input("shimThickness", set.Spring.ShimThickness, Length.Info),
            Input("travel", travel, Length.Info),
        ]);

    private ExplainedValue ThrustPerSpeedSquared(double travel) => Number(
        "thrustPerSpeedSquared", flyweights.ThrustPerSpeedSquared(travel), "kg·m", Relations.ThrustPerSpeedSquared,
        [
            Input("driveClutch.armCount", flyweights.ArmCount),
            .. new[] { "body" }.Concat(set.Flyweight.Body.Stations().Select(s => Words.Camel($"{s.Name}")))
                .Zip(flyweights.Masses)
                .Where(pair => pair.Second.Mass > 0)
                .SelectMany(pair => new[]
                {
                    Input($"flyweight.{pair.First}.mass", pair.Second.Mass, Mass.Info),
                    Input($"flyweight.{pair.First}.radius", pair.Second.Radius.At(travel), Length.Info),
                    Input($"flyweight.{pair.First}.radiusSlope", pair.Second.Radius.Slope(travel)),
                }),
        ]);

    // The balance has a_b F_d, the relation F_d alone.
    private ExplainedValue DriveThrust(ShiftPoint point, Balance balance)
    {
        double thrust = balance.DriveThrust.Newtons / predictor.Model.Anchor.Thrust;
        ExplainedValue tight = TightTension(point, balance);
        ExplainedValue wrap = Input("driveWrap", point.DriveWrap.Radians, Angle.Info);
        if (machine.ThrustForm == DriveThrustForm.Locked)
            return Quantity("driveThrust", thrust, Force.Info, Relations.LockedThrust, [tight, wrap, HalfAngle()]);
        double radius = point.DriveRadius.Meters;
        return Quantity(
            "driveThrust", thrust, Force.Info, Relations.DriveThrust,
            [
                tight,
                wrap,
                Quantity(
                    "driveActiveArc", balance.DriveActiveArc.Radians, Angle.Info, Relations.ActiveArc,
                    [
                        Input("tightTensionNet", balance.TightTensionNet.Newtons, Force.Info),
                        Input("slackTensionNet", balance.SlackTensionNet.Newtons, Force.Info),
                        GrooveFriction("drive", radius),
                    ]),
                EffectiveTension(point, balance),
                GrooveFriction("drive", radius),
                HalfAngle(),
            ]);
    }

    private ExplainedValue TightTension(ShiftPoint point, Balance balance) => Quantity(
        "tightTensionNet", balance.TightTensionNet.Newtons, Force.Info,
        balance.DrivenSlips ? Relations.SlippingTension : Relations.BeltTension,
        [
            DrivenClamp(point, balance),
            Input("slackTensionNet", balance.SlackTensionNet.Newtons, Force.Info),
            EffectiveTension(point, balance),
            Input("drivenWrap", point.DrivenWrap.Radians, Angle.Info),
            Input("activeArc", balance.ActiveArc.Radians, Angle.Info),
            GrooveFriction("driven", point.DrivenRadius.Meters),
            HalfAngle(),
        ]);

    private ExplainedValue EffectiveTension(ShiftPoint point, Balance balance) => Quantity(
        "effectiveTension", balance.TightTensionNet.Newtons - balance.SlackTensionNet.Newtons, Force.Info,
        Relations.EffectiveTension,
        [EngineTorque(balance), Input("driveRadius", point.DriveRadius.Meters, Length.Info)]);

    private ExplainedValue EngineTorque(Balance balance) => Quantity(
        "engineTorque", balance.EngineTorque.NewtonMeters, Torque.Info, Relations.EngineTorque,
        [
            Input("engineTorqueAtSeaLevel", machine.Engine.At(balance.Rpm), Torque.Info),
            Input("torqueFactor", prediction.TorqueFactor),
        ]);

    private ExplainedValue DrivenClamp(ShiftPoint point, Balance balance)
    {
        DrivenLoad load = Predictor.DrivenLoadAt(predictor.Machine, set.Driven, point);
        double opening = point.OpeningTravel.Meters;
        List<ExplainedValue> force =
        [
            Input("drivenClutch.springLength", machine.DrivenSpringLength, Length.Info),
            Input("openingTravel", opening, Length.Info),
        ];
        if (load.Stiffening != 1)
            force.Add(Input("twistStiffening", load.Stiffening));
        return Quantity(
            "drivenClamp", balance.DrivenClamp.Newtons, Force.Info, Relations.DrivenClamp,
            [
                Quantity("drivenSpringForce", load.AxialForce, Force.Info, Relations.DrivenSpringForce, force),
                Quantity(
                    "twistTorque", load.TwistTorque, Torque.Info, Relations.TwistTorque,
                    [
                        Input("preloadTwist", set.Driven.PreloadTwist, Angle.Info),
                        Input("camTurn", point.CamTurn.Radians, Angle.Info),
                    ]),
                EngineTorque(balance),
                Input("ratio", point.Ratio),
                Input("drivenClutch.camTorqueShare", machine.CamTorqueShare),
                Input("belt.efficiency", machine.BeltEfficiency),
                Input("drivenClutch.camRadius", machine.CamRadius, Length.Info),
                Input("helixAngle", point.HelixAngle.Radians, Angle.Info),
                Input("drivenClutch.camFrictionDeg", machine.CamFrictionAngle, Angle.Info),
            ]);
    }

    private ExplainedValue GrooveFriction(string sheave, double radius)
    {
        double friction = machine.FrictionAt(radius);
        return Number(
            $"{sheave}GrooveFriction", BeltThrust.GrooveFriction(friction, machine.GrooveHalfAngle), "",
            Relations.GrooveFriction, [Input("belt.friction", friction), HalfAngle()]);
    }

    private ExplainedValue HalfAngle() => Input("driveClutch.sheaveHalfAngleDeg", machine.GrooveHalfAngle, Angle.Info);

    private ExplainedValue FrictionShare() => Input("driveClutch.flyweightFrictionShare", machine.FlyweightFrictionShare);

    private ExplainedValue FlyweightFactor() => Input("anchoring.flyweightFactor", predictor.Model.Anchor.Flyweight);

    private static ExplainedValue Quantity(
        string name, double si, QuantityInfo dimension, Relation relation, IReadOnlyList<ExplainedValue> parts) =>
        new(name, si, dimension, "", relation.Name, relation.Equation, relation.Source, parts);

    private static ExplainedValue Number(
        string name, double value, string unit, Relation relation, IReadOnlyList<ExplainedValue> parts) =>
        new(name, value, null, unit, relation.Name, relation.Equation, relation.Source, parts);

    private static ExplainedValue Input(string name, double si, QuantityInfo dimension) =>
        new(name, si, dimension, "", null, null, null, []);

    private static ExplainedValue Input(string name, double value, string unit = "") =>
        new(name, value, null, unit, null, null, null, []);
}
